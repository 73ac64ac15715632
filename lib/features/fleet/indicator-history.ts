import { fromHead, type LookAtHead, notePassedOver } from './head-row';
import { HISTORY_INDICATORS, type HistoryIndicator, inOurUnit, unitsFor } from './history-columns';
import { FileFault, type FileProblem, issue, type RowIssue, withValue } from './issue-codes';
import { nearestWord } from './nearest';
import { type DecimalSign, readNumber } from './number';
import { asFault, openTable, sourceName } from './open-table';
import { plainText } from './parse-cell';
import { cellText, type Delimiter, isBlank, type SheetSource, type TableRow } from './table';
import { readDate } from './taken-at';

/** One value of an indicator history, in the unit of the fleet sheet. */
export interface HistoryValue {
  readonly row: number;
  readonly site: string;
  readonly tag: string;
  readonly indicator: HistoryIndicator;
  readonly value: number;
  readonly takenAt: string | undefined;
  readonly instrument: string | undefined;
}

interface HistoryOptions {
  readonly decimal?: DecimalSign | undefined;
  readonly delimiter?: Delimiter | undefined;
  readonly encoding?: string | undefined;
  readonly emptyWords?: readonly string[] | undefined;
  /** ISO date of the study: a value from after it is used, with a warning. */
  readonly asOf?: string | undefined;
}

export type HistoryOutcome =
  | {
      readonly ok: true;
      readonly values: readonly HistoryValue[];
      /** Why rows were left out, one for each. */
      readonly rejected: readonly RowIssue[];
      readonly warnings: readonly RowIssue[];
      readonly header: readonly string[];
      /** The cells of each row as they stand in the file, by row: rejected ones are given back with them. */
      readonly cells: ReadonlyMap<number, readonly string[]>;
    }
  | { readonly ok: false; readonly problem: FileProblem };

/** Columns of an indicator history, in the order in which we write them. */
export const HISTORY_FILE_COLUMNS = ['site', 'tag', 'indicator', 'value', 'unit', 'taken_at', 'instrument'] as const;
type ColumnName = (typeof HISTORY_FILE_COLUMNS)[number];
const REQUIRED: readonly ColumnName[] = ['tag', 'indicator', 'value', 'unit'];

type Context = {
  readonly decimal: DecimalSign;
  readonly guarded: boolean;
  readonly emptyWords: ReadonlySet<string>;
  readonly asOf: string | undefined;
};

/** Reads an indicator history, one value a row, from CSV or a workbook, by the rules of the fleet sheet. A bad row is rejected alone. */
export async function readHistory(source: SheetSource, options: HistoryOptions = {}): Promise<HistoryOutcome> {
  try {
    const table = await openTable(source, {
      ...(options.delimiter === undefined ? {} : { delimiter: options.delimiter }),
      ...(options.encoding === undefined ? {} : { encoding: options.encoding }),
    });
    const emptyWords = new Set((options.emptyWords ?? []).map((word) => word.trim().toLowerCase()));
    const context: Context = {
      decimal: options.decimal ?? '.',
      guarded: table.kind === 'csv',
      emptyWords,
      asOf: options.asOf,
    };
    const values: HistoryValue[] = [];
    const rejected: RowIssue[] = [];
    const warnings: RowIssue[] = [];
    const cells = new Map<number, readonly string[]>();
    let header: readonly string[] = [];
    let places: ReadonlyMap<ColumnName, number> | undefined;
    const rows = fromHead(table.blocks, lookAtHistoryHead, (above, head) => warnings.push(...notePassedOver(above, head)));
    for await (const block of rows) {
      for (const line of block) {
        if (places === undefined) {
          places = readHeader(line, context);
          header = line.cells.map((cell) => cellText(cell, context.decimal));
          continue;
        }
        if (line.cells.every(isBlank)) continue;
        cells.set(
          line.row,
          line.cells.map((cell) => cellText(cell, context.decimal)),
        );
        const read = readLine(line, places, context);
        if ('value' in read) {
          values.push(read.value);
          if (read.warning) warnings.push(read.warning);
        } else rejected.push(read.error);
      }
    }
    if (places === undefined) throw new FileFault('empty-file', { name: table.name });
    return { ok: true, values, rejected, warnings, header, cells };
  } catch (error) {
    const fault = asFault(error, sourceName(source));
    if (fault instanceof FileFault) return { ok: false, problem: fault.problem };
    throw error;
  }
}

/** A row of a history has all that is required, so that many cells are filled in. */
const lookAtHistoryHead: LookAtHead = (titles) => {
  const names = new Set<string>(titles.map((title) => title.toLowerCase()));
  return {
    known: HISTORY_FILE_COLUMNS.filter((name) => names.has(name)).length,
    complete: REQUIRED.every((name) => names.has(name)),
    isData: ({ cells }) => cells.filter((cell) => !isBlank(cell)).length >= REQUIRED.length,
  };
};

function readHeader(line: TableRow, context: Context): ReadonlyMap<ColumnName, number> {
  const titles = line.cells.map((cell) => plainText(cell, context).toLowerCase());
  const places = new Map(
    HISTORY_FILE_COLUMNS.flatMap((name) => (titles.includes(name) ? [[name, titles.indexOf(name)] as const] : [])),
  );
  const twice = HISTORY_FILE_COLUMNS.filter((name) => titles.indexOf(name) !== titles.lastIndexOf(name));
  if (twice.length > 0) throw new FileFault('duplicate-column', { words: twice.join(', ') });
  const missing = REQUIRED.filter((name) => !places.has(name));
  if (missing.length > 0)
    throw new FileFault('missing-history-column', { words: missing.join(', '), other: HISTORY_FILE_COLUMNS.join(', ') });
  return places;
}

type Line = { readonly value: HistoryValue; readonly warning: RowIssue | undefined } | { readonly error: RowIssue };

function readLine(line: TableRow, places: ReadonlyMap<ColumnName, number>, context: Context): Line {
  const { row } = line;
  if (line.malformed) return { error: issue('malformed-quote', row, '') };
  const text = (name: ColumnName): string => {
    const cell = line.cells[places.get(name) ?? -1];
    const words = cell === undefined ? '' : plainText(cell, context);
    return context.emptyWords.has(words.toLowerCase()) ? '' : words;
  };
  const empty = (['tag', 'indicator', 'value'] as const).find((name) => text(name) === '');
  if (empty) return { error: issue('missing-history', row, empty) };
  const word = text('indicator').toLowerCase();
  const indicator = HISTORY_INDICATORS.get(word);
  if (!indicator) {
    const known = [...HISTORY_INDICATORS.keys()];
    const near = nearestWord(word, known);
    return {
      error: issue('unknown-indicator', row, 'indicator', {
        value: text('indicator'),
        words: known.join(', '),
        other: near ? `did you mean ${near}? Known: ` : 'known: ',
      }),
    };
  }
  const number = readNumber(text('value'), context);
  if (!number.ok)
    return {
      error: withValue({ row, column: 'value', code: number.code, text: number.text, remedy: number.remedy }, text('value')),
    };
  const value = inOurUnit(number.value, text('unit'), indicator.unit);
  if (value === undefined) {
    const words = unitsFor(indicator.unit).join(', ');
    return { error: issue('unknown-unit', row, 'unit', { value: text('unit'), other: indicator.name, words }) };
  }
  const written = text('taken_at');
  const takenAt = written === '' ? undefined : readDate(written);
  if (written !== '' && takenAt === undefined) return { error: issue('unreadable-date', row, 'taken_at', { value: written }) };
  const [low, high] = indicator.possible ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  const warning =
    value < low || value > high
      ? issue('implausible-value', row, 'value', { value: text('value'), unit: text('unit') })
      : takenAt === undefined
        ? issue('reading-undated', row, 'taken_at', { words: 'A reading' })
        : context.asOf !== undefined && takenAt.slice(0, 10) > context.asOf
          ? issue('reading-after-as-of', row, 'taken_at', { value: takenAt, other: context.asOf })
          : undefined;
  const instrument = text('instrument') === '' ? undefined : text('instrument');
  return { value: { row, site: text('site'), tag: text('tag'), indicator, value, takenAt, instrument }, warning };
}
