import type { Settings } from '@/lib/engine';
import type { PrismaClient, Tx } from '@/lib/platform/db';
import { readSettings } from './settings';
import type { ChangedKey } from './settings-change';

/** A client for reading: the shared one, or the one of a transaction. */
export type Reader = PrismaClient | Tx;

/** A study as it is kept. */
export interface StoredStudy {
  readonly id: string;
  readonly name: string;
  readonly settings: Settings;
  /** The price list that the settings file names; absent when it names none. */
  readonly pricesFile: string | undefined;
  readonly demo: boolean;
  readonly archivedAt: Date | undefined;
  readonly createdAt: Date;
  readonly updatedAt: Date;
  readonly version: number;
}

/** A study in a list, with what it holds. */
export interface StudyEntry {
  readonly id: string;
  readonly name: string;
  readonly demo: boolean;
  readonly archivedAt: Date | undefined;
  readonly updatedAt: Date;
  readonly motors: number;
  readonly readings: number;
}

/** Raised when stored settings cannot be understood: a fault of the program or of whoever changed the file by hand. */
class DamagedSettings extends Error {
  override readonly name = 'DamagedSettings';
}

/** The settings kept with a study. @throws DamagedSettings */
export function storedSettings(text: string): { readonly settings: Settings; readonly pricesFile: string | undefined } {
  const outcome = readSettings(text, { kept: true });
  if (!outcome.ok) throw new DamagedSettings(`The stored settings cannot be read: ${outcome.problem.text}`);
  return { settings: outcome.settings, pricesFile: outcome.pricesFile };
}

/** The study of this id; `undefined` when there is none. */
export async function readStudy(db: Reader, id: string): Promise<StoredStudy | undefined> {
  const row = await db.study.findUnique({ where: { id } });
  if (row === null) return undefined;
  const { name, demo, createdAt, updatedAt, version } = row;
  return {
    id,
    name,
    demo,
    createdAt,
    updatedAt,
    version,
    archivedAt: row.archivedAt ?? undefined,
    ...storedSettings(row.settings),
  };
}

/** What acts changed of a study's settings, by batch of the history; a batch without changed settings is left out. */
export async function readSettingsBatches(
  db: Reader,
  studyId: string,
  batches: readonly string[],
): Promise<ReadonlyMap<string, readonly ChangedKey[]>> {
  const rows = await db.changeEvent.findMany({
    where: { studyId, subject: 'settings', batch: { in: [...batches] } },
    select: { batch: true, field: true, fromValue: true, toValue: true },
  });
  const found = new Map<string, ChangedKey[]>();
  for (const { batch, field, fromValue, toValue } of rows) {
    if (batch === null || field === null) continue;
    const key = { key: field, from: storedValue(fromValue), to: storedValue(toValue) };
    found.set(batch, [...(found.get(batch) ?? []), key]);
  }
  return found;
}

function storedValue(json: string | null): unknown {
  return json === null ? undefined : JSON.parse(json);
}

/** Every study with its counts: those in use by last change, then the archived ones. */
export async function readStudies(db: Reader): Promise<StudyEntry[]> {
  const rows = await db.study.findMany({
    select: {
      id: true,
      name: true,
      demo: true,
      archivedAt: true,
      updatedAt: true,
      _count: { select: { motors: true, readings: true } },
    },
    orderBy: { updatedAt: 'desc' },
  });
  const entries = rows.map(({ _count, archivedAt, ...row }) => ({ ...row, ..._count, archivedAt: archivedAt ?? undefined }));
  return [
    ...entries.filter((entry) => entry.archivedAt === undefined),
    ...entries.filter((entry) => entry.archivedAt !== undefined),
  ];
}
