import { fitsMoney, type Money, sumMoney, toMoney } from '../money/money';
import { sum } from '../numbers';
import { type Charge, chargesOf, monthBefore, steadyCosts } from './charges';
import { type CompiledTariff, compileTariff, type MonthUse } from './compile';
import type { Tariff } from './tariff';

/** A line of a bill; the amount in whole minor units. */
interface BillLine extends Omit<Charge, 'amount'> {
  readonly amount: Money;
}

/** The bill of one month. Its lines add up to its total. */
interface MonthBill {
  /** From 1 to 12. */
  readonly month: number;
  readonly lines: readonly BillLine[];
  readonly total: Money;
}

/** The bills of a year, as the site's use stands: `total` is the sum of the printed lines, `kwh` the energy that they are for. */
export interface YearBill {
  readonly months: readonly MonthBill[];
  readonly total: Money;
  readonly kwh: number;
}

/** Whether the bills of a year can be kept exactly; ask it where a tariff comes from outside. */
export function billFits(tariff: Tariff): boolean {
  const compiled = compileTariff(tariff);
  const costs = steadyCosts(compiled, compiled.usage);
  return fitsMoney(costs.reduce((sum, cost) => sum + Math.abs(cost), 0) * MARGIN);
}

/** Single charges may be larger than their sum, where some are credits. */
const MARGIN = 100;

/** The bills of a year, item by item, at the use that the tariff states, or at another one. */
export function yearBill(tariff: Tariff, uses?: readonly MonthUse[]): YearBill {
  const compiled = compileTariff(tariff);
  const taken = uses ?? compiled.usage;
  const months = taken.map((use, month) => monthBill(compiled, taken, use, month));
  return {
    months,
    total: sumMoney(months.map(({ total }) => total)),
    kwh: taken.reduce((all, { kwh }) => all + sum(kwh), 0),
  };
}

function monthBill(compiled: CompiledTariff, uses: readonly MonthUse[], use: MonthUse, month: number): MonthBill {
  const lines = chargesOf(compiled, month, use, (back) => uses[monthBefore(month, back)] ?? use).map((charge) => ({
    ...charge,
    amount: toMoney(charge.amount),
  }));
  return { month: month + 1, lines, total: sumMoney(lines.map(({ amount }) => amount)) };
}
