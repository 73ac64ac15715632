import { insertRows } from '@/lib/platform/bulk';
import type { Database } from '@/lib/platform/db';
import { ok, type Result } from '@/lib/platform/errors';
import { newId } from '@/lib/platform/id';
import { readStudyMotors } from '../fleet/data';
import { readHistory } from '../fleet/indicator-history';
import { readHistoryValues } from '../fleet/stored-history';
import { planHistory } from './plan-history';
import { type BatchOrder, type ImportDone, inStudy, writeBatch } from './write-batch';

/** Brings an indicator history into a study: all of its good rows are kept, or nothing. */
export async function commitHistory(db: Database, order: BatchOrder, at: Date = new Date()): Promise<Result<ImportDone>> {
  return inStudy(db, order, async (tx, { options }) => {
    const { studyId, file, recipe, kind } = order;
    const read = await readHistory({ path: file.path, name: file.name }, options);
    if (!read.ok) return read;
    const motors = await readStudyMotors(tx, studyId, { withHistory: true });
    const plan = planHistory(read, motors, await readHistoryValues(tx, studyId));
    const counts = { motorsAdded: 0, motorsChanged: plan.motors, readingsAdded: plan.added.length };
    if (plan.added.length === 0) return ok({ batchId: undefined, ...counts, rowsRejected: plan.rejected.length });
    const rejected = plan.rejected.map((issue) => ({
      row: issue.row,
      issues: [issue],
      cells: read.cells.get(issue.row) ?? [],
    }));
    const batch = {
      ...counts,
      kind: 'indicators',
      recipe: { ...recipe, kind },
      header: read.header,
      rowsRead: plan.rows,
      rowsRepeated: plan.repeated,
      issues: { rejected, warnings: plan.warnings },
      at,
    } as const;
    const done = await writeBatch(tx, order, batch, (importBatchId) =>
      insertRows(
        tx,
        'IndicatorReading',
        plan.added.map(({ motorId, value, hash }) => ({
          id: newId(at.getTime()),
          studyId,
          motorId,
          indicator: value.indicator.name,
          value: value.value,
          unit: value.indicator.unit,
          takenAt: value.takenAt ?? null,
          instrument: value.instrument ?? null,
          contentHash: hash,
          importBatchId,
          createdAt: at,
        })),
      ),
    );
    return ok(done);
  });
}
