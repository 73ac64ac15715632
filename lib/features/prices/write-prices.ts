import type { Price } from '@/lib/engine';
import { csvRow } from '../fleet/csv-cell';
import { PRICE_COLUMNS } from '../study/price-columns';
import type { PriceCells } from './schema';

/** A price as it leaves the program, with the currency in which it was given. */
interface PricedLine {
  readonly price: Price;
  readonly currency: string;
}

/** A price list as the file that a settings file names; read again it gives the same prices. */
export function pricesCsv(lines: readonly PricedLine[]): string {
  const rows = lines.map(({ price, currency }) =>
    csvRow(
      PRICE_COLUMNS.map(({ name, field }) => (field === undefined ? (name === 'currency' ? currency : undefined) : price[field])),
    ),
  );
  return csvRow(PRICE_COLUMNS.map(({ name }) => name)) + rows.join('');
}

/** A price as the cells of a form, without its currency. */
export function cellsOf(price: Price): PriceCells {
  return Object.fromEntries(
    PRICE_COLUMNS.flatMap(({ name, field }) => {
      const value = field === undefined ? undefined : price[field];
      return value === undefined ? [] : [[name, String(value)]];
    }),
  );
}
