import { COVERAGE_FACTOR, formatNumber } from '@/lib/platform/format';

/** A value with its standard uncertainty. */
interface Doubtful {
  readonly value: number;
  readonly u: number;
}

/** What is said of a payback in place of its figure: in a cell, and in full. */
export interface PaybackWords {
  readonly short: string;
  readonly long: string;
}

/** Below this a payback is given to a tenth of a year. */
const TENTHS_BELOW = 10;

/**
 * Words for a payback whose figure would promise too much; `undefined` where value and interval may stand.
 *
 * Beyond the horizon it is no payback that the study counts on. And where the saving may as well be nothing (its 95 % interval reaches zero),
 * the time to win the cost back has no upper end: an interval around a quotient is then no statement.
 * @param horizonYears of the study's settings.
 */
export function paybackWords(
  payback: Doubtful,
  saving: Doubtful | undefined,
  horizonYears: number,
  locale?: string,
): PaybackWords | undefined {
  if (payback.value > horizonYears) {
    const years = formatNumber(horizonYears, 0, locale);
    return { short: `over ${years}`, long: `longer than the ${years} years that the study looks ahead` };
  }
  // Where nothing more is spent there is nothing to win back.
  if (payback.value <= 0) return undefined;
  if (saving === undefined || saving.value - COVERAGE_FACTOR * saving.u > 0) return undefined;
  const about = formatNumber(payback.value, payback.value < TENTHS_BELOW ? 1 : 0, locale);
  return { short: `${about} or never`, long: `about ${about} years, or never: the saving may be nothing` };
}
