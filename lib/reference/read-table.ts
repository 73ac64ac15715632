/** Reads one CSV of `reference-data` strictly: a table is either as it was released, or it is damaged. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import type { z } from 'zod';
import type { RowStatus } from '@/lib/engine';
import type { Entry } from './catalog';
import { DamagedTable } from './damaged-table';
import { type PassportFile, passportPath } from './passport';

/** The status words of `reference-data/README.md`. */
export const statusWords: readonly RowStatus[] = [
  'read',
  'read-secondary',
  'memory',
  'practice',
  'derived',
  'computed',
  'disagree',
  'gap',
  'invented',
];

type Cells = Readonly<Record<string, string>>;

/** A table as text: column names and records with the row number that a spreadsheet shows. */
interface Sheet {
  readonly header: readonly string[];
  readonly records: readonly { readonly row: number; readonly cells: Cells }[];
}

/** A row that passed its schema, with the status that its table gives. */
export type WithStatus<Row> = Row & { readonly status: RowStatus };

/** What was found in a table: the rows without gaps, and the count of each status with them. */
interface ReadTable<Row> {
  readonly rows: readonly WithStatus<Row>[];
  readonly rowCount: number;
  readonly statusCounts: Readonly<Partial<Record<RowStatus, number>>>;
}

function readSheet(folder: string, file: string): Sheet {
  const path = join(folder, file);
  if (!existsSync(path)) throw new DamagedTable({ file }, 'the table is missing');
  const content = readFileSync(path, 'utf8')
    .replace(/^\uFEFF/, '')
    .replace(/\r?\n$/, '');
  const { data, errors } = Papa.parse<string[]>(content, { delimiter: ',' });
  const error = errors[0];
  if (error !== undefined) {
    throw new DamagedTable(
      { file, row: error.row === undefined ? undefined : error.row + 1 },
      `not readable as CSV (${error.message})`,
    );
  }
  const [header, ...lines] = data;
  if (header === undefined || lines.length === 0) throw new DamagedTable({ file }, 'the table is empty');
  const twice = header.find((name, at) => header.indexOf(name) !== at);
  if (twice !== undefined) throw new DamagedTable({ file, row: 1, column: twice }, 'the column stands twice');
  const records = lines.map((line, at) => {
    const row = at + 2;
    if (line.length !== header.length) {
      throw new DamagedTable({ file, row }, `the row has ${line.length} cells, the header ${header.length}`);
    }
    return { row, cells: Object.fromEntries(header.map((name, cell) => [name, line[cell] ?? ''])) };
  });
  return { header, records };
}

/** A table as it is written: column names and rows, gaps included. */
export interface TableText {
  readonly header: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/**
 * Reads a table as text, for showing it.
 * @throws DamagedTable when it is no table.
 */
export function readTableText(folder: string, file: string): TableText {
  const { header, records } = readSheet(folder, file);
  return { header, rows: records.map(({ cells }) => header.map((name) => cells[name] ?? '')) };
}

/** Header and passport must name the same columns, and the columns that the catalogue uses must be among them. */
function checkColumns(entry: Entry<object>, sheet: Sheet, passport: PassportFile, required: readonly string[]): void {
  for (const column of required) {
    if (!sheet.header.includes(column)) throw new DamagedTable({ file: entry.file, row: 1, column }, 'the column is missing');
  }
  for (const column of sheet.header) {
    if (passport.columns[column] === undefined) {
      const remedy = `Describe the column in ${passportPath(entry.file)}, or take it out.`;
      throw new DamagedTable({ file: entry.file, row: 1, column }, 'the passport does not give the unit of this column', remedy);
    }
  }
  for (const column of Object.keys(passport.columns)) {
    if (!sheet.header.includes(column)) {
      throw new DamagedTable({ file: entry.file, row: 1, column }, 'the column is in the passport and not in the table');
    }
  }
}

function checkKey(entry: Entry<object>, seen: Map<string, number>, cells: Cells, row: number): void {
  const key = entry.key.map((column) => cells[column] ?? '').join('\u0000');
  const before = seen.get(key);
  if (before !== undefined) {
    throw new DamagedTable({ file: entry.file, row, column: entry.key.join(' + ') }, `the row repeats the key of row ${before}`);
  }
  seen.set(key, row);
}

function parseRow<Row>(entry: Entry<Row>, cells: Cells, row: number): Row {
  const parsed: z.ZodSafeParseResult<Row> = entry.row.safeParse(cells);
  if (parsed.success) return parsed.data;
  const issue = parsed.error.issues[0];
  const column = issue?.path[0]?.toString();
  const shown = column === undefined ? 'the row' : `'${cells[column] ?? ''}'`;
  throw new DamagedTable({ file: entry.file, row, column }, `${shown} ${issue?.message ?? 'is not readable'}`);
}

function readStatus(file: string, cells: Cells, row: number): RowStatus {
  const status = statusWords.find((known) => known === cells.status);
  if (status !== undefined) return status;
  const remedy = `Use one of the status words: ${statusWords.join(', ')}.`;
  throw new DamagedTable({ file, row, column: 'status' }, `'${cells.status ?? ''}' is no status word`, remedy);
}

/** A gap is empty, and what is empty is a gap: neither may hide behind the other. */
function checkGap(entry: Entry<object>, cells: Cells, row: number, status: RowStatus): void {
  const filled = entry.figures.find((column) => cells[column] !== '');
  if (status === 'gap' && filled !== undefined) {
    throw new DamagedTable({ file: entry.file, row, column: filled }, `'${cells[filled] ?? ''}' stands in a row of status gap`);
  }
  if (status !== 'gap' && filled === undefined) {
    throw new DamagedTable(
      { file: entry.file, row, column: entry.figures[0] },
      'the row has no figure and is not marked as a gap',
    );
  }
}

/**
 * Reads a table whose rows carry a status. Gap rows are checked, counted and left out.
 * @throws DamagedTable at the first fault.
 */
export function readTable<Row extends object>(folder: string, entry: Entry<Row>, passport: PassportFile): ReadTable<Row> {
  const sheet = readSheet(folder, entry.file);
  checkColumns(entry, sheet, passport, [...entry.key, ...entry.figures, 'status']);
  const seen = new Map<string, number>();
  const statusCounts: Partial<Record<RowStatus, number>> = {};
  const rows: WithStatus<Row>[] = [];
  for (const { row, cells } of sheet.records) {
    const status = readStatus(entry.file, cells, row);
    checkKey(entry, seen, cells, row);
    checkGap(entry, cells, row, status);
    statusCounts[status] = (statusCounts[status] ?? 0) + 1;
    if (status !== 'gap') rows.push(Object.assign(parseRow(entry, cells, row), { status }));
  }
  return { rows, rowCount: sheet.records.length, statusCounts };
}

/**
 * Reads a table without status column: the price list.
 * @throws DamagedTable at the first fault.
 */
export function readPlainTable<Row extends object>(folder: string, entry: Entry<Row>, passport: PassportFile): readonly Row[] {
  const sheet = readSheet(folder, entry.file);
  checkColumns(entry, sheet, passport, [...entry.key, ...entry.figures]);
  const seen = new Map<string, number>();
  return sheet.records.map(({ row, cells }) => {
    checkKey(entry, seen, cells, row);
    return parseRow(entry, cells, row);
  });
}
