import type { BenchMethodId, BenchPlate, BenchTest } from '@/lib/engine';
import type { Reader } from '../study/data';
import { benchMethodWord, conductorWord, storedSections } from './schema';

/** A test as it is kept. */
export interface StoredTest {
  readonly id: string;
  readonly motorId: string;
  readonly takenAt: string | undefined;
  readonly method: BenchMethodId;
  readonly rotorConductor: BenchPlate['rotorConductor'];
  readonly test: BenchTest;
  readonly addedBy: string;
  readonly createdAt: Date;
  readonly withdrawn: { readonly at: Date; readonly by: string; readonly reason: string } | undefined;
}

const WITH_TAG = { motor: { select: { tag: true } } } as const;

/** Tests of a study, or of one motor, the newest first; a test without a date counts by when it was added. */
export async function readTests(db: Reader, of: { readonly studyId: string; readonly motorId?: string }): Promise<StoredTest[]> {
  const rows = await db.benchTest.findMany({ where: of, include: WITH_TAG });
  const stored = rows.map(storedTest);
  const when = (test: StoredTest) => test.takenAt ?? test.createdAt.toISOString();
  return stored.sort((a, b) => (when(a) < when(b) ? 1 : when(a) > when(b) ? -1 : a.id < b.id ? 1 : -1));
}

/** One test of a study. */
export async function readTest(db: Reader, studyId: string, id: string): Promise<StoredTest | undefined> {
  const row = await db.benchTest.findFirst({ where: { id, studyId }, include: WITH_TAG });
  return row === null ? undefined : storedTest(row);
}

type Row = Awaited<ReturnType<Reader['benchTest']['findMany']>>[number] & { readonly motor: { readonly tag: string } };

function storedTest(row: Row): StoredTest {
  const { withdrawnAt, withdrawnBy, withdrawnReason } = row;
  const conductor = conductorWord.safeParse(row.rotorConductor);
  return {
    id: row.id,
    motorId: row.motorId,
    takenAt: row.takenAt ?? undefined,
    method: benchMethodWord.parse(row.method),
    rotorConductor: conductor.success ? conductor.data : undefined,
    test: { tag: row.motor.tag, test: row.name, sections: storedSections.parse(JSON.parse(row.points)) },
    addedBy: row.addedBy,
    createdAt: row.createdAt,
    withdrawn: withdrawnAt === null ? undefined : { at: withdrawnAt, by: withdrawnBy ?? '', reason: withdrawnReason ?? '' },
  };
}

/** Motors of a study with a tag, at one site if it is named. */
export async function findMotors(
  db: Reader,
  studyId: string,
  tag: string,
  site: string,
): Promise<{ id: string; site: string }[]> {
  const rows = await db.motor.findMany({
    where: { studyId, tag, ...(site !== '' && { siteName: site }) },
    select: { id: true, siteName: true },
    orderBy: { naturalKey: 'asc' },
  });
  return rows.map((row) => ({ id: row.id, site: row.siteName }));
}
