import { FORMULAS, LOAD_METHODS } from '@/lib/engine';
import { loadTables } from '@/lib/reference/load';

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

export interface FormulaGroup {
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
}[] {
  return LOAD_METHODS.map(({ id, title, needs, validity, source }) => ({ id, title, needs, validity, source }));
}

/** A table with its passport and its rows, as plain data. */
export interface TableEntry {
  readonly id: string;
  readonly title: string;
  readonly issuer: string;
  readonly edition: string;
  readonly clause: string;
  readonly read: string;
  readonly verified: string;
  readonly misprints: readonly string[];
  readonly statusCounts: readonly { readonly status: string; readonly count: number }[];
  readonly rowCount: number;
  readonly use: 'engine' | 'check' | 'prices';
}

/** Every reference table by its passport. */
export function loadPassports(): TableEntry[] {
  return loadTables().passports.map((passport) => ({
    id: passport.id,
    title: passport.title,
    issuer: passport.issuer,
    edition: passport.edition,
    clause: passport.clause,
    read: passport.read,
    verified: passport.verified,
    misprints: passport.misprints,
    rowCount: passport.rowCount,
    use: passport.use,
    statusCounts: Object.entries(passport.statusCounts).map(([status, count]) => ({ status, count: count ?? 0 })),
  }));
}

/** The rows of one table as text, with the units of its columns; `undefined` when there is none of this id. */
export function loadTableRows(
  id: string,
):
  | { readonly entry: TableEntry; readonly columns: readonly string[]; readonly rows: readonly (readonly string[])[] }
  | undefined {
  const reference = loadTables();
  const entry = loadPassports().find((passport) => passport.id === id);
  if (!entry) return undefined;
  if (entry.use === 'prices') return { entry, ...asText(reference.prices.prices) };
  const tables: readonly { readonly id: string; readonly rows: readonly object[] }[] = [
    ...Object.values(reference.tables),
    ...Object.values(reference.checks),
  ];
  const table = tables.find((candidate) => candidate.id === id);
  return table ? { entry, ...asText(table.rows) } : undefined;
}

function asText(rows: readonly object[]): { readonly columns: readonly string[]; readonly rows: readonly (readonly string[])[] } {
  const columns = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  return { columns: columns.map(plain), rows: rows.map((row) => columns.map((name) => String(Reflect.get(row, name) ?? ''))) };
}

/** `ratedPowerKw` in words: rated power kw. */
function plain(name: string): string {
  return name.replaceAll(/([A-Z])/g, ' $1').toLowerCase();
}
