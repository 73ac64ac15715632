import { FORMULAS, LOAD_METHODS } from '@/lib/engine';
import { loadTables, loadTableText, type Passport } from '@/lib/reference/load';

/** A relation as plain data for a screen. */
export interface FormulaEntry {
  readonly id: string;
  readonly title: string;
  readonly symbol: string;
  readonly unit: string;
  readonly tex: string;
  readonly valid: string;
  readonly source: string;
  readonly inputs: readonly { readonly name: string; readonly symbol: string; readonly unit: string; readonly meaning: string }[];
}

interface FormulaGroup {
  readonly id: string;
  readonly title: string;
  readonly formulas: readonly FormulaEntry[];
}

/** Names of the groups in the order of the corridor from plate to money; a group without a name takes its own. */
const TITLES: Readonly<Record<string, string>> = {
  nameplate: 'Nameplate',
  machine: 'Machine and losses',
  load: 'Load',
  duty: 'Duty',
  condition: 'Condition',
  options: 'Options',
  money: 'Money',
};

/** Every relation of the engine, group by group. */
export function loadFormulas(): FormulaGroup[] {
  const order = Object.keys(TITLES);
  const place = (id: string) => (order.includes(id) ? order.indexOf(id) : order.length);
  return Object.entries(FORMULAS)
    .sort(([a], [b]) => place(a) - place(b))
    .map(([id, formulas]) => ({
      id,
      title: TITLES[id] ?? id,
      formulas: Object.values(formulas).map((formula) => ({
        id: formula.id,
        title: formula.title,
        symbol: formula.symbol,
        unit: formula.unit,
        tex: formula.tex,
        valid: formula.valid,
        source: formula.source,
        inputs: formula.names.map((name) => {
          const input = formula.inputs[name];
          return { name, symbol: input?.symbol ?? name, unit: input?.unit ?? '1', meaning: input?.meaning ?? '' };
        }),
      })),
    }));
}

/** The registered ways to the load. */
export function loadMethods(): readonly {
  readonly id: string;
  readonly title: string;
  readonly needs: readonly string[];
  readonly validity: string;
  readonly source: string;
  /** Page of the manual that comes with the program. */
  readonly page: string;
}[] {
  return LOAD_METHODS.map(({ id, title, needs, validity, source, page }) => ({
    id,
    title,
    needs,
    validity,
    source,
    page: `docs/${page}`,
  }));
}

/** A table with its passport, as plain data. */
export interface TableEntry {
  readonly id: string;
  readonly title: string;
  readonly issuer: string;
  readonly edition: string;
  readonly clause: string;
  readonly read: string;
  readonly verified: string;
  readonly reuse: string;
  readonly misprints: readonly string[];
  readonly statusCounts: readonly { readonly status: string; readonly count: number }[];
  readonly rowCount: number;
  readonly use: 'engine' | 'check' | 'prices';
}

/** A column of a table as a screen shows it. */
export interface TableColumn {
  /** Name in the file. */
  readonly id: string;
  /** The same in words, without its unit. */
  readonly name: string;
  /** Empty for words and counts. */
  readonly unit: string;
  readonly meaning: string;
  /** Whether every filled cell is a number. */
  readonly numeric: boolean;
}

/** A table with the rows that were asked for. */
interface ShownTable {
  readonly entry: TableEntry;
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly string[])[];
}

function entryOf(passport: Passport): TableEntry {
  const { id, title, issuer, edition, clause, read, verified, reuse, misprints, rowCount, use } = passport;
  const statusCounts = Object.entries(passport.statusCounts).map(([status, count]) => ({ status, count: count ?? 0 }));
  return { id, title, issuer, edition, clause, read, verified, reuse, misprints, rowCount, use, statusCounts };
}

/** The reference tables whose passport or rows hold all the words of `find`; every one when it is empty. */
export function loadPassports(find = ''): TableEntry[] {
  const words = wordsOf(find);
  return loadTables()
    .passports.filter((passport) => {
      if (words.length === 0) return true;
      const { id, title, issuer, edition, clause } = passport;
      const text = fold([id, title, issuer, edition, clause].join(' '));
      return words.every((word) => text.includes(word)) || rowsWith(loadTableText(passport.id)?.rows ?? [], words).length > 0;
    })
    .map(entryOf);
}

/** One table with those of its rows that hold all the words of `find`; `undefined` when there is none of this id. */
export function loadTable(id: string, find = ''): ShownTable | undefined {
  const passport = loadTables().passports.find((candidate) => candidate.id === id);
  const text = loadTableText(id);
  if (passport === undefined || text === undefined) return undefined;
  return {
    entry: entryOf(passport),
    columns: text.header.map((name, at) => {
      const { unit = '', meaning = '' } = passport.columns[name] ?? {};
      const shown = UNITLESS.has(unit) ? '' : unit;
      const cells = text.rows.map((row) => row[at] ?? '').filter((cell) => cell !== '');
      return {
        id: name,
        name: nameOf(name, shown !== ''),
        unit: shown,
        meaning,
        numeric: cells.length > 0 && cells.every((cell) => NUMBER.test(cell)),
      };
    }),
    rows: rowsWith(text.rows, wordsOf(find)),
  };
}

const NUMBER = /^-?\d+(\.\d+)?$/;

/** What passports write in place of a unit where a column has none. */
const UNITLESS = new Set(['word', 'text', 'count', 'letter', 'sign', 'number', 'code', 'date', '1', 'as unit', 'as basis']);

/** Units at the end or in the middle of a column's name; the unit stands under it. */
const UNIT_IN_NAME = /_(?:mm_s|um|kw|hp|hz|pct|kvar|rpm|points|weeks|[ackh])(?=_|$)/g;

/** A column's name in words: `rated_power_kw` becomes `rated power`. */
function nameOf(name: string, hasUnit: boolean): string {
  return (hasUnit ? name.replaceAll(UNIT_IN_NAME, '') : name).replaceAll('_', ' ');
}

function fold(text: string): string {
  return text.normalize('NFKC').toLowerCase();
}

function wordsOf(find: string): string[] {
  return fold(find)
    .split(/\s+/)
    .filter((word) => word !== '');
}

function rowsWith(rows: readonly (readonly string[])[], words: readonly string[]): readonly (readonly string[])[] {
  if (words.length === 0) return rows;
  return rows.filter((row) => {
    const cells = row.map(fold);
    return words.every((word) => cells.some((cell) => (NUMBER.test(word) ? cell === word : cell.includes(word))));
  });
}
