import type { Settings } from '../settings';
import { writtenOff } from './depreciation';

/** How the tax sees an amount: written off over years, deducted in the year that it opens or closes, or taken in. */
type TaxKind = 'purchase' | 'expense-at-start' | 'expense' | 'proceeds';

interface Flow {
  readonly yearly: readonly number[];
}

type TaxSettings = Pick<Settings, 'taxRate' | 'depreciation' | 'moneyTerms' | 'inflation'>;

/**
 * What the tax gives back and takes on the terms of a cash flow other than savings: purchases by their depreciation, repairs at the end of
 * the year in which they fall (one that opens a year, a year later), what is left at the horizon as income. What is not written off by then is written off there, as at a sale.
 * Empty without a tax or without a stated depreciation.
 *
 * Units: those of the terms, by year, 0 first; positive when less tax is paid. The first part of a purchase at the start of a year falls at
 * that year's end, with the savings. In real money a part is worth less by the inflation since the purchase, since books are kept in the
 * money of their day.
 * Source: ASTM E917 (taxes in life-cycle cost, from memory); own derivation in docs/methods/options-and-money.md.
 */
export function taxTerms<T extends Flow>(
  settings: TaxSettings,
  terms: readonly T[],
  kindOf: (term: T) => TaxKind | undefined,
): { readonly term: T; readonly yearly: readonly number[] }[] {
  if (settings.taxRate === 0 || settings.depreciation === null) return [];
  const found: { term: T; yearly: readonly number[] }[] = [];
  for (const term of terms) {
    const kind = kindOf(term);
    if (kind) found.push({ term, yearly: taxOf(settings, term.yearly, kind) });
  }
  return found;
}

function taxOf(settings: TaxSettings, flow: readonly number[], kind: TaxKind): number[] {
  const yearly = new Array<number>(flow.length).fill(0);
  const last = flow.length - 1;
  const book = (year: number, amount: number) => {
    const at = Math.min(year, last);
    yearly[at] = (yearly[at] ?? 0) - settings.taxRate * amount;
  };
  const shares = settings.depreciation ? writtenOff(settings.depreciation) : [];
  const eroded = settings.moneyTerms === 'real' ? settings.inflation : 0;
  flow.forEach((amount, year) => {
    if (amount === 0) return;
    if (kind === 'expense-at-start') book(year + 1, amount / (1 + eroded));
    else if (kind !== 'purchase') book(year, amount);
    else
      shares.forEach((share, index) => {
        const at = Math.min(year + index + 1, last);
        book(at, (amount * share) / (1 + eroded) ** (at - year));
      });
  });
  return yearly;
}

/** Flows after tax on savings, with the relief on what is spent in year 0, where the settings state a depreciation. */
export function withRelief(settings: TaxSettings, flows: readonly number[]): number[] {
  const spent = flows.map((flow, year) => (year === 0 ? flow : 0));
  const [relief] = taxTerms(settings, [{ yearly: spent }], () => 'purchase');
  return flows.map((flow, year) => flow + (relief?.yearly[year] ?? 0));
}
