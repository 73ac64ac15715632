import { MOST_HOURS_PER_YEAR } from '@/lib/engine';
import { formatAsStated } from '@/lib/platform/format';
import type { CellValue, Column, NumberKind } from './column';
import { withoutGuard } from './csv-cell';
import { issue, type RowIssue, withValue } from './issue-codes';
import { type NumberRefusal, readNumber } from './number';
import { readBearing, readDuty, readNumberList, readTeeth } from './parse-compound';
import { type Cell, cellText, type Dialect, LIMITS } from './table';
import { readDate } from './taken-at';

export interface CellContext {
  readonly row: number;
  readonly decimal: Dialect['decimal'];
  /** Words that mean an empty cell, in lower case. */
  readonly emptyWords: ReadonlySet<string>;
  /** CSV text may carry the apostrophe that keeps a spreadsheet from taking it for a formula. */
  readonly guarded: boolean;
}

/** What came of a cell: a value, nothing, or an error; with a warning if the value is doubtful. */
interface CellResult {
  readonly value?: CellValue;
  readonly error?: RowIssue;
  readonly warning?: RowIssue;
}

const NOTHING: CellResult = {};
/** Largest count or year that the database keeps (32 bits). */
const WHOLE_MAX = 2_147_483_647;
/** Largest amount that can be kept exactly in thousandths, the smallest minor units there are. */
const MONEY_MAX = 9_000_000_000_000;
/** Names that a spreadsheet likes to turn into dates. */
const NEVER_DATES = new Set(['tag', 'site', 'area', 'frame']);

/** Text of a cell without surrounding spaces and without the apostrophe of a guarded CSV cell. */
export function plainText(cell: Cell, context: Pick<CellContext, 'decimal' | 'guarded'>): string {
  const text = cellText(cell, context.decimal).trim();
  return context.guarded ? withoutGuard(text) : text;
}

/** Reads one cell by the rules of its column. */
export function readCell(column: Column, cell: Cell, context: CellContext): CellResult {
  const { row } = context;
  if (typeof cell === 'object' && 'fault' in cell) {
    return { error: issue(cell.fault === '' ? 'formula-without-value' : 'cell-error', row, column.name, { value: cell.fault }) };
  }
  const text = plainText(cell, context);
  if (text === '' || context.emptyWords.has(text.toLowerCase())) return NOTHING;
  if (text.length > LIMITS.cellCharacters) {
    return { error: issue('cell-too-long', row, column.name, { value: text, count: text.length, limit: LIMITS.cellCharacters }) };
  }
  if (typeof cell === 'object' && column.kind.type !== 'date' && (column.kind.type !== 'text' || NEVER_DATES.has(column.name))) {
    return { error: issue('date-for-value', row, column.name, { value: text }) };
  }
  return readText(column, text, cell, context);
}

function readText(column: Column, text: string, cell: Cell, context: CellContext): CellResult {
  const { kind } = column;
  switch (kind.type) {
    case 'text':
      return { value: text };
    case 'passed-over':
      return NOTHING;
    case 'letter':
      return /^[a-z]$/i.test(text) ? { value: text.toUpperCase() } : fail(column, text, context, 'not-a-letter');
    case 'word': {
      const wanted = text.toLowerCase();
      const known = kind.words.find((word) => word.toLowerCase() === wanted);
      return known === undefined ? fail(column, text, context, 'unknown-word', kind.words.join(', ')) : { value: known };
    }
    case 'yes-no': {
      if (typeof cell === 'boolean') return { value: cell };
      const answer = text.toLowerCase();
      return answer === 'yes' || answer === 'no' ? { value: answer === 'yes' } : fail(column, text, context, 'not-yes-no');
    }
    case 'date': {
      if (typeof cell === 'number') return fail(column, text, context, 'number-for-date');
      const value = readDate(text);
      return value === undefined ? fail(column, text, context, 'unreadable-date') : { value };
    }
    case 'number':
      return readNumberCell(column, kind, text, cell, context);
    case 'number-list':
      return compound(readNumberList(text, context), 'unreadable-list', column, text, context);
    case 'teeth':
      return compound(readTeeth(text, context), 'unreadable-teeth', column, text, context);
    case 'bearing':
      return compound(readBearing(text, context), 'unreadable-bearing', column, text, context);
    case 'duty': {
      const steps = readDuty(text, context);
      if (steps === undefined) return refusedCompound('unreadable-duty', column, text, context);
      const hours = steps.reduce((sum, step) => sum + step.hoursPerYear, 0);
      if (hours <= MOST_HOURS_PER_YEAR) return { value: steps };
      const count = Number(hours.toPrecision(6));
      return { error: issue('duty-too-long', context.row, column.name, { value: text, count, limit: MOST_HOURS_PER_YEAR }) };
    }
  }
}

function fail(column: Column, text: string, { row }: CellContext, code: Parameters<typeof issue>[0], words = ''): CellResult {
  return { error: issue(code, row, column.name, { value: text, words }) };
}

/** How each kind of cell that holds several numbers is written. */
const EXAMPLES = {
  'unreadable-list': '118.3;236.5',
  'unreadable-teeth': '23;67',
  'unreadable-bearing': '9/12.7/58.5/0',
  'unreadable-duty': '1@4000;0.5@2000',
};

function compound(
  value: CellValue | undefined,
  code: keyof typeof EXAMPLES,
  column: Column,
  text: string,
  context: CellContext,
): CellResult {
  return value === undefined ? refusedCompound(code, column, text, context) : { value };
}

/** A part with the other decimal sign is named as that: the whole sheet is likely written so. */
function refusedCompound(code: keyof typeof EXAMPLES, column: Column, text: string, context: CellContext): CellResult {
  for (const part of text.split(/[;@/]/)) {
    const reading = readNumber(part, context);
    if (!reading.ok && reading.code === 'other-decimal-sign') return refused(reading, column, text, context);
  }
  return fail(column, text, context, code, EXAMPLES[code].replaceAll('.', context.decimal));
}

function refused(
  { code, text: sentence, remedy }: NumberRefusal,
  column: Column,
  text: string,
  { row }: CellContext,
): CellResult {
  return { error: withValue({ row, column: column.name, code, text: sentence, remedy }, text) };
}

function readNumberCell(column: Column, kind: NumberKind, text: string, cell: Cell, context: CellContext): CellResult {
  const { row } = context;
  // A workbook's number needs no decimal sign; its text is read like any other.
  const reading = typeof cell === 'number' ? readNumber(String(cell), { decimal: '.' }) : readNumber(text, context);
  if (!reading.ok) return refused(reading, column, text, context);
  const { value } = reading;
  const error = refuseNumber(column, kind, value, text, row);
  if (error !== undefined) return { error };
  const warning = questionNumber(column, kind, value, text, row);
  return warning === undefined ? { value } : { value, warning };
}

function refuseNumber({ name }: Column, kind: NumberKind, value: number, text: string, row: number): RowIssue | undefined {
  if (kind.oneOf && !kind.oneOf.includes(value))
    return issue('not-allowed', row, name, { value: text, words: kind.oneOf.join(', ') });
  if (kind.rated === 'positive' && value <= 0)
    return issue('rated-not-positive', row, name, { value: text, words: 'zero or less' });
  if (kind.rated === 'either-sign' && value === 0) return issue('rated-not-positive', row, name, { value: text, words: 'zero' });
  if (kind.whole && !Number.isInteger(value)) return issue('not-whole', row, name, { value: text });
  const most = kind.whole ? WHOLE_MAX : kind.unit === 'currency' ? MONEY_MAX : Number.POSITIVE_INFINITY;
  if (Math.abs(value) > most) return issue('not-allowed', row, name, { value: text, words: `a number up to ${most}` });
  if (kind.even && (value <= 0 || value % 2 !== 0)) return issue('not-even', row, name, { value: text });
  const [low, high] = kind.limits ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  if (value >= low && value <= high) return undefined;
  if (kind.unit === 'h') return issue('hours-out-of-range', row, name, { value: text, limit: high });
  return issue('not-allowed', row, name, {
    value: text,
    words: high < Number.MAX_VALUE ? `a number from ${low} to ${high}` : `a number of ${low} or more`,
  });
}

function questionNumber({ name }: Column, kind: NumberKind, value: number, text: string, row: number): RowIssue | undefined {
  if (kind.fractionCode && value !== 0 && Math.abs(value) <= 1) return issue(kind.fractionCode, row, name, { value: text });
  const [low, high] = kind.possible ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  const unit = kind.unit === '1' || kind.unit === 'currency' ? '' : kind.unit;
  if (value < low || value > high) return issue('implausible-value', row, name, { value: text, unit });
  const [least, most] = kind.usual ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  if (value >= least && value <= most) return undefined;
  return issue('unusual-value', row, name, {
    value: text,
    unit,
    words: `${formatAsStated(least)} to ${formatAsStated(most)} ${unit}`,
  });
}
