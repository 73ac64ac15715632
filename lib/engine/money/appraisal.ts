import * as $ from '../generated/money';
import { modifiedRateOfReturn } from './modified-rate';
import { paybackTime } from './payback';
import { netPresentValue } from './present-value';
import { rateOfReturn } from './rate-of-return';

/** A measure that could be worked out, or a sentence that says why there is none. Never infinite. */
export type Stated =
  | { readonly kind: 'value'; readonly value: number }
  | { readonly kind: 'none'; readonly text: string }
  | { readonly kind: 'several'; readonly values: readonly number[]; readonly text: string };

/** What a cash flow is worth by each of the usual measures. */
interface Appraisal {
  readonly netPresentValue: number;
  /** Fractions a year. */
  readonly internalRateOfReturn: Stated;
  readonly modifiedRateOfReturn: Stated;
  readonly adjustedRateOfReturn: Stated;
  readonly savingsToInvestment: Stated;
  /** Years, straight within the year, without the value left at the end. */
  readonly simplePayback: Stated;
  readonly discountedPayback: Stated;
}

/** What a cash flow is judged by. */
interface AppraisalRules {
  readonly discountRate: number;
  /** What income earns until the end; the discount rate when absent. */
  readonly reinvestRate?: number | undefined;
  /** Part of the flows that is value left, by year: it lowers the investment and pays nothing back. */
  readonly residual?: readonly number[] | undefined;
}

const value = (of: number): Stated => ({ kind: 'value', value: of });
const none = (text: string): Stated => ({ kind: 'none', text });

const NOTHING_SPENT = 'Nothing is spent beyond what would be anyway';
const NOTHING_LEFT_OVER = 'No more is spent beyond what would be anyway than is left of it at the end';

/**
 * Works out every measure of a cash flow at once, with a sentence for each that it does not have.
 *
 * Units: flows in currency, index 0 at the start, then at each year's end; rates a fraction a year; years.
 * Valid for: rates above −1. Options are compared by net present value or by their increments, never by their rates.
 * Source: ASTM E917 and NIST Handbook 135 (formulas from memory); see each function.
 */
export function appraise(flows: readonly number[], rules: AppraisalRules): Appraisal {
  const { discountRate } = rules;
  const years = Math.max(flows.length - 1, 1);
  const residual = flows.map((_, year) => rules.residual?.[year] ?? 0);
  const running = flows.map((flow, year) => flow - (residual[year] ?? 0));
  const spent = -(running[0] ?? 0);
  const savings = netPresentValue([0, ...running.slice(1)], discountRate);
  const investment = spent - netPresentValue(residual, discountRate);
  const ratio = investment > 0 ? $.savings_to_investment.f(savings, investment) : undefined;
  return {
    netPresentValue: netPresentValue(flows, discountRate),
    internalRateOfReturn: internalRate(flows),
    modifiedRateOfReturn: modifiedRate(flows, rules),
    savingsToInvestment:
      ratio === undefined ? none(`${NOTHING_LEFT_OVER}, so there is no ratio of savings to it.`) : value(ratio),
    adjustedRateOfReturn: adjustedRate(ratio, rules.reinvestRate ?? discountRate, years),
    simplePayback: payback(running, 0),
    discountedPayback: payback(running, discountRate),
  };
}

/**
 * Adjusted internal rate of return by the ratio of savings to investment, or why there is none. Units: fractions a year, years.
 * Source: NIST Handbook 135 (from memory): (1 + r) SIR^(1/N) − 1.
 */
export function adjustedRate(ratio: number | undefined, reinvestRate: number, years: number): Stated {
  if (ratio === undefined) return none(`${NOTHING_LEFT_OVER}, so there is no adjusted rate.`);
  if (ratio <= 0) return none('Nothing is saved over the years beside what is left at the end, so there is no adjusted rate.');
  return value($.adjusted_rate_of_return.f(reinvestRate, ratio, years));
}

function internalRate(flows: readonly number[]): Stated {
  const found = rateOfReturn(flows);
  if (found.kind === 'one') return value(found.rate);
  if (found.kind === 'several') {
    const list = found.rates.map((rate) => `${(100 * rate).toFixed(1)} %`).join(', ');
    return {
      kind: 'several',
      values: found.rates,
      text: `There are several rates of return (${list}), since the flow changes sign more than once; judge by the net present value.`,
    };
  }
  if (found.kind === 'loan')
    return none(
      `The flow takes in first and pays out later, so it has no rate of return but that of a loan (${(100 * found.rate).toFixed(1)} %); judge by the net present value.`,
    );
  const comesIn = flows.some((flow) => flow > 0);
  const goesOut = flows.some((flow) => flow < 0);
  if (!goesOut) return none(`${NOTHING_SPENT}, so there is no rate of return.`);
  if (!comesIn) return none('Nothing comes back, so there is no rate of return.');
  return none('So little comes back, or so much, that no rate of return between −99 % and 10,000 % fits.');
}

function modifiedRate(flows: readonly number[], { discountRate, reinvestRate }: AppraisalRules): Stated {
  const found = modifiedRateOfReturn(flows, discountRate, reinvestRate ?? discountRate);
  return found === undefined ? none('It takes both an outlay and an income to have a modified rate of return.') : value(found);
}

function payback(flows: readonly number[], rate: number): Stated {
  const found = paybackTime(flows, rate);
  if (found) return value(found.years);
  const years = flows.length - 1;
  const saves = flows.slice(1).some((flow) => flow > 0);
  if (!saves) return none('Nothing is saved, so it is never paid back.');
  const rest = rate > 0 ? ` at ${(100 * rate).toFixed(1)} % a year` : '';
  return none(`It is not paid back within ${years} ${years === 1 ? 'year' : 'years'}${rest}.`);
}
