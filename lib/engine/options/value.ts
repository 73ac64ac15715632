import type { MotorScope } from '../context';
import { solved } from '../formula/apply';
import { fitsMoney, fromMoney, type Money, toMoney } from '../money/money';
import { netPresentValue } from '../money/present-value';
import { combineParts, onePart, type Parts, type Quantity, standardUncertainty } from '../quantity/quantity';
import type { Basis } from './flow-counts';
import type { FlowPlan, FlowTerm } from './flow-plan';
import { chanceWithin, presentSum } from './moving-money';
import type { FlowLines } from './option';
import type { Worths } from './worth';

export type { Worth, Worths } from './worth';

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
  /** Present value of that outlay without the value left at the horizon. */
  readonly spent: number;
}

/** Names the doubt of the failure rate, which is that of the study and so the same for all its motors. */
export const FAILURE_RATE = 'failure-rate';
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
  const value = total(scope, plan.terms, worths);
  const failureCostChange = total(scope, plan.failure, worths);
  if (!fitsMoney(value.value) || !fitsMoney(failureCostChange.value)) return undefined;
  const lines = linesOf(plan.terms, worths, settings.includeFailureCost, settings.horizonYears + 1);
  if (!lines) return undefined;
  const worthOf = (basis: Basis) => worths[basis]?.quantity.value;
  const demandOf = (basis: Basis) => worths[basis]?.demand;
  const byYear: Money[] = [];
  if (settings.budget.length > 0) byYear.push(toMoney(value.value));
  for (const terms of plan.later) {
    const sum = presentSum(terms, worthOf, demandOf);
    if (!fitsMoney(sum)) return undefined;
    byYear.push(toMoney(sum));
  }
  const cashFlow = sumOfLines(lines, settings.horizonYears + 1);
  return {
    netPresentValue: scope.trace ? stated(scope, value, cashFlow, worths, plan.terms) : value,
    failureCostChange,
    lines,
    cashFlow,
    byYear,
    savings: presentSum(
      plan.terms.filter((term) => !term.outlay),
      worthOf,
      demandOf,
    ),
    outlay: -presentSum(
      plan.terms.filter((term) => term.outlay),
      worthOf,
      demandOf,
    ),
    spent: -presentSum(
      plan.terms.filter(({ outlay, line }) => outlay && line !== 'residual' && line !== 'tax'),
      worthOf,
      demandOf,
    ),
  };
}

/**
 * Standard uncertainty of savings over outlay: that of the savings less the outlay at the ratio's own exchange, over the outlay.
 * Source: GUM 5.2, a quotient of two sums that share sources.
 */
export function ratioDoubt(scope: MotorScope, plan: FlowPlan, worths: Worths, { savings, outlay }: ValuedFlow): number {
  const ratio = savings / outlay;
  const weighted = plan.terms.map(({ outlay: spent, presentValue, slope, delay, ...term }) => {
    const weight = spent ? ratio : 1;
    return {
      ...term,
      outlay: spent,
      presentValue: weight * presentValue,
      slope: weight * slope,
      delay: delay && { ...delay, presentValue: weight * delay.presentValue, slope: weight * delay.slope },
    };
  });
  return standardUncertainty(total(scope, weighted, worths)) / outlay;
}

/** Kilowatt-hours that a plan is expected to save in each year, 0 first. */
export function energySavedByYear(plan: FlowPlan, worths: Worths, years: number): number[] {
  const saved = new Array<number>(years + 1).fill(0);
  for (const { basis, line, times } of plan.terms) {
    const kwh = worths[basis]?.kwh;
    if (line === 'running' && times && kwh !== undefined)
      for (let year = 1; year <= years; year++) saved[year] = (saved[year] ?? 0) + (times[year] ?? 0) * kwh;
  }
  return saved;
}

/** The present value of terms, with its doubt by cause. */
export function total(scope: MotorScope, terms: readonly FlowTerm[], worths: Worths): Quantity<'currency'> {
  let value = 0;
  let slope = 0;
  const weighted: (readonly [number, Parts])[] = [];
  for (const term of terms) {
    const quantity = worths[term.basis]?.quantity;
    if (!quantity) continue;
    value += term.presentValue * quantity.value;
    slope += term.slope * quantity.value;
    weighted.push([term.presentValue, quantity.parts]);
    const demand = term.delay && worths[term.basis]?.demandCost;
    if (term.delay && demand) {
      value += term.delay.presentValue * demand.value;
      slope += term.delay.slope * demand.value;
      weighted.push([term.delay.presentValue, demand.parts]);
    }
  }
  if (slope !== 0) weighted.push([slope * LOG_RATE_SPREAD, rateParts(scope)]);
  return { unit: 'currency', value, parts: combineParts(weighted) };
}

/** A unit of doubt in the failure rate. */
function rateParts(scope: MotorScope): Parts {
  return onePart(scope.sources.number(FAILURE_RATE, 'rate of failures (factor of two)'), 1);
}

type LineName = keyof FlowLines;

function linesOf(terms: readonly FlowTerm[], worths: Worths, withFailure: boolean, length: number): FlowLines | undefined {
  const sums: { [N in LineName]?: number[] } = {};
  for (const term of terms) {
    const worth = worths[term.basis];
    if (!worth) continue;
    if (term.line === 'running') {
      addTo(sums, 'energy', term.yearly, worth.energy ?? 0, length);
      addTo(sums, 'demand', term.yearly, worth.demand ?? 0, length);
      if (term.delay) addTo(sums, 'demand', term.delay.yearly, worth.demand ?? 0, length);
      addTo(sums, 'power_factor', term.yearly, worth.powerFactor ?? 0, length);
    } else addTo(sums, term.line, term.yearly, worth.quantity.value, length);
  }
  for (const sum of Object.values(sums)) if (!sum.every(fitsMoney)) return undefined;
  return {
    energy: inMoney(sums.energy, length),
    demand: inMoney(sums.demand, length),
    avoided_repair: inMoney(sums.avoided_repair, length),
    residual: inMoney(sums.residual, length),
    investment: inMoney(sums.investment, length),
    rebate: inMoney(sums.rebate, length),
    ...(sums.power_factor && { power_factor: inMoney(sums.power_factor, length) }),
    ...(sums.tax && { tax: inMoney(sums.tax, length) }),
    ...(withFailure && { failure: inMoney(sums.failure, length) }),
  };
}

function addTo(
  sums: { [N in LineName]?: number[] },
  line: LineName,
  yearly: readonly number[],
  worth: number,
  length: number,
): void {
  if (worth === 0) return;
  let sum = sums[line];
  if (!sum) {
    sum = new Array<number>(length).fill(0);
    sums[line] = sum;
  }
  for (let year = 0; year < length; year++) sum[year] = (sum[year] ?? 0) + (yearly[year] ?? 0) * worth;
}

function inMoney(sum: readonly number[] | undefined, length: number): readonly Money[] {
  return sum ? sum.map(toMoney) : new Array<Money>(length).fill(toMoney(0));
}

/** The cash flow: the sum of its rounded lines, so that what is shown adds up. */
function sumOfLines(lines: FlowLines, length: number): Money[] {
  const all = [
    lines.energy,
    lines.demand,
    lines.power_factor,
    lines.avoided_repair,
    lines.residual,
    lines.investment,
    lines.rebate,
    lines.tax,
    lines.failure,
  ];
  const flow = new Array<number>(length).fill(0);
  for (const line of all) {
    if (!line) continue;
    for (let year = 0; year < length; year++) flow[year] = (flow[year] ?? 0) + (line[year] ?? 0);
  }
  // Sums of whole minor units are whole.
  return flow as Money[];
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
  investmentAgain: 'installed_cost_of_the_next_motor_of_the_option',
  rebate: 'rebate',
  rebateSame: 'rebate_of_a_premium_motor_of_the_same_rating',
  repairNow: 'cost_of_the_repair_now',
  repairAtFailure: 'cost_of_the_repair_at_failure',
  repairLater: 'cost_of_later_repairs',
  repairOptionFirst: 'cost_of_the_first_repair_with_the_option',
  repairOption: 'cost_of_later_repairs_with_the_option',
  workNow: 'work_of_the_repair_now',
  workAtFailure: 'work_of_the_repair_at_failure',
  workLater: 'work_of_later_repairs',
  workOptionFirst: 'work_of_the_first_repair_with_the_option',
  workOption: 'work_of_later_repairs_with_the_option',
  sameInstalled: 'installed_cost_of_a_premium_motor_of_the_same_rating',
  sameAgain: 'installed_cost_of_the_next_premium_motor_of_the_same_rating',
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
  return chanceWithin(saving.value, netCost.value, limit, (free) =>
    free
      ? standardUncertainty(saving)
      : standardUncertainty({
          parts: combineParts([
            [limit, saving.parts],
            [-1, netCost.parts],
          ]),
        }),
  );
}
