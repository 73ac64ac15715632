import { recordChange } from '@/lib/platform/audit';
import { insertRows } from '@/lib/platform/bulk';
import type { Database, Tx } from '@/lib/platform/db';
import { ok, type Problem, type Result, refuse } from '@/lib/platform/errors';
import { newId } from '@/lib/platform/id';
import { enqueueEvaluation } from '../evaluation/mutations';
import { readStudyMotors } from '../fleet/data';
import { readHistory } from '../fleet/indicator-history';
import { readHistoryValues } from '../fleet/stored-history';
import { readStudy } from '../study/data';
import type { ImportDone, ImportOrder } from './mutations';
import { planHistory } from './plan-history';
import { parseOptions } from './recipe';
import { writeIssues } from './write-import';

/** Brings an indicator history into a study in one transaction: all of its good rows are kept, or nothing. */
export async function commitHistory(
  db: Database,
  order: Omit<ImportOrder, 'conflicts' | 'apart'>,
  at: Date = new Date(),
): Promise<Result<ImportDone>> {
  if (order.recipe.decimal === undefined) {
    return refuse('decimal-sign', 'Nobody has said which sign marks the decimals.', 'Choose the decimal sign, then import.');
  }
  const outcome: { problem?: Problem } = {};
  const done = await db.write(async (tx) => {
    const study = await readStudy(tx, order.studyId);
    if (study === undefined) {
      outcome.problem = { code: 'no-study', text: 'The study is gone.', remedy: 'Go to the first page and choose another one.' };
      return undefined;
    }
    const source = { path: order.file.path, name: order.file.name };
    const read = await readHistory(source, { ...parseOptions(order.recipe, order.kind), asOf: study.settings.asOf });
    if (!read.ok) {
      outcome.problem = read.problem;
      return undefined;
    }
    const motors = await readStudyMotors(tx, order.studyId, { withHistory: true });
    return write(tx, order, read, planHistory(read, motors, await readHistoryValues(tx, order.studyId)), at);
  });
  return done === undefined ? { ok: false, problem: outcome.problem ?? NOT_FORESEEN } : ok(done);
}

const NOT_FORESEEN: Problem = { code: 'unexpected', text: 'The import came to nothing.', remedy: 'Try again.' };

async function write(
  tx: Tx,
  { studyId, file, who, recipe, kind }: Omit<ImportOrder, 'conflicts' | 'apart'>,
  read: Parameters<typeof planHistory>[0],
  plan: ReturnType<typeof planHistory>,
  at: Date,
): Promise<ImportDone> {
  const counts = {
    motorsAdded: 0,
    motorsChanged: plan.motors,
    readingsAdded: plan.added.length,
    rowsRejected: plan.rejected.length,
  };
  if (plan.added.length === 0) return { batchId: undefined, ...counts };
  const batchId = newId(at.getTime());
  await tx.importBatch.create({
    data: {
      id: batchId,
      studyId,
      kind: 'indicators',
      fileName: file.name,
      fileHash: file.hash,
      fileBytes: file.bytes,
      recipe: JSON.stringify({ ...recipe, kind }),
      header: JSON.stringify(read.header),
      rowsRead: plan.rows,
      ...counts,
      rowsRepeated: plan.repeated,
      warningCount: plan.warnings.length,
      who,
      createdAt: at,
    },
  });
  await insertRows(
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
      importBatchId: batchId,
      createdAt: at,
    })),
  );
  const rejected = plan.rejected.map((issue) => ({ row: issue.row, issues: [issue], cells: read.cells.get(issue.row) ?? [] }));
  await writeIssues(tx, { rejected, warnings: plan.warnings }, { studyId, batchId, at });
  const event = { studyId, who, subject: 'import', subjectId: batchId, subjectLabel: file.name, what: 'imported', to: counts };
  await recordChange(tx, { ...event, batch: batchId, importBatchId: batchId }, at);
  await tx.study.update({ where: { id: studyId }, data: { version: { increment: 1 } } });
  await enqueueEvaluation(tx, studyId);
  return { batchId, ...counts };
}
