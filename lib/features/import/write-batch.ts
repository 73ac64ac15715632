import { recordChange } from '@/lib/platform/audit';
import type { Database, Tx } from '@/lib/platform/db';
import { type Result, refuse } from '@/lib/platform/errors';
import { newId } from '@/lib/platform/id';
import { enqueueEvaluation } from '../evaluation/mutations';
import type { ParsedFleet, ParseOptions } from '../fleet/parse';
import { readStudy } from '../study/data';
import { parseOptions } from './recipe';
import type { Recipe } from './schema';
import { writeIssues } from './write-import';

/** A file, how it is to be read, and whose import it is. */
export interface BatchOrder {
  readonly studyId: string;
  readonly file: { readonly path: string; readonly name: string; readonly bytes: number; readonly hash: string };
  readonly kind: 'csv' | 'xlsx';
  readonly recipe: Recipe;
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

/** The study as an import finds it, and how its file is read. */
interface ImportPlace {
  readonly currency: string;
  readonly options: ParseOptions & { readonly asOf: string };
}

/**
 * Does the work of an import in one transaction: all of it is kept, or nothing. The file is read inside the transaction, so that what it is
 * compared with stays true until it is written.
 */
export async function inStudy(
  db: Database,
  { studyId, recipe, kind }: BatchOrder,
  work: (tx: Tx, place: ImportPlace) => Promise<Result<ImportDone>>,
): Promise<Result<ImportDone>> {
  if (recipe.decimal === undefined) {
    return refuse('decimal-sign', 'Nobody has said which sign marks the decimals.', 'Choose the decimal sign, then import.');
  }
  return db.write(async (tx) => {
    const study = await readStudy(tx, studyId);
    if (study === undefined) return refuse('no-study', 'The study is gone.', 'Go to the first page and choose another one.');
    const { asOf, currency } = study.settings;
    return work(tx, { currency, options: { ...parseOptions(recipe, kind), asOf } });
  });
}

/** What is kept of an import beside what it brings. */
interface Batch extends Omit<ImportDone, 'batchId' | 'rowsRejected'> {
  readonly kind: 'fleet' | 'indicators';
  /** How the file was read. */
  readonly recipe: unknown;
  readonly header: readonly string[];
  readonly rowsRead: number;
  readonly rowsRepeated: number;
  readonly issues: Pick<ParsedFleet, 'rejected' | 'warnings'>;
  readonly at: Date;
}

/** Writes an import: its batch, what it brings, why rows were left out, and its line in the history; then the fleet is evaluated again. */
export async function writeBatch(
  tx: Tx,
  { studyId, file, who }: BatchOrder,
  { kind, recipe, header, rowsRead, rowsRepeated, issues, at, ...added }: Batch,
  bring: (batchId: string) => Promise<void>,
): Promise<ImportDone> {
  const counts = { ...added, rowsRejected: issues.rejected.length };
  const batchId = newId(at.getTime());
  await tx.importBatch.create({
    data: {
      id: batchId,
      studyId,
      kind,
      fileName: file.name,
      fileHash: file.hash,
      fileBytes: file.bytes,
      recipe: JSON.stringify(recipe),
      header: JSON.stringify(header),
      rowsRead,
      ...counts,
      rowsRepeated,
      warningCount: issues.warnings.length,
      who,
      createdAt: at,
    },
  });
  await bring(batchId);
  await writeIssues(tx, issues, { studyId, batchId, at });
  const event = { studyId, who, subject: 'import', subjectId: batchId, subjectLabel: file.name, what: 'imported', to: counts };
  await recordChange(tx, { ...event, batch: batchId, importBatchId: batchId }, at);
  await tx.study.update({ where: { id: studyId }, data: { version: { increment: 1 } } });
  await enqueueEvaluation(tx, studyId);
  return { batchId, ...counts };
}
