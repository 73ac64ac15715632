import type { Price } from '@/lib/engine';
import { csvRow } from '../fleet/csv-cell';
import { PRICE_COLUMNS } from '../study/price-columns';

/** A price as it leaves the program, with the currency in which it was given. */
export interface PricedLine {
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
