import type { Reader } from '../study/data';
import type { HistoryEntry } from './schema';

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
    field: row.field ?? undefined,
    from: row.fromValue ?? undefined,
    to: row.toValue ?? undefined,
    why: row.why ?? undefined,
  }));
}

/** Rank and size of the ranked fleet in the study's latest finished run; `undefined` before the first. */
export async function readRank(db: Reader, studyId: string, motorId: string): Promise<{ rank: number; of: number } | undefined> {
  const row = await db.motorEvaluation.findFirst({
    where: { studyId, motorId, run: { state: 'done' } },
    orderBy: { run: { queuedAt: 'desc' } },
    select: { rank: true, runId: true },
  });
  if (row === null) return undefined;
  return { rank: row.rank, of: await db.motorEvaluation.count({ where: { runId: row.runId } }) };
}
