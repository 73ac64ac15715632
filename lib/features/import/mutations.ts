import { recordChange } from '@/lib/platform/audit';
import type { Database, Tx } from '@/lib/platform/db';
import { ok, type Problem, type Result, refuse } from '@/lib/platform/errors';
import { newId } from '@/lib/platform/id';
import { enqueueEvaluation } from '../evaluation/mutations';
import { readStudyMotors } from '../fleet/data';
import { type ParsedFleet, parseFleet } from '../fleet/parse';
import { readStudy } from '../study/data';
import { bookOf } from './book';
import { type ConflictsApart, type ImportPlan, planImport, writesSomething } from './plan-import';
import { headerFingerprint, parseOptions } from './recipe';
import type { ConflictRule, Recipe } from './schema';
import { takeBack } from './take-back';
import { writeIssues, writePlan } from './write-import';

/** A file and how it is to be read and brought into a study. */
export interface ImportOrder {
  readonly studyId: string;
  readonly file: { readonly path: string; readonly name: string; readonly bytes: number; readonly hash: string };
  readonly kind: 'csv' | 'xlsx';
  readonly recipe: Recipe;
  readonly conflicts: ConflictRule;
  /** Conflicts for which that rule does not hold. */
  readonly apart?: ConflictsApart;
  readonly who: string;
}

/** What an import came to. */
export interface ImportDone {
  /** Absent when there was nothing to write: then nothing is changed, not even the list of imports. */
  readonly batchId: string | undefined;
  readonly motorsAdded: number;
  readonly motorsChanged: number;
  readonly readingsAdded: number;
  readonly rowsRejected: number;
}

/**
 * Brings a sheet into a study in one transaction: all of it is kept, or nothing. The sheet is read inside the transaction, so that what
 * it is compared with stays true until it is written.
 */
export async function commitImport(db: Database, order: ImportOrder, at: Date = new Date()): Promise<Result<ImportDone>> {
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
    const book = bookOf(await readStudyMotors(tx, order.studyId));
    const options = { ...parseOptions(order.recipe, order.kind), asOf: study.settings.asOf, book };
    const parsed = await parseFleet({ path: order.file.path, name: order.file.name }, options);
    if (!parsed.ok) {
      outcome.problem = parsed.problem;
      return undefined;
    }
    const plan = planImport(parsed, book, order.conflicts, order.apart);
    return writeBatch(tx, order, { parsed, plan, currency: study.settings.currency, at });
  });
  if (done === undefined) return { ok: false, problem: outcome.problem ?? NOT_FORESEEN };
  return ok(done);
}

const NOT_FORESEEN: Problem = { code: 'unexpected', text: 'The import came to nothing.', remedy: 'Try again.' };

interface Ready {
  readonly parsed: ParsedFleet;
  readonly plan: ImportPlan;
  readonly currency: string;
  readonly at: Date;
}

async function writeBatch(tx: Tx, order: ImportOrder, { parsed, plan, currency, at }: Ready): Promise<ImportDone> {
  const { studyId, file, who } = order;
  const changed = plan.changed.filter(writesSomething);
  const counts = {
    motorsAdded: plan.added.length,
    motorsChanged: changed.length,
    readingsAdded: plan.readingsAdded,
    rowsRejected: parsed.rejected.length,
  };
  if (plan.added.length === 0 && changed.length === 0) return { batchId: undefined, ...counts };
  const batchId = newId(at.getTime());
  await tx.importBatch.create({
    data: {
      id: batchId,
      studyId,
      fileName: file.name,
      fileHash: file.hash,
      fileBytes: file.bytes,
      recipe: JSON.stringify({ ...order.recipe, kind: order.kind, conflicts: order.conflicts }),
      header: JSON.stringify(parsed.header),
      rowsRead: parsed.rows,
      ...counts,
      rowsRepeated: parsed.ignoredRepeats + plan.readingsRepeated,
      warningCount: parsed.warnings.length,
      who,
      createdAt: at,
    },
  });
  await writePlan(tx, plan, { studyId, currency, batchId, fileName: file.name, who, at });
  await writeIssues(tx, parsed, { studyId, batchId, at });
  await rememberRecipe(tx, order, parsed.header, at);
  await recordChange(
    tx,
    {
      studyId,
      who,
      subject: 'import',
      subjectId: batchId,
      subjectLabel: file.name,
      what: 'imported',
      to: counts,
      batch: batchId,
      importBatchId: batchId,
    },
    at,
  );
  await tx.study.update({ where: { id: studyId }, data: { version: { increment: 1 } } });
  await enqueueEvaluation(tx, studyId);
  return { batchId, ...counts };
}

async function rememberRecipe(
  tx: Tx,
  { studyId, file, recipe }: ImportOrder,
  header: readonly string[],
  at: Date,
): Promise<void> {
  const key = { studyId, kind: 'fleet', headerFingerprint: headerFingerprint(header) };
  const data = {
    mapping: JSON.stringify(recipe.mapping),
    decimal: recipe.decimal ?? '.',
    encoding: recipe.encoding,
    delimiter: recipe.delimiter,
    emptyWords: JSON.stringify(recipe.emptyWords),
    usedAt: at,
  };
  await tx.importRecipe.upsert({
    where: { studyId_kind_headerFingerprint: key },
    create: { id: newId(at.getTime()), ...key, name: file.name, ...data },
    update: data,
  });
}

/** Takes an import back whole, or says what was built on it since. */
export async function undoImport(
  db: Database,
  { studyId, batchId, who }: { readonly studyId: string; readonly batchId: string; readonly who: string },
  at: Date = new Date(),
): Promise<Result<{ readonly fileName: string }>> {
  return db.write(async (tx) => {
    const done = await takeBack(tx, { studyId, batchId, who, at });
    if (done.ok) await enqueueEvaluation(tx, studyId);
    return done;
  });
}
