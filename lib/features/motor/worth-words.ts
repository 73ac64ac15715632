import type { Increment, Stated } from '@/lib/engine';
import { formatMoney, formatPercent } from '@/lib/platform/format';

/** A rate of return as a cell shows it; `undefined` where it is none, or several. */
export function rateText(stated: Stated): string | undefined {
  return stated.kind === 'value' ? formatPercent(stated.value, 1) : undefined;
}

/** Values up to half a hundredth are rounding. */
const LEAST_WORTH = 0.005;

/** What a dearer option adds to the one that stood so far, in a sentence. */
export function stepWords(step: Increment, titleOf: (id: string) => string, currency: string): string {
  const { from, to, extraCost, netPresentValue, rateOfReturn, accepted } = step;
  const money = (amount: number) => formatMoney(Math.abs(amount), currency);
  const cost =
    Math.abs(extraCost) < 0.5 ? 'costs no more now' : `costs ${money(extraCost)} ${extraCost > 0 ? 'more' : 'less'} now`;
  const rate = rateOfReturn.kind === 'one' ? `, ${formatPercent(rateOfReturn.rate, 1)} a year on the difference` : '';
  const worth =
    Math.abs(netPresentValue) < LEAST_WORTH
      ? 'adds no value'
      : `${netPresentValue > 0 ? 'adds' : 'takes away'} ${money(netPresentValue)} of value${rate}`;
  return `${titleOf(to)}: against ${from === undefined ? 'what is done anyway' : `“${titleOf(from)}”`} it ${cost} and ${worth}: ${accepted ? 'worth it' : 'not worth it'}.`;
}
