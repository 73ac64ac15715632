/**
 * Reads every reference table, checks it against its passport and fills the shape that the engine takes.
 * A damaged table stops the program: {@link DamagedTable} names file, row, column and remedy.
 */
import type { PriceList, ReferenceTables } from '@/lib/engine';
import { catalog, checkCatalog, type Entry, priceEntry } from './catalog';
import { DamagedTable } from './damaged-table';
import { referenceFolder } from './folder';
import { type Passport, readPassport } from './passport';
import { readPlainTable, readTable, readTableText, type TableText, type WithStatus } from './read-table';

export { DamagedTable } from './damaged-table';
export type { Passport } from './passport';

type CheckRow<Name extends keyof typeof checkCatalog> =
  (typeof checkCatalog)[Name] extends Entry<infer Row> ? WithStatus<Row> : never;

/** Tables that serve to read and to check the others. */
type CheckTables = { readonly [Name in keyof typeof checkCatalog]: readonly CheckRow<Name>[] };

/** Everything under `reference-data`, read, checked and frozen. */
export interface LoadedReference {
  readonly tables: ReferenceTables;
  readonly checks: CheckTables;
  /** One for each file, in the order of the catalogue, the price list last. */
  readonly passports: readonly Passport[];
  readonly prices: PriceList;
}

function freeze<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const part of Object.values(value)) freeze(part);
  }
  return value;
}

const idOf = (file: string): string => file.replace(/^.*\//, '').replace(/\.csv$/, '');

function readAll(folder: string): LoadedReference {
  const passports: Passport[] = [];

  function read(use: 'engine' | 'check', name: string, entry: Entry<object>) {
    const passport = readPassport(folder, entry.file);
    const { rows, rowCount, statusCounts } = readTable(folder, entry, passport);
    const id = idOf(entry.file);
    passports.push({ ...passport, id, name, use, file: entry.file, rowCount, statusCounts });
    return { id, title: passport.title, edition: passport.edition, clause: passport.clause, rows };
  }

  const tables = Object.entries(catalog).map(([name, entry]) => [name, read('engine', name, entry)]);
  const checks = Object.entries(checkCatalog).map(([name, entry]) => [name, read('check', name, entry).rows]);

  const passport = readPassport(folder, priceEntry.file);
  const prices = readPlainTable(folder, priceEntry, passport);
  const { file } = priceEntry;
  passports.push({ ...passport, id: idOf(file), name: 'prices', use: 'prices', file, rowCount: prices.length, statusCounts: {} });

  // The catalogue's mapped type ties each name to its row type, which Object.entries forgets: hence the two assertions.
  return freeze({
    tables: Object.fromEntries(tables) as ReferenceTables,
    checks: Object.fromEntries(checks) as CheckTables,
    passports,
    prices: { invented: true, prices },
  });
}

let loaded: LoadedReference | undefined;

/**
 * The reference tables, read once in the life of the program. With `folder`, reads that folder afresh.
 * @throws DamagedTable at the first fault.
 */
export function loadTables(folder?: string): LoadedReference {
  if (folder !== undefined) return readAll(folder);
  loaded ??= readAll(referenceFolder());
  return loaded;
}

const texts = new Map<string, TableText>();

/** A table as it is written, gaps and notes included; read once. `undefined` when the catalogue has none of this id. */
export function loadTableText(id: string): TableText | undefined {
  const passport = loadTables().passports.find((candidate) => candidate.id === id);
  if (passport === undefined) return undefined;
  const known = texts.get(id) ?? readTableText(referenceFolder(), passport.file);
  texts.set(id, known);
  return known;
}

/** Whether the tables on disk are sound now: for a health endpoint. Reads afresh and never throws on a damaged table. */
export function checkTables(folder?: string): { readonly ok: true } | { readonly ok: false; readonly problem: string } {
  try {
    readAll(folder ?? referenceFolder());
    return { ok: true };
  } catch (error) {
    if (error instanceof DamagedTable) return { ok: false, problem: error.message };
    throw error;
  }
}
