import type { CellValue, Column } from './column';
import { shapeErrors } from './column-places';
import { COLUMNS, columnByName } from './columns';
import { FileFault, issue, type RowIssue } from './issue-codes';
import { nearestWord } from './nearest';
import { shown } from './number';
import { type CellContext, plainText, readCell } from './parse-cell';
import { type Cell, isBlank, LIMITS, type TableRow } from './table';

/** What stands under a place of the header. */
type Place =
  | { readonly as: 'value'; readonly column: Column; readonly index: number }
  | { readonly as: 'note'; readonly name: string }
  | { readonly as: 'unnamed'; readonly name: string }
  | { readonly as: 'passed-over' };

export interface HeaderPlan {
  /** Column names as the sheet has them, without surrounding spaces. */
  readonly header: readonly string[];
  readonly places: readonly Place[];
  readonly warnings: readonly RowIssue[];
}

/** Column names of a sheet that stand for ours, as a remembered import recipe has them; `null` leaves a column out. */
export type ColumnMapping = Readonly<Record<string, string | null>>;

interface HeaderOptions {
  readonly mapping?: ColumnMapping | undefined;
  readonly guarded?: boolean;
  /** The sheet may speak of motors that are kept already, so it need not carry their plates. */
  readonly platesKept?: boolean;
  /** Row of the column names; the first when not said. */
  readonly row?: number;
}

/** A row once its cells are read. `values` stand in the order of {@link COLUMNS}. */
export interface ParsedRow {
  readonly row: number;
  readonly values: readonly (CellValue | undefined)[];
  readonly notes: readonly (readonly [name: string, text: string])[];
  readonly errors: readonly RowIssue[];
  readonly warnings: readonly RowIssue[];
}

/** Stands in a header for a column that is left out; no cell can hold it. */
const LEFT_OUT = '\0';

const INDEX: ReadonlyMap<string, number> = new Map(COLUMNS.map((column, index) => [column.name, index]));

/** Position of a column's value in a parsed row. */
export function indexOf(name: string): number {
  return INDEX.get(name) ?? -1;
}

/** Makes out the header. Throws a {@link FileFault} when the sheet cannot be read with it. */
export function planHeader(cells: readonly Cell[], options: HeaderOptions = {}): HeaderPlan {
  const { mapping = {}, guarded = false, platesKept = false, row = 1 } = options;
  const written = cells.map((cell) => plainText(cell, { decimal: '.', guarded }));
  while (written.at(-1) === '') written.pop();
  const asked = lowered(mapping);
  const leftOut = new Set(written.filter((title) => asked.get(title.toLowerCase()) === null));
  const header = written.map((title) => (leftOut.has(title) ? LEFT_OUT : (asked.get(title.toLowerCase()) ?? title)));
  if (header.length > LIMITS.columns) throw new FileFault('too-many-columns', { count: header.length, limit: LIMITS.columns });
  refuseRepeats(header);
  refuseMissing(header, platesKept);
  const warnings: RowIssue[] = [];
  const places = header.map((title, at): Place => {
    if (title === LEFT_OUT) return { as: 'passed-over' };
    const column = columnByName(title);
    if (column?.kind.type === 'passed-over') return { as: 'passed-over' };
    if (column !== undefined) return { as: 'value', column, index: indexOf(column.name) };
    if (title === '') return { as: 'unnamed', name: `column ${at + 1}` };
    const words = nearestWord(title, INDEX.keys()) ?? '';
    warnings.push(issue('unknown-column', row, title, { value: title, words }));
    return { as: 'note', name: title };
  });
  return { header: written, places, warnings };
}

function lowered(mapping: ColumnMapping): ReadonlyMap<string, string | null> {
  return new Map(Object.entries(mapping).map(([from, to]) => [from.trim().toLowerCase(), to]));
}

/** Our names of a sheet’s titles, where a title has one; for telling column names from what else stands in a row. */
export function namesBy(mapping: ColumnMapping = {}): (titles: readonly string[]) => readonly (string | undefined)[] {
  const asked = lowered(mapping);
  return (titles) =>
    titles.map((title) => {
      const name = asked.get(title.toLowerCase());
      return name === null ? undefined : columnByName(name ?? title)?.name;
    });
}

function refuseRepeats(header: readonly string[]): void {
  const seen = new Set<string>();
  const twice = new Set<string>();
  for (const title of header.map((text) => text.toLowerCase())) {
    if (title !== '' && title !== LEFT_OUT && seen.has(title)) twice.add(title);
    seen.add(title);
  }
  if (twice.size > 0) throw new FileFault('duplicate-column', { words: [...twice].map(shown).join(', ') });
}

function refuseMissing(header: readonly string[], platesKept: boolean): void {
  const names = new Set(header.map((title) => columnByName(title)?.name));
  const needed = COLUMNS.filter(({ name, required }) => (platesKept ? name === 'tag' : required === 'always'));
  const missing = needed.map(({ name }) => name).filter((name) => !names.has(name));
  if (!platesKept && !names.has('rated_power_kw') && !names.has('rated_power_hp')) {
    missing.push('rated_power_kw or rated_power_hp');
  }
  if (missing.length === 0) return;
  const [only = ''] = header;
  const hint = header.length === 1 && /[\t;,|]/.test(only) ? '; the names seem to be joined by another delimiter' : '';
  throw new FileFault('missing-column', { words: missing.join(', '), other: hint });
}

/** Reads the cells of a row. A row without any content gives `undefined`. */
export function parseRow(plan: HeaderPlan, line: TableRow, context: Omit<CellContext, 'row'>): ParsedRow | undefined {
  if (line.cells.every(isBlank)) return undefined;
  const { row } = line;
  const errors = shapeErrors(line, plan.places.length);
  const warnings: RowIssue[] = [];
  const notes: (readonly [string, string])[] = [];
  const values = new Array<CellValue | undefined>(COLUMNS.length).fill(undefined);
  const inRow: CellContext = { ...context, row };
  for (let at = 0; at < plan.places.length; at++) {
    const cell = line.cells[at];
    const place = plan.places[at];
    if (cell === undefined || place === undefined || cell === '' || place.as === 'passed-over') continue;
    if (place.as === 'value') {
      const { value, error, warning } = readCell(place.column, cell, inRow);
      values[place.index] = value;
      if (error) errors.push(error);
      if (warning) warnings.push(warning);
    } else {
      const text = plainText(cell, inRow);
      if (text.length > LIMITS.cellCharacters) {
        errors.push(issue('cell-too-long', row, place.name, { value: text, count: text.length, limit: LIMITS.cellCharacters }));
      } else if (text !== '' && !context.emptyWords.has(text.toLowerCase())) notes.push([place.name, text]);
    }
  }
  if (line.cells.length < plan.places.length) {
    warnings.push(issue('short-row', row, '', { count: line.cells.length, limit: plan.places.length }));
  }
  return { row, values, notes, errors, warnings };
}
