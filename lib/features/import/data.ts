import { z } from 'zod';
import { rejectedCsv } from '../fleet/write-csv';
import type { Reader } from '../study/data';
import { headerFingerprint } from './recipe';
import { ENCODINGS, type Recipe, recipeSchema } from './schema';

const texts = z.array(z.string());
const usedRecipe = recipeSchema.extend({ kind: z.enum(['csv', 'xlsx']) });

/** An import in the list of a study's imports. */
export interface ImportEntry {
  readonly id: string;
  /** What the file held: motors with readings, or an indicator history. */
  readonly kind: 'fleet' | 'indicators';
  readonly fileName: string;
  readonly who: string;
  readonly createdAt: Date;
  readonly undoneAt: Date | undefined;
  readonly undoneBy: string | undefined;
  readonly rowsRead: number;
  readonly motorsAdded: number;
  readonly motorsChanged: number;
  readonly readingsAdded: number;
  readonly rowsRepeated: number;
  readonly rowsRejected: number;
  readonly warningCount: number;
}

/** The imports of a study, newest first. */
export async function readImports(db: Reader, studyId: string, id?: string): Promise<ImportEntry[]> {
  const rows = await db.importBatch.findMany({
    where: { studyId, kind: { in: ['fleet', 'indicators'] }, ...(id === undefined ? {} : { id }) },
    orderBy: { createdAt: 'desc' },
  });
  return rows.map(({ recipe: _recipe, header: _header, undoneAt, undoneBy, ...row }) => ({
    ...row,
    kind: row.kind === 'indicators' ? 'indicators' : 'fleet',
    undoneAt: undoneAt ?? undefined,
    undoneBy: undoneBy ?? undefined,
  }));
}

/** A stored reason or warning of an import. */
export interface StoredIssue {
  readonly row: number;
  readonly column: string;
  readonly text: string;
  readonly remedy: string;
  readonly value: string | undefined;
}

/** The first reasons for rejected rows of an import, under the sheet's own column names. */
export async function readRejections(db: Reader, batchId: string, limit: number): Promise<StoredIssue[]> {
  const batch = await db.importBatch.findUnique({ where: { id: batchId }, select: { recipe: true } });
  if (batch === null) return [];
  const { mapping } = usedRecipe.parse(JSON.parse(batch.recipe));
  const titles = new Map(Object.entries(mapping).map(([title, column]) => [column, title]));
  const rows = await db.importRowIssue.findMany({ where: { batchId, kind: 'rejected' }, orderBy: { row: 'asc' }, take: limit });
  return rows.map(({ row, column, text, remedy, value }) => {
    return {
      row,
      column: (column === null ? undefined : titles.get(column)) ?? column ?? '',
      text,
      remedy,
      value: value ?? undefined,
    };
  });
}

/** The rejected rows of an import as a file: their cells as they were, and behind them row, reasons and remedies. */
export async function rejectedOfBatch(
  db: Reader,
  studyId: string,
  batchId: string,
): Promise<{ readonly fileName: string; readonly csv: string } | undefined> {
  const batch = await db.importBatch.findUnique({ where: { id: batchId } });
  if (batch === null || batch.studyId !== studyId) return undefined;
  const issues = await db.importRowIssue.findMany({ where: { batchId, kind: 'rejected' }, orderBy: { row: 'asc' } });
  const rows = new Map<number, { cells: readonly string[]; issues: StoredIssue[] }>();
  for (const { row, column, text, remedy, cells } of issues) {
    const entry = rows.get(row) ?? { cells: [], issues: [] };
    rows.set(row, entry);
    entry.issues.push({ row, column: column ?? '', text, remedy, value: undefined });
    if (cells !== null) entry.cells = texts.parse(JSON.parse(cells));
  }
  const recipe = usedRecipe.parse(JSON.parse(batch.recipe));
  const csv = rejectedCsv({
    header: texts.parse(JSON.parse(batch.header)),
    rejected: [...rows].map(([row, entry]) => ({ row, ...entry })),
    dialect: { delimiter: recipe.kind === 'csv' ? recipe.delimiter : ',', decimal: recipe.decimal ?? '.' },
  });
  return { fileName: batch.fileName, csv };
}

/** A recipe that was remembered for a header. */
interface RememberedRecipe {
  readonly name: string;
  readonly usedAt: Date;
  readonly recipe: Recipe;
}

/** How a sheet with this header was read last time; of this study, or else of any other. */
export async function readRecipe(db: Reader, studyId: string, titles: readonly string[]): Promise<RememberedRecipe | undefined> {
  const rows = await db.importRecipe.findMany({
    where: { kind: 'fleet', headerFingerprint: headerFingerprint(titles) },
    orderBy: { usedAt: 'desc' },
  });
  const row = rows.find((each) => each.studyId === studyId) ?? rows[0];
  if (row === undefined) return undefined;
  const recipe = recipeSchema.safeParse({
    decimal: row.decimal,
    delimiter: row.delimiter ?? ',',
    encoding: ENCODINGS.find((name) => name === row.encoding) ?? 'utf-8',
    emptyWords: JSON.parse(row.emptyWords),
    mapping: JSON.parse(row.mapping),
  });
  return recipe.success ? { name: row.name, usedAt: row.usedAt, recipe: recipe.data } : undefined;
}
