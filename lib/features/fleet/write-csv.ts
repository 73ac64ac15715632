import type { Motor } from '@/lib/engine';
import { COLUMNS, columnByName, RETURNED_COLUMNS } from './columns';
import { csvRow, returnedCell, type Writable } from './csv-cell';
import type { RowIssue } from './issue-codes';
import type { Dialect } from './table';
import { motorRows } from './write-cells';

export { csvRow, type Writable } from './csv-cell';

/** A motor to be written, with the notes that its import kept. */
export interface WritableMotor {
  readonly motor: Motor;
  readonly notes?: Readonly<Record<string, string>>;
}

const PLAIN: Dialect = { delimiter: ',', decimal: '.' };
const ALWAYS = new Set(COLUMNS.filter((column) => column.required !== undefined).map((column) => column.name));

/** Writes motors as a fleet sheet in canonical columns, leaving out columns that nothing fills. Reading it gives the motors back. */
export function writeFleetCsv(motors: readonly WritableMotor[], dialect: Dialect = PLAIN): string {
  return [...fleetCsvLines(motors, dialect)].join('');
}

/** The same line by line, for fleets too large for one text. */
export function* fleetCsvLines(motors: readonly WritableMotor[], dialect: Dialect = PLAIN): Generator<string> {
  const used = new Set(ALWAYS);
  const noteNames = new Map<string, string>();
  for (const { motor, notes = {} } of motors) {
    for (const row of motorRows(motor, dialect.decimal)) for (const [name, value] of row) if (value !== undefined) used.add(name);
    for (const name of Object.keys(notes)) if (!noteNames.has(name.toLowerCase())) noteNames.set(name.toLowerCase(), name);
  }
  const names = COLUMNS.map((column) => column.name).filter((name) => used.has(name));
  const extra = [...noteNames].filter(([key]) => columnByName(key) === undefined);
  yield csvRow([...names, ...extra.map(([, name]) => name)], dialect);
  for (const { motor, notes = {} } of motors) {
    const texts = notesByKey(notes);
    for (const [at, row] of motorRows(motor, dialect.decimal).entries()) {
      const noted = extra.map(([key]): Writable => (at === 0 ? texts.get(key) : undefined));
      yield csvRow([...names.map((name) => row.get(name)), ...noted], dialect);
    }
  }
}

/** Column names do not tell capitals from small letters: notes that differ in these alone share a cell. */
function notesByKey(notes: Readonly<Record<string, string>>): Map<string, string> {
  const texts = new Map<string, string>();
  for (const [name, text] of Object.entries(notes)) {
    const earlier = texts.get(name.toLowerCase());
    texts.set(name.toLowerCase(), earlier === undefined ? text : `${earlier} | ${text}`);
  }
  return texts;
}

/** What the file of rejected rows needs of a parsed sheet. */
interface RejectedSheet {
  readonly header: readonly string[];
  readonly rejected: readonly {
    readonly row: number;
    readonly issues: readonly Pick<RowIssue, 'text' | 'remedy'>[];
    readonly cells: readonly string[];
  }[];
  readonly dialect: Dialect;
}

/**
 * The rejected rows with their original cells, and behind them the row, the reasons and the remedies. The file
 * imports as it is once the cells are mended: the columns added here are passed over.
 */
export function rejectedCsv({ header, rejected, dialect }: RejectedSheet): string {
  const own = header.map((name, at) => ({ name, at })).filter(({ name }) => columnByName(name)?.kind.type !== 'passed-over');
  const lines = [csvRow([...own.map(({ name }) => name), ...RETURNED_COLUMNS.map((column) => column.name)], dialect)];
  for (const { row, issues, cells } of rejected) {
    const beyond = cells.slice(header.length);
    const given = [...own.map(({ at }) => cells[at] ?? '')].map((text) => returnedCell(text, dialect));
    const reason = issues.map(({ text }) => text).join(' ');
    const remedy = [...new Set(issues.map((issue) => issue.remedy))].join(' ');
    const added = csvRow([row, reason, remedy, ...beyond], dialect);
    lines.push(`${given.join(dialect.delimiter)}${dialect.delimiter}${added}`);
  }
  return lines.join('');
}
