import type { Evaluation } from '../evaluate';
import { meterCause, type Summand } from '../fleet-sum';
import { contributionOf, type Quantity, standardUncertainty } from '../quantity/quantity';
import { termsFrom } from './flow-plan';
import { FAILURE_RATE, total } from './value';

/** A motor's part in the sums over what is carried out. */
export interface CarriedOut {
  /** Net present value, in currency. */
  readonly worth: Summand | undefined;
  /** kWh a year. */
  readonly energySaved: Summand | undefined;
}

/**
 * What an option brings that is carried out in a year of the budget, 0 first, with its doubt and what motors share in it: the errors of their
 * meters, and the failure rate of the study. For the few options that are chosen: for all of a fleet it would be slow. Source: GUM 5.2.2.
 */
export function carriedOut(evaluation: Evaluation, id: string, year: number): CarriedOut {
  return {
    worth: summandOf(evaluation, valueIn(evaluation, id, year)),
    energySaved: summandOf(evaluation, evaluation.options.find((option) => option.id === id)?.figures.energy_saved),
  };
}

function valueIn({ scope, options }: Evaluation, id: string, year: number): Quantity<'currency'> | undefined {
  const option = options.find((each) => each.id === id);
  if (year === 0) return option?.figures.net_present_value;
  if (!option?.workings || option.netPresentValueByYear[year] === undefined) return undefined;
  const { growth, kind, worths } = option.workings;
  return total(scope, termsFrom(scope.settings, growth, kind, year), worths);
}

function summandOf({ scope, motor }: Evaluation, quantity: Quantity | undefined): Summand | undefined {
  if (!quantity) return undefined;
  const shared: [string, number][] = [];
  scope.sources.list.forEach(({ id, meter }, source) => {
    const cause = meter ? meterCause(motor.site, meter) : id === FAILURE_RATE ? id : undefined;
    const by = cause === undefined ? 0 : contributionOf(source, quantity);
    if (cause !== undefined && by !== 0) shared.push([cause, by]);
  });
  return { value: quantity.value, u: standardUncertainty(quantity), shared };
}
