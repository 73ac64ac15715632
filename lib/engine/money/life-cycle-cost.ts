import { priceIndex, type Yearly } from '../tariff/tariff';
import { type Money, sumMoney, toMoney } from './money';

/** What one way of doing it costs over its life; each flow with its time in its name. */
interface LifeCycle {
  readonly investmentAtStart: number;
  /** At the prices of the start, at each year's end. */
  readonly energyEachYear: number;
  readonly otherEachYear?: number | undefined;
  /** Other outlays, by year of their end, such as a repair in year 8. */
  readonly outlaysAtYearEnd?: readonly { readonly year: number; readonly amount: number }[] | undefined;
  readonly residualAtEnd?: number | undefined;
}

/** Present values by line; they add up to the total in whole minor units. */
interface LifeCycleCost {
  readonly investment: Money;
  readonly energy: Money;
  readonly other: Money;
  readonly outlays: Money;
  /** Negative: it lowers the cost. */
  readonly residual: Money;
  readonly total: Money;
}

/**
 * Life-cycle cost: the present value of all that a way of doing it costs over the years. The difference of two is the net present value
 * of one against the other.
 *
 * Units: currency, rates a fraction a year. `escalation` is that of energy: the first year's energy is at the prices of the start, as in the
 * cash flow of an option. Valid for: rates above −1, at least one year; amounts that can be kept exactly.
 * Source: ASTM E917 and NIST Handbook 135 (from memory): investment, energy, other yearly costs, replacements, less the value left.
 */
export function lifeCycleCost(
  cycle: LifeCycle,
  rules: { readonly discountRate: number; readonly years: number; readonly escalation?: Yearly },
): LifeCycleCost {
  const { discountRate, years, escalation = 0 } = rules;
  let energy = 0;
  let annuity = 0;
  for (let year = 1; year <= years; year++) {
    const factor = (1 + discountRate) ** -year;
    energy += cycle.energyEachYear * priceIndex(escalation, year - 1) * factor;
    annuity += factor;
  }
  const dated = (amount: number, year: number) => amount * (1 + discountRate) ** -year;
  const lines = {
    investment: toMoney(cycle.investmentAtStart),
    energy: toMoney(energy),
    other: toMoney((cycle.otherEachYear ?? 0) * annuity),
    outlays: toMoney((cycle.outlaysAtYearEnd ?? []).reduce((sum, { year, amount }) => sum + dated(amount, year), 0)),
    residual: toMoney(-dated(cycle.residualAtEnd ?? 0, years)),
  };
  return { ...lines, total: sumMoney(Object.values(lines)) };
}
