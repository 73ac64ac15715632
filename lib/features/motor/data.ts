import type { SisterResult } from '@/lib/engine';
import { sistersOf } from '../evaluation/sisters-text';
import { COLUMNS } from '../fleet/columns';
import type { Reader } from '../study/data';
import type { HistoryEntry } from './schema';

const LABELS: ReadonlyMap<string, string> = new Map(COLUMNS.map(({ name, label }) => [name, label]));

/** The motor's name on site; `undefined` when the study has no such motor. */
export async function readTag(db: Reader, studyId: string, motorId: string): Promise<string | undefined> {
  return (await db.motor.findFirst({ where: { id: motorId, studyId }, select: { tag: true } }))?.tag;
}

/** The last changes of a motor and its readings. */
export async function readHistory(
  db: Reader,
  motorId: string,
  readingIds: readonly string[],
  limit = 50,
): Promise<HistoryEntry[]> {
  const rows = await db.changeEvent.findMany({
    where: {
      OR: [
        { subject: 'motor', subjectId: motorId },
        { subject: 'reading', subjectId: { in: [...readingIds] } },
      ],
    },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    take: limit,
  });
  return rows.map((row) => ({
    id: row.id,
    at: row.at,
    who: row.who,
    verified: row.verified,
    what: row.what,
    field: row.field === null ? undefined : (LABELS.get(row.field) ?? row.field),
    from: textOf(row.fromValue),
    to: textOf(row.toValue),
    why: row.why ?? undefined,
    batch: row.batch ?? undefined,
  }));
}

/** How a motor stands in its fleet. */
export interface AmongFleet {
  readonly rank: number;
  /** Size of the ranked fleet. */
  readonly of: number;
  readonly sisters: readonly SisterResult[];
}

/** Rank and sisters in the study's latest finished run; `undefined` before the first. */
export async function readAmongFleet(db: Reader, studyId: string, motorId: string): Promise<AmongFleet | undefined> {
  const row = await db.motorEvaluation.findFirst({
    where: { studyId, motorId, run: { state: 'done' } },
    orderBy: { run: { queuedAt: 'desc' } },
    select: { rank: true, sisters: true, runId: true },
  });
  if (row === null) return undefined;
  const of = await db.motorEvaluation.count({ where: { runId: row.runId } });
  return { rank: row.rank, of, sisters: sistersOf(row.sisters) };
}

/** Facts of a motor's plate that one batch changed, with the text they had before. */
export async function readBatch(
  db: Reader,
  motorId: string,
  batch: string,
): Promise<{ readonly field: string; readonly from: string }[]> {
  const rows = await db.changeEvent.findMany({ where: { subject: 'motor', subjectId: motorId, batch, field: { not: null } } });
  return rows.flatMap((row) => (row.field === null ? [] : [{ field: row.field, from: textOf(row.fromValue) }]));
}

/** The history keeps values as JSON; a plate's are texts. */
function textOf(json: string | null): string {
  if (json === null) return '';
  const value: unknown = JSON.parse(json);
  return typeof value === 'string' ? value : String(value ?? '');
}
