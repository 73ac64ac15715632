import { fromMoney, type Money, toMoney } from '../money/money';
import { sum } from '../numbers';
import { type YearBill, yearBill } from './bill';
import { compileTariff } from './compile';
import { inPeak, marginalPrices, sharesOf } from './marginal';
import { readSchedule } from './schedule';
import type { Tariff } from './tariff';
import { WHOLE_WEEK } from './week';

/** What one motor's option saves in a year. */
export interface MotorSaving {
  readonly kwh: number;
  /** Kilowatts in the billed peak, coincidence included. */
  readonly kw: number;
  /** Kilovars at the billed peak and kilovar-hours, where the power factor is charged. */
  readonly kvar?: number | undefined;
  readonly kvarh?: number | undefined;
  /** Hours of operation as the sheet has them. */
  readonly schedule?: string | undefined;
}

/** What the savings of many motors are worth together. */
interface FleetSaving {
  readonly before: YearBill;
  readonly after: YearBill;
  /** Difference of the two bills. */
  readonly saved: Money;
  /** The sum of what each motor saves for itself at marginal prices; `saved` is less where a block or a minimum is reached on the way. */
  readonly apart: Money;
  /** True when more is saved somewhere than the site is stated to take, so that the use in the tariff cannot be right. */
  readonly beyondUse: boolean;
}

/**
 * Bills a fleet's savings once, as a whole: a block that ends or a minimum that is reached on the way is met once, not by each motor.
 *
 * Units: kWh a year, kW, currency. The year is one in which old peaks are forgotten. A month's use never falls below zero.
 */
export function fleetSaving(tariff: Tariff, savings: readonly MotorSaving[]): FleetSaving {
  const compiled = compileTariff(tariff);
  let beyondUse = false;
  const floor = (value: number): number => {
    if (value < -1e-9) beyondUse = true;
    return Math.max(0, value);
  };
  const uses = compiled.usage.map((use) => ({ kwh: [...use.kwh], kw: [...use.kw], kvar: [...use.kvar], kvarh: use.kvarh }));
  let apart = 0;
  for (const { kwh, kw, kvar = 0, kvarh = 0, schedule = '' } of savings) {
    const hours = schedule === '' ? undefined : readSchedule(schedule);
    const week = hours?.ok ? hours.week : WHOLE_WEEK;
    const prices = marginalPrices(tariff, week, hours?.ok ? schedule : '');
    apart += kwh * prices.energyPerKwh + kvarh * prices.reactivePerKvarh;
    apart += 12 * (kw * prices.demandPerKwMonth + kvar * prices.reactivePerKvarMonth);
    const shares = sharesOf(compiled, week);
    const peak = inPeak(compiled, week);
    uses.forEach((use, month) => {
      const share = shares[month] ?? [];
      use.kwh = use.kwh.map((value, index) => value - kwh * (share[index] ?? 0));
      use.kvarh -= kvarh * sum(share);
      use.kw = use.kw.map((value, index) => value - kw * (peak[index] ?? 0));
      use.kvar = use.kvar.map((value, index) => value - kvar * (peak[index] ?? 0));
    });
  }
  const before = yearBill(tariff);
  const after = yearBill(
    tariff,
    uses.map((use) => ({ kwh: use.kwh.map(floor), kw: use.kw.map(floor), kvar: use.kvar.map(floor), kvarh: floor(use.kvarh) })),
  );
  return { before, after, saved: toMoney(fromMoney(before.total) - fromMoney(after.total)), apart: toMoney(apart), beyondUse };
}
