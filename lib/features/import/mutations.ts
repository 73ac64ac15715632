import type { Database, Tx } from '@/lib/platform/db';
import { ok, type Result } from '@/lib/platform/errors';
import { newId } from '@/lib/platform/id';
import { enqueueEvaluation } from '../evaluation/mutations';
import { readStudyMotors } from '../fleet/data';
import { parseFleet } from '../fleet/parse';
import { bookOf } from './book';
import { type ConflictsApart, planImport, writesSomething } from './plan-import';
import { headerFingerprint } from './recipe';
import type { ConflictRule } from './schema';
import { takeBack } from './take-back';
import { type BatchOrder, type ImportDone, inStudy, writeBatch } from './write-batch';
import { writePlan } from './write-import';

/** A sheet, how it is to be read, and what holds where it and the study disagree. */
interface ImportOrder extends BatchOrder {
  readonly conflicts: ConflictRule;
  /** Conflicts for which that rule does not hold. */
  readonly apart?: ConflictsApart;
}

/** Brings a sheet into a study: all of it is kept, or nothing. */
export async function commitImport(db: Database, order: ImportOrder, at: Date = new Date()): Promise<Result<ImportDone>> {
  return inStudy(db, order, async (tx, { currency, options }) => {
    const { studyId, file, who, recipe, kind, conflicts } = order;
    const book = bookOf(await readStudyMotors(tx, studyId));
    const parsed = await parseFleet({ path: file.path, name: file.name }, { ...options, book });
    if (!parsed.ok) return parsed;
    const plan = planImport(parsed, book, conflicts, order.apart);
    const changed = plan.changed.filter(writesSomething);
    const counts = { motorsAdded: plan.added.length, motorsChanged: changed.length, readingsAdded: plan.readingsAdded };
    if (plan.added.length === 0 && changed.length === 0)
      return ok({ batchId: undefined, ...counts, rowsRejected: parsed.rejected.length });
    const batch = {
      ...counts,
      kind: 'fleet',
      recipe: { ...recipe, kind, conflicts },
      header: parsed.header,
      rowsRead: parsed.rows,
      rowsRepeated: parsed.ignoredRepeats + plan.readingsRepeated,
      issues: parsed,
      at,
    } as const;
    const done = await writeBatch(tx, order, batch, async (batchId) => {
      await writePlan(tx, plan, { studyId, currency, batchId, fileName: file.name, who, at });
      await rememberRecipe(tx, order, parsed.header, at);
    });
    return ok(done);
  });
}

async function rememberRecipe(tx: Tx, { studyId, file, recipe }: BatchOrder, header: readonly string[], at: Date): Promise<void> {
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
