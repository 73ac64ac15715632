import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import type { MotorScope } from '../context';
import { solved } from '../formula/apply';
import { fitsMoney, fromMoney, type Money, sumMoney, toMoney } from '../money/money';
import { netPresentValue } from '../money/present-value';
import { combineParts, type Parts, type Quantity, standardUncertainty } from '../quantity/quantity';
import type { Basis } from './flow-counts';
import type { FlowPlan, FlowTerm } from './flow-plan';
import type { FlowLines } from './option';

/** What one unit of a basis is worth for this motor; running splits into energy and demand. */
export interface Worth {
  readonly quantity: Quantity<'currency/a'> | Quantity<'currency'>;
  readonly energy?: number;
  readonly demand?: number;
}

/** Worth of each basis; one that is missing counts as zero, which the caller must have found right. */
export type Worths = { readonly [B in Basis]?: Worth | undefined };

/** The cash flow of one motor's option and what follows from it. */
export interface ValuedFlow {
  readonly netPresentValue: Quantity<'currency'>;
  readonly failureCostChange: Quantity<'currency'>;
  readonly lines: FlowLines;
  readonly cashFlow: readonly Money[];
  readonly byYear: readonly Money[];
  /** Present values of savings and of outlay, as in the savings-to-investment ratio. */
  readonly savings: number;
  readonly outlay: number;
}

/** Spread of the logarithm of the failure rate: a factor of two counts as two deviations (published surveys span 1 to 8 % a year). */
const LOG_RATE_SPREAD = Math.LN2 / 2;

/**
 * Values the cash flow of an option: a plan that all motors share, times what this motor brings along.
 *
 * Linear in every quantity, so the doubt of the value follows from their shared parts; that of the failure rate from the slope by its
 * logarithm. `undefined` when an amount is too large to be kept exactly.
 * Units: currency. Source: NIST Handbook 135 and ASTM E917 for the conventions, GUM 5.1 for the doubt.
 */
export function valueFlow(scope: MotorScope, plan: FlowPlan, worths: Worths): ValuedFlow | undefined {
  const { settings } = scope;
  const counted = (line: FlowTerm['line']) => line !== 'failure' || settings.includeFailureCost;
  const inValue = plan.terms.filter((term) => counted(term.line));
  const value = total(scope, inValue, worths);
  const failureCostChange = total(
    scope,
    plan.terms.filter((term) => term.line === 'failure'),
    worths,
  );
  if (!fitsMoney(value.value) || !fitsMoney(failureCostChange.value)) return undefined;
  const lines = linesOf(inValue, worths, settings.includeFailureCost, settings.horizonYears + 1);
  if (!lines) return undefined;
  const all = Object.values(lines).filter((line): line is readonly Money[] => line !== undefined);
  const cashFlow = Array.from({ length: settings.horizonYears + 1 }, (_, year) =>
    sumMoney(all.map((line) => line[year] ?? toMoney(0))),
  );
  const later = plan.later.map((terms) =>
    terms.reduce((sum, term) => sum + (counted(term.line) ? term.presentValue * worthOf(worths, term.basis) : 0), 0),
  );
  if (!later.every(fitsMoney)) return undefined;
  const part = (outlay: boolean) =>
    inValue.reduce((sum, term) => sum + (term.outlay === outlay ? term.presentValue * worthOf(worths, term.basis) : 0), 0);
  return {
    netPresentValue: scope.trace ? stated(scope, value, cashFlow, worths, inValue) : value,
    failureCostChange,
    lines,
    cashFlow,
    byYear: settings.budget.length === 0 ? [] : [value.value, ...later].map(toMoney),
    savings: part(false),
    outlay: -part(true),
  };
}

function worthOf(worths: Worths, basis: Basis): number {
  return worths[basis]?.quantity.value ?? 0;
}

function total(scope: MotorScope, terms: readonly FlowTerm[], worths: Worths): Quantity<'currency'> {
  let value = 0;
  let slope = 0;
  const weighted: (readonly [number, Parts])[] = [];
  for (const term of terms) {
    const quantity = worths[term.basis]?.quantity;
    if (!quantity) continue;
    value += term.presentValue * quantity.value;
    slope += term.slope * quantity.value;
    weighted.push([term.presentValue, quantity.parts]);
  }
  if (slope !== 0) weighted.push([slope * LOG_RATE_SPREAD, rateParts(scope)]);
  return { unit: 'currency', value, parts: combineParts(weighted) };
}

/** A unit of doubt in the failure rate. */
function rateParts(scope: MotorScope): Parts {
  const index = scope.sources.number('failure-rate', 'rate of failures (factor of two)');
  const parts = new Array<number>(index + 1).fill(0);
  parts[index] = 1;
  return parts;
}

function linesOf(terms: readonly FlowTerm[], worths: Worths, withFailure: boolean, length: number): FlowLines | undefined {
  const sums = new Map<string, number[]>();
  const add = (line: string, term: FlowTerm, worth: number): void => {
    if (worth === 0) return;
    const sum = sums.get(line) ?? new Array<number>(length).fill(0);
    sums.set(line, sum);
    for (let year = 0; year < length; year++) sum[year] = (sum[year] ?? 0) + (term.yearly[year] ?? 0) * worth;
  };
  for (const term of terms) {
    const worth = worths[term.basis];
    if (!worth) continue;
    if (term.line === 'running') {
      add('energy', term, worth.energy ?? 0);
      add('demand', term, worth.demand ?? 0);
    } else add(term.line, term, worth.quantity.value);
  }
  for (const sum of sums.values()) if (!sum.every(fitsMoney)) return undefined;
  const none: readonly Money[] = new Array<Money>(length).fill(toMoney(0));
  const rounded = (line: string): readonly Money[] => sums.get(line)?.map(toMoney) ?? none;
  return {
    energy: rounded('energy'),
    demand: rounded('demand'),
    avoided_repair: rounded('avoided_repair'),
    residual: rounded('residual'),
    investment: rounded('investment'),
    rebate: rounded('rebate'),
    ...(withFailure && { failure: rounded('failure') }),
  };
}

/** Records the value with the equation that it satisfies and what the rounded cash flow leaves of it. */
function stated(
  scope: MotorScope,
  value: Quantity<'currency'>,
  cashFlow: readonly Money[],
  worths: Worths,
  terms: readonly FlowTerm[],
): Quantity<'currency'> {
  const again = netPresentValue(cashFlow.map(fromMoney), scope.settings.discountRate);
  const inputs: Record<string, Quantity> = {};
  for (const term of terms) {
    const quantity = worths[term.basis]?.quantity;
    if (quantity) inputs[WORDS[term.basis]] = quantity;
  }
  return solved(
    scope,
    value,
    {
      label: 'net present value: baseline’s costs less the option’s',
      tex: 'NPV = \\sum_{t=0}^{N} \\frac{F_t}{(1+d)^t}',
      residual: Math.abs(again - value.value) / Math.max(Math.abs(value.value), 1),
      source:
        'NIST Handbook 135 and ASTM E917: outlays at the start of a year, savings at its end; expected failures at a constant rate',
    },
    inputs,
  );
}

const WORDS: Readonly<Record<Basis, string>> = {
  old: 'running_cost_as_it_is',
  oldRepaired: 'running_cost_after_a_repair',
  same: 'running_cost_of_a_premium_motor_of_the_same_rating',
  option: 'running_cost_with_the_option',
  optionRepaired: 'running_cost_with_the_option_after_a_repair',
  investment: 'installed_cost',
  rebate: 'rebate',
  repairNow: 'cost_of_the_repair_now',
  repairAtFailure: 'cost_of_the_repair_at_failure',
  repairLater: 'cost_of_later_repairs',
  repairOption: 'cost_of_later_repairs_with_the_option',
  sameInstalled: 'installed_cost_of_a_premium_motor_of_the_same_rating',
  purchaseOption: 'purchase_price',
  purchaseSame: 'purchase_price_of_a_premium_motor_of_the_same_rating',
  oldWorth: 'value_left_in_the_old_motor_at_the_horizon',
  stop: 'cost_of_an_unplanned_stop',
};

/**
 * Chance that the saving is positive and `limit` years of it cover the net cost.
 * Normal by the two quantities' shared doubt. Units: currency a year, currency, years. Source: GUM 5.2 for the doubt of the margin.
 */
export function probabilityWithin(saving: Quantity<'currency/a'>, netCost: Quantity<'currency'>, limit: number): number {
  // Where nothing more is spent any saving pays at once, and the margin is that of the saving alone.
  const free = netCost.value <= 0;
  const margin = free ? saving.value : saving.value * limit - netCost.value;
  const spread = free
    ? standardUncertainty(saving)
    : standardUncertainty({
        parts: combineParts([
          [limit, saving.parts],
          [-1, netCost.parts],
        ]),
      });
  if (spread === 0) return margin > 0 || (margin === 0 && !free) ? 1 : 0;
  return normalCdf(margin / spread, 0, 1);
}
