import type { DecimalSign } from './number';

/** Limits of a sheet (contracts of the sheet); beyond them it is refused, not cut. */
export const LIMITS = { columns: 1000, cellCharacters: 32_767, fileMegabytes: 200, unpackedMegabytes: 500 } as const;
export const MEGABYTE = 1_000_000;

/** A date cell of a workbook as ISO 8601 site time. */
interface DateCell {
  readonly date: string;
}

/** A cell of a workbook whose formula gave an error, or was saved without a result. */
interface FaultyCell {
  readonly fault: string;
}

/** A cell as the file holds it: CSV gives text only, a workbook also numbers, truth values and dates. */
export type Cell = string | number | boolean | DateCell | FaultyCell;

export interface TableRow {
  /** Row as a spreadsheet shows it, the first of the file being row 1. */
  readonly row: number;
  readonly cells: readonly Cell[];
  /** The row's quotes could not be made out. */
  readonly malformed?: boolean;
}

/** Rows in blocks, the first row of the first block being row 1. */
export type TableBlocks = AsyncIterable<readonly TableRow[]>;

export type Delimiter = ',' | ';' | '\t';

/** How a sheet writes its cells; kept so that rejected rows can be given back in the same way. */
export interface Dialect {
  readonly delimiter: Delimiter;
  readonly decimal: DecimalSign;
}

/** Where a sheet comes from: a file (by another name in messages, if it has one), or bytes or pasted text with a name. */
export type SheetSource =
  | { readonly path: string; readonly name?: string }
  | { readonly name: string; readonly data: Uint8Array }
  | { readonly name: string; readonly text: string };

/** A cell in the words of the sheet, for messages, notes and the file of rejected rows. */
export function cellText(cell: Cell | undefined, decimal: DecimalSign = '.'): string {
  if (cell === undefined) return '';
  if (typeof cell === 'string') return cell;
  if (typeof cell === 'number') return decimal === '.' ? String(cell) : String(cell).replace('.', ',');
  if (typeof cell === 'boolean') return cell ? 'TRUE' : 'FALSE';
  return 'date' in cell ? cell.date : cell.fault;
}

/** Is there nothing in the cell? */
export function isBlank(cell: Cell | undefined): boolean {
  return cell === undefined || (typeof cell === 'string' && cell.trim() === '');
}
