import { readNumber } from './number';
import type { Delimiter, Dialect } from './table';

/** What a cell may hold; an absent value is an empty cell. */
export type Writable = string | number | boolean | undefined;

const COMMA: Dialect = { delimiter: ',', decimal: '.' };
const ACTIVE = /^'*[=+\-@\t\r\n＝＋－＠]/;

/**
 * A value as a CSV cell. Numbers stay numbers, negative ones too. Text that a spreadsheet would take for a formula
 * gets an apostrophe in front, which our own reader takes off again. Numbers that are not finite are left out.
 */
export function csvCell(value: Writable, dialect: Dialect = COMMA): string {
  if (value === undefined) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) return '';
    // No separator is a point, a digit or a sign, so that only a comma may have to be quoted.
    return dialect.decimal === ',' ? quote(String(value).replace('.', ','), dialect.delimiter) : String(value);
  }
  return quote(ACTIVE.test(value) ? `'${value}` : value, dialect.delimiter);
}

/** A line of CSV with its line end. */
export function csvRow(values: readonly Writable[], dialect: Dialect = COMMA): string {
  return `${values.map((value) => csvCell(value, dialect)).join(dialect.delimiter)}\r\n`;
}

/** A cell given back as it was written: a readable number keeps its text, anything else is guarded as text. */
export function returnedCell(text: string, dialect: Dialect): string {
  return readNumber(text, dialect).ok ? quote(text, dialect.delimiter) : csvCell(text, dialect);
}

/** Takes the apostrophe of a guarded cell off again. */
export function withoutGuard(text: string): string {
  return text.startsWith("'") && ACTIVE.test(text) ? text.slice(1) : text;
}

function quote(text: string, delimiter: Delimiter): string {
  const needed = text.includes(delimiter) || /["\r\n;]|^\s|\s$/.test(text);
  return needed ? `"${text.replaceAll('"', '""')}"` : text;
}
