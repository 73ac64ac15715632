import type { BenchMethodId, BenchPlate, BenchTest } from '@/lib/engine';
import { recordChange } from '@/lib/platform/audit';
import type { Database, Tx } from '@/lib/platform/db';
import { ok, type Result, refuse } from '@/lib/platform/errors';
import { contentHash } from '@/lib/platform/hash';
import { newId } from '@/lib/platform/id';
import { enqueueEvaluation } from '../evaluation/mutations';

/** A test to be kept with its motor. */
interface KeepWish {
  readonly studyId: string;
  readonly motorId: string;
  readonly who: string;
  readonly test: BenchTest;
  readonly takenAt: string | undefined;
  readonly method: BenchMethodId;
  readonly rotorConductor: BenchPlate['rotorConductor'];
  /** What the test found, in words for the motor's history. */
  readonly found?: string | undefined;
}

const NO_MOTOR = refuse('no-motor', 'The study has no such motor any more.', 'Go back to the fleet.');

/** Keeps a test with its motor. The same points of the same date and name twice are one test. */
export async function keepTest(
  db: Database,
  wish: KeepWish,
  at = new Date(),
): Promise<Result<{ readonly id: string; readonly known: boolean }>> {
  return db.write(async (tx) => {
    const motor = await tx.motor.findFirst({ where: { id: wish.motorId, studyId: wish.studyId } });
    if (!motor) return NO_MOTOR;
    const hash = contentHash({ name: wish.test.test, takenAt: wish.takenAt, sections: wish.test.sections });
    const known = await tx.benchTest.findUnique({ where: { motorId_contentHash: { motorId: wish.motorId, contentHash: hash } } });
    if (known) return ok({ id: known.id, known: true });
    const id = newId(at.getTime());
    await tx.benchTest.create({
      data: {
        id,
        studyId: wish.studyId,
        motorId: wish.motorId,
        name: wish.test.test,
        takenAt: wish.takenAt ?? null,
        method: wish.method,
        rotorConductor: wish.rotorConductor ?? null,
        points: JSON.stringify(wish.test.sections),
        contentHash: hash,
        addedBy: wish.who,
        createdAt: at,
      },
    });
    await note(tx, {
      ...wish,
      label: labelOf(motor),
      what: 'added',
      to: [nameOf(wish.test.test, wish.takenAt), wish.found].filter(Boolean).join(': '),
    });
    await enqueueEvaluation(tx, wish.studyId);
    return ok({ id, known: false });
  });
}

/** Withdraws a test; it stays in the book, with the reason, and no longer counts. */
export async function withdrawTest(
  db: Database,
  wish: { readonly studyId: string; readonly id: string; readonly who: string; readonly why: string },
  at = new Date(),
): Promise<Result<{ readonly motorId: string }>> {
  return db.write(async (tx) => {
    const test = await tx.benchTest.findFirst({ where: { id: wish.id, studyId: wish.studyId }, include: { motor: true } });
    if (!test) return refuse('no-test', 'The study has no such test any more.', 'Go back to the bench tests.');
    if (test.withdrawnAt !== null) return refuse('withdrawn', 'The test has been withdrawn already.', 'Load the page again.');
    await tx.benchTest.update({
      where: { id: test.id },
      data: { withdrawnAt: at, withdrawnBy: wish.who, withdrawnReason: wish.why },
    });
    const name = nameOf(test.name, test.takenAt ?? undefined);
    await note(tx, { ...wish, motorId: test.motorId, label: labelOf(test.motor), what: 'withdrawn', from: name });
    await enqueueEvaluation(tx, wish.studyId);
    return ok({ motorId: test.motorId });
  });
}

function labelOf(motor: { readonly siteName: string; readonly tag: string }): string {
  return motor.siteName === '' ? motor.tag : `${motor.siteName} / ${motor.tag}`;
}

function nameOf(name: string, takenAt: string | undefined): string {
  return [name, takenAt].filter(Boolean).join(', ') || 'without a name';
}

interface Note {
  readonly studyId: string;
  readonly motorId: string;
  readonly who: string;
  readonly label: string;
  readonly what: 'added' | 'withdrawn';
  readonly from?: string;
  readonly to?: string;
  readonly why?: string;
}

/** The line in the motor's history. */
async function note(tx: Tx, entry: Note): Promise<void> {
  await recordChange(tx, {
    studyId: entry.studyId,
    who: entry.who,
    subject: 'motor',
    subjectId: entry.motorId,
    subjectLabel: entry.label,
    what: entry.what,
    field: 'bench test',
    from: entry.from,
    to: entry.to,
    why: entry.why,
  });
}
