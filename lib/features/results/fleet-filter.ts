import type { ReaderUnits } from '../study/reader-units';
import type { FleetColumn } from './fleet-column';
import { FLEET_COLUMNS, fleetColumn } from './fleet-columns';
import type { FleetRow } from './fleet-row';
import { shownColumn, shownLimit } from './shown-columns';

/**
 * Which motors of a list are wanted, in which order: read from and written to the address, said in words, applied to rows. The same
 * code serves the screen and the downloads, so that both show the same motors.
 */

/** Limits of a number in the column's own unit, whatever the reader sees; both ends count. */
export interface Range {
  readonly from?: number;
  readonly to?: number;
}

export interface SortKey {
  readonly column: string;
  readonly descending: boolean;
}

export interface FleetQuery {
  /** Words that the tag, site, area or description must hold. */
  readonly text: string;
  /** Chosen values by column; an empty value stands for an absent one. */
  readonly words: Readonly<Record<string, readonly string[]>>;
  readonly ranges: Readonly<Record<string, Range>>;
  /** First what counts most; none is the natural order of site and tag. */
  readonly sort: readonly SortKey[];
}

export const EVERYTHING: FleetQuery = { text: '', words: {}, ranges: {}, sort: [] };

const RANGE = /^(-?\d+(?:\.\d+)?)?\.\.(-?\d+(?:\.\d+)?)?$/;

/** The query of an address. What it does not understand is left out. */
export function readQuery(params: URLSearchParams): FleetQuery {
  const words: Record<string, readonly string[]> = {};
  const ranges: Record<string, Range> = {};
  for (const column of FLEET_COLUMNS) {
    const values = params.getAll(column.id);
    if (values.length === 0) continue;
    if (column.kind === 'word') {
      const known = [...new Set(values)].filter((value) => column.words === undefined || value === '' || value in column.words);
      if (known.length > 0) words[column.id] = known;
    } else if (column.kind === 'number') {
      const range = readRange(values[0] ?? '');
      if (range) ranges[column.id] = range;
    }
  }
  const sort = (params.get('sort') ?? '')
    .split(',')
    .filter((part) => part !== '')
    .map((part) => ({ column: part.replace(/^-/, ''), descending: part.startsWith('-') }))
    .filter(({ column }) => fleetColumn(column) !== undefined);
  return { text: params.get('q') ?? '', words, ranges, sort };
}

function readRange(text: string): Range | undefined {
  const match = RANGE.exec(text);
  if (!match || (match[1] === undefined && match[2] === undefined)) return undefined;
  return {
    ...(match[1] !== undefined && { from: Number(match[1]) }),
    ...(match[2] !== undefined && { to: Number(match[2]) }),
  };
}

/** The query as the address keeps it; empty for everything in natural order. */
export function writeQuery(query: FleetQuery): URLSearchParams {
  const params = new URLSearchParams();
  if (query.text.trim() !== '') params.set('q', query.text);
  for (const { id } of FLEET_COLUMNS) {
    for (const value of query.words[id] ?? []) params.append(id, value);
    const range = query.ranges[id];
    if (range) params.set(id, `${range.from ?? ''}..${range.to ?? ''}`);
  }
  if (query.sort.length > 0) {
    params.set('sort', query.sort.map(({ column, descending }) => `${descending ? '-' : ''}${column}`).join(','));
  }
  return params;
}

/** Whether anything is left out. */
export function isFiltered(query: FleetQuery): boolean {
  return query.text.trim() !== '' || Object.keys(query.words).length > 0 || Object.keys(query.ranges).length > 0;
}

/** What stands for a value of a word column. */
export function wordOf(column: Pick<FleetColumn, 'words' | 'name'>, value: string): string {
  if (value === '') return 'not stated';
  return column.words?.[value] ?? value;
}

/** One part of the filter in words, with the query without it. */
interface FilterPart {
  readonly key: string;
  readonly text: string;
  readonly without: FleetQuery;
}

/** The filter in words, part by part: `trust is not usable`, `load at most 50 %`. */
export function filterParts(query: FleetQuery, currency: string, units: ReaderUnits = 'kw'): FilterPart[] {
  const parts: FilterPart[] = [];
  if (query.text.trim() !== '') {
    parts.push({ key: 'q', text: `text holds “${query.text.trim()}”`, without: { ...query, text: '' } });
  }
  for (const column of FLEET_COLUMNS) {
    const name = column.name.toLowerCase();
    const chosen = query.words[column.id];
    if (chosen) {
      const { [column.id]: _gone, ...words } = query.words;
      const text = `${name} is ${chosen.map((value) => wordOf(column, value)).join(' or ')}`;
      parts.push({ key: column.id, text, without: { ...query, words } });
    }
    const range = query.ranges[column.id];
    if (range) {
      const { [column.id]: _gone, ...ranges } = query.ranges;
      const seen = shownColumn(column.id, units) ?? column;
      const unit = seen.unit === '' ? '' : ` ${seen.unit.replace('currency', currency)}`;
      const limits = {
        ...(range.from !== undefined && { from: shownLimit(column, range.from, units) }),
        ...(range.to !== undefined && { to: shownLimit(column, range.to, units) }),
      };
      parts.push({ key: column.id, text: `${name} ${rangeWords(limits)}${unit}`, without: { ...query, ranges } });
    }
  }
  return parts;
}

function rangeWords({ from, to }: Range): string {
  if (from !== undefined && to !== undefined) return `${from} to ${to}`;
  return from === undefined ? `at most ${to ?? ''}` : `at least ${from}`;
}

/** The order in words, for print: `present value, highest first`. */
export function sortWords(query: FleetQuery): string {
  if (query.sort.length === 0) return 'site and tag';
  return query.sort
    .map(({ column, descending }) => `${fleetColumn(column)?.name.toLowerCase() ?? column}${descending ? ', highest first' : ''}`)
    .join(', then ');
}

/** The motors wanted, in the order wanted. */
export function applyQuery(rows: readonly FleetRow[], query: FleetQuery): FleetRow[] {
  const tests = testsOf(query);
  const kept = tests.length === 0 ? [...rows] : rows.filter((row) => tests.every((test) => test(row)));
  return sortRows(kept, query.sort);
}

function testsOf(query: FleetQuery): ((row: FleetRow) => boolean)[] {
  const tests: ((row: FleetRow) => boolean)[] = [];
  for (const [id, chosen] of Object.entries(query.words)) {
    const column = fleetColumn(id);
    const wanted = new Set(chosen);
    if (column) tests.push((row) => wanted.has(String(column.value(row) ?? '')));
  }
  for (const [id, { from = Number.NEGATIVE_INFINITY, to = Number.POSITIVE_INFINITY }] of Object.entries(query.ranges)) {
    const column = fleetColumn(id);
    if (column) {
      tests.push((row) => {
        const value = column.value(row);
        return typeof value === 'number' && value >= from && value <= to;
      });
    }
  }
  const terms = fold(query.text)
    .split(/\s+/)
    .filter((term) => term !== '');
  if (terms.length > 0) {
    tests.push((row) => {
      const text = fold(`${row.tag} ${row.site ?? ''} ${row.area ?? ''} ${row.description ?? ''}`);
      return terms.every((term) => text.includes(term));
    });
  }
  return tests;
}

function fold(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase();
}

const COLLATOR = new Intl.Collator('en', { numeric: true });

/** Sorts rows by the keys; absent values stand last whatever the direction, ties in natural order of site and tag. */
function sortRows(rows: FleetRow[], sort: readonly SortKey[]): FleetRow[] {
  const keys = sort.flatMap(({ column, descending }) => {
    const found = fleetColumn(column);
    return found ? [{ values: sortValues(rows, found), descending }] : [];
  });
  if (keys.length === 0) return rows.sort((a, b) => a.order - b.order);
  const index = rows.map((_, at) => at);
  index.sort((a, b) => {
    for (const { values, descending } of keys) {
      const [one, two] = [values[a], values[b]];
      if (one === two) continue;
      if (one === undefined) return 1;
      if (two === undefined) return -1;
      const by = typeof one === 'number' && typeof two === 'number' ? one - two : COLLATOR.compare(String(one), String(two));
      if (by !== 0) return descending ? -by : by;
    }
    return (rows[a]?.order ?? 0) - (rows[b]?.order ?? 0);
  });
  return index.flatMap((at) => rows[at] ?? []);
}

/** What a column sorts by: numbers by size, words in their declared order, other text as people count. */
function sortValues(rows: readonly FleetRow[], column: FleetColumn): (string | number | undefined)[] {
  const order = column.words === undefined ? undefined : Object.keys(column.words);
  return rows.map((row) => {
    const value = column.value(row);
    return order === undefined || value === undefined ? value : order.indexOf(String(value));
  });
}

/** Counts of each word of a column, over rows; the declared words first, in their order. */
export function countWords(rows: readonly FleetRow[], column: FleetColumn): { readonly value: string; readonly count: number }[] {
  const counts = new Map<string, number>(Object.keys(column.words ?? {}).map((word) => [word, 0]));
  for (const row of rows) {
    const value = String(column.value(row) ?? '');
    counts.set(value, (counts.get(value) ?? 0) + 1);
  }
  const entries = [...counts].filter(([, count]) => count > 0).map(([value, count]) => ({ value, count }));
  if (column.words !== undefined) return entries;
  return entries.sort((a, b) => (a.value === '' ? 1 : b.value === '' ? -1 : COLLATOR.compare(a.value, b.value)));
}
