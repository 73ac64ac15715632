import type { Depreciation } from '../settings';

/**
 * Share of a purchase that is written off in each year of its tax life, the first year first; the shares add up to one.
 *
 * Straight line: equal parts. Declining balance: factor over years of what is left, until the straight line over the years left gives more.
 * Units: shares of the purchase. Valid for: whole years from 1, nothing left at the end.
 * Source: W. R. Murphy and G. McKay, Energy Management, example 3.5, for both rules; the switch is common practice in tax tables.
 */
export function writtenOff({ method, years, factor = 2 }: Depreciation): readonly number[] {
  const shares: number[] = [];
  let left = 1;
  for (let year = 0; year < years; year++) {
    const straight = left / (years - year);
    const declining = method === 'declining-balance' ? (left * factor) / years : 0;
    const share = Math.min(left, Math.max(straight, declining));
    shares.push(share);
    left -= share;
  }
  return shares;
}
