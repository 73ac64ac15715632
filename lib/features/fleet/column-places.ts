import type { Column } from './column';
import { FileFault, type FileProblemCode, issue, type RowIssue } from './issue-codes';
import { nearestWord } from './nearest';
import { type CellContext, plainText } from './parse-cell';
import { isBlank, type TableRow } from './table';

/** The column that each cell of a row belongs to; nothing where the sheet's column is not known. */
export type Places<C extends Column> = readonly (C | undefined)[];

/** What is said of a sheet's head: as a problem where a required column is missing, as a warning where one is not known. */
interface Codes {
  readonly missing: FileProblemCode;
  readonly unknown: 'unknown-price-column' | 'unknown-bench-column';
}

/** Reads the head of a sheet that has just these columns, each by its own name; throws a {@link FileFault} where one is there twice or a required one is not. */
export function columnPlaces<C extends Column>(
  line: TableRow,
  columns: readonly C[],
  context: Omit<CellContext, 'row'>,
  codes: Codes,
  warnings: RowIssue[],
): Places<C> {
  const titles = line.cells.map((cell) => plainText(cell, context).toLowerCase());
  const twice = titles.filter((title, at) => title !== '' && titles.indexOf(title) !== at);
  if (twice.length > 0) throw new FileFault('duplicate-column', { words: [...new Set(twice)].join(', ') });
  const names = columns.map(({ name }) => name);
  const missing = columns.filter(({ name, required }) => required === 'always' && !titles.includes(name));
  if (missing.length > 0) {
    const words = missing.map(({ name }) => name).join(', ');
    throw new FileFault(codes.missing, { words, other: names.join(', ') });
  }
  return titles.map((title) => {
    const column = columns.find(({ name }) => name === title);
    if (column === undefined && title !== '')
      warnings.push(issue(codes.unknown, line.row, title, { value: title, words: nearestWord(title, names) ?? '' }));
    return column;
  });
}

/** What is wrong with a row whatever its columns mean: a quote without its other half, cells beyond the head. */
export function shapeErrors({ row, cells, malformed }: TableRow, width: number): RowIssue[] {
  const errors: RowIssue[] = [];
  if (malformed) errors.push(issue('malformed-quote', row, ''));
  if (cells.slice(width).some((cell) => !isBlank(cell)))
    errors.push(issue('too-many-cells', row, '', { count: cells.length, limit: width }));
  return errors;
}
