import { BOUGHT_CLASSES, type Price, type PriceList } from '@/lib/engine';
import { columnPlaces, type Places, shapeErrors } from '../fleet/column-places';
import { fromHead, lookAtColumns, notePassedOver } from '../fleet/head-row';
import { FileFault, type FileProblem, issue, type RowIssue } from '../fleet/issue-codes';
import type { DecimalSign } from '../fleet/number';
import { asFault, openTable, sourceName } from '../fleet/open-table';
import { type CellContext, readCell } from '../fleet/parse-cell';
import { type Delimiter, isBlank, type SheetSource, type TableRow } from '../fleet/table';
import { PRICE_COLUMNS, type PriceColumn } from './price-columns';

interface PriceOptions {
  /** Currency of the study: a price in another one is a row error. */
  readonly currency: string;
  /** Day of the study: a price of a later day is remarked on. */
  readonly asOf?: string | undefined;
  readonly decimal?: DecimalSign | undefined;
  readonly delimiter?: Delimiter | undefined;
  readonly encoding?: string | undefined;
}

type PricesOutcome =
  | {
      readonly ok: true;
      readonly list: PriceList;
      /** All that should be said of the list: doubtful cells, and for each rejected row why it was left out. */
      readonly warnings: readonly RowIssue[];
      /** Rows that were left out. */
      readonly rejectedRows: number;
    }
  | { readonly ok: false; readonly problem: FileProblem };

/** What is said of the head of a price list. */
const CODES = { missing: 'missing-price-column', unknown: 'unknown-price-column' } as const;

/** Reads a price list from CSV or a workbook by the rules of the fleet sheet. */
export async function readPrices(source: SheetSource, options: PriceOptions): Promise<PricesOutcome> {
  try {
    const table = await openTable(source, {
      ...(options.delimiter === undefined ? {} : { delimiter: options.delimiter }),
      ...(options.encoding === undefined ? {} : { encoding: options.encoding }),
    });
    const context = { decimal: options.decimal ?? '.', emptyWords: new Set<string>(), guarded: table.kind === 'csv' };
    const warnings: RowIssue[] = [];
    const prices: Price[] = [];
    const firsts = new Map<string, { readonly row: number; readonly price: number }>();
    let rejectedRows = 0;
    let places: Places<PriceColumn> | undefined;
    const blocks = fromHead(table.blocks, lookAtColumns(PRICE_COLUMNS), (above, head) =>
      warnings.push(...notePassedOver(above, head)),
    );
    for await (const block of blocks) {
      for (const line of block) {
        if (places === undefined) {
          places = columnPlaces(line, PRICE_COLUMNS, context, CODES, warnings);
          continue;
        }
        if (line.cells.every(isBlank)) continue;
        const { price, issues } = readPrice(line, places, { ...context, row: line.row }, options.currency);
        warnings.push(...issues);
        if (price === undefined) rejectedRows++;
        else {
          prices.push(price);
          warnings.push(...repeated(price, line.row, firsts), ...afterAsOf(price, line.row, options.asOf));
        }
      }
    }
    if (places === undefined) throw new FileFault('empty-file', { name: table.name });
    return {
      ok: true,
      // A copy of the invented list does not become real by being read from a file.
      list: { invented: prices.some(({ source }) => source?.startsWith(INVENTED) === true), prices },
      warnings,
      rejectedRows,
    };
  } catch (error) {
    const fault = asFault(error, sourceName(source));
    if (fault instanceof FileFault) return { ok: false, problem: fault.problem };
    throw error;
  }
}

function readPrice(
  line: TableRow,
  places: Places<PriceColumn>,
  context: CellContext,
  currency: string,
): { readonly price?: Price; readonly issues: RowIssue[] } {
  const { row } = line;
  const errors = shapeErrors(line, places.length);
  const doubts: RowIssue[] = [];
  const fields: Partial<Record<keyof Price, unknown>> = {};
  for (const [at, column] of places.entries()) {
    const cell = line.cells[at];
    if (column === undefined) continue;
    const { value, error, warning } = cell === undefined ? {} : readCell(column, cell, context);
    if (error) errors.push(error);
    if (warning) doubts.push(warning);
    if (value === undefined && error === undefined && column.required === 'always')
      errors.push(issue('missing-price', row, column.name));
    if (column.name === 'currency' && value !== undefined && String(value).toUpperCase() !== currency) {
      errors.push(issue('other-currency', row, column.name, { value: String(value), other: currency }));
    }
    if (column.field !== undefined && value !== undefined) fields[column.field] = value;
  }
  if (errors.length === 0 && fields.price === 0 && NEVER_FREE.has(String(fields.item)))
    errors.push(issue('price-of-nothing', row, 'price', { words: String(fields.item) }));
  if (errors.length > 0 || !isPrice(fields)) return { issues: errors };
  return { price: fields, issues: [...doubts, ...neverBought(fields, row)] };
}

/** Whether an option can take the price: a job, or a motor of a class that is bought. */
export function isBought({ item, efficiencyClass }: Price): boolean {
  return item !== 'motor' || (efficiencyClass !== undefined && BOUGHT_CLASSES.includes(efficiencyClass));
}

/** A motor whose class is not stated, or too low, is never what an option buys: that must be said, or the price seems to count. */
function neverBought(price: Price, row: number): RowIssue[] {
  if (isBought(price)) return [];
  const { efficiencyClass } = price;
  return efficiencyClass === undefined
    ? [issue('price-without-class', row, 'efficiency_class')]
    : [issue('price-below-premium', row, 'efficiency_class', { value: efficiencyClass })];
}

/** What nobody gives away; a job or a fitting may cost nothing where the site's own people do it. */
const NEVER_FREE: ReadonlySet<string> = new Set<Price['item']>(['motor', 'rewind']);

/** Of two lines for one thing the first holds, which would be by chance if nobody said so. */
function repeated(price: Price, row: number, firsts: Map<string, { readonly row: number; readonly price: number }>): RowIssue[] {
  if (!isBought(price)) return [];
  const { item, ratedPowerKw, poles, efficiencyClass, enclosure } = price;
  const key = [item, ratedPowerKw, poles, efficiencyClass === 'IE3' ? 'premium' : efficiencyClass, enclosure].join('|');
  const first = firsts.get(key);
  if (!first) firsts.set(key, { row, price: price.price });
  return first
    ? [issue('price-repeated', row, 'price', { words: String(price.price), other: String(first.price), otherRow: first.row })]
    : [];
}

function afterAsOf({ date }: Price, row: number, asOf: string | undefined): RowIssue[] {
  if (date === undefined || asOf === undefined || date.slice(0, 10) <= asOf) return [];
  return [issue('price-after-as-of', row, 'date', { value: date, other: asOf })];
}

/** The word with which each line of the invented list, and of a copy of it, names its source. */
const INVENTED = 'invented';

/** The cell readers have checked each field; what remains is that the two required ones are there. */
function isPrice(fields: Partial<Record<keyof Price, unknown>>): fields is Price {
  return typeof fields.item === 'string' && typeof fields.price === 'number';
}
