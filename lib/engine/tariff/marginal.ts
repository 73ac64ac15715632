import { sum } from '../numbers';
import { costsFrom, steadyCosts } from './charges';
import { type CompiledTariff, compileTariff, eachMonth, type MonthUse } from './compile';
import type { Tariff } from './tariff';
import { common, hoursInMonth, hoursOf, MONTHS, type Week, WHOLE_WEEK } from './week';

/** What the last unit that a machine takes costs a site, taxes included. */
export interface MarginalPrices {
  /** Of a kilowatt-hour taken evenly over the machine's hours. */
  readonly energyPerKwh: number;
  /** Of a kilowatt in the billed peak, as the mean of twelve months once the old peaks are forgotten. */
  readonly demandPerKwMonth: number;
  /**
   * Share of a year's demand saving that comes in the first year: less than 1 where a ratchet still holds the old peak, and below 0 where fewer kilowatts
   * cost money until then, as blocks by hours of use end sooner.
   */
  readonly firstYearDemandShare: number;
  /** Of a kilovar at the billed peak, mean of twelve months, and of a kilovar-hour; zero where the power factor costs nothing. */
  readonly reactivePerKvarMonth: number;
  readonly reactivePerKvarh: number;
  /** True when a kilowatt-hour costs more in some hours than in others. */
  readonly variesByTime: boolean;
}

/** Step of the differences, in kWh, kW, kvar and kvarh: small against any site, large against rounding. */
const STEP = 1;

const known = new WeakMap<Tariff, Map<string, MarginalPrices>>();

/**
 * Marginal prices of a tariff for a machine that runs in these hours of the week: the bill of a year less that with one unit less, so that
 * blocks, ratchets, minimum charges, power factor and taxes are in it as they are in the bill.
 *
 * Units: currency per kWh, kW and month, kvar and month, kvarh. `start` is the month (0 to 11) in which the change is made; `when` names
 * the hours for remembering, so that a fleet asks once for each schedule.
 * Source: definition of a marginal price; the bill by {@link chargesOf}.
 */
export function marginalPrices(tariff: Tariff, week: Week = WHOLE_WEEK, when = '', start = 0): MarginalPrices {
  const byHours = known.get(tariff) ?? new Map<string, MarginalPrices>();
  known.set(tariff, byHours);
  const key = `${start} ${when}`;
  const found = byHours.get(key) ?? derive(compileTariff(tariff), week, start);
  byHours.set(key, found);
  return found;
}

function derive(compiled: CompiledTariff, week: Week, start: number): MarginalPrices {
  const { usage } = compiled;
  const base = steadyCosts(compiled, usage);
  const saved = (less: readonly MonthUse[]) => tidy(difference(base, steadyCosts(compiled, less)), base);
  const shares = sharesOf(compiled, week);
  const peak = inPeak(compiled, week);
  const lessDemand = usage.map((use) => ({ ...use, kw: minus(use.kw, peak) }));
  const steady = saved(lessDemand);
  const first = tidy(difference(base, costsFrom(compiled, lessDemand, usage, start)), base);
  const lessReactive = usage.map((use) => ({ ...use, kvar: minus(use.kvar, peak) }));
  const lessReactiveEnergy = usage.map((use, month) => ({ ...use, kvarh: use.kvarh - STEP * sum(shares[month] ?? []) }));
  return {
    energyPerKwh: saved(usage.map((use, month) => ({ ...use, kwh: minus(use.kwh, shares[month] ?? []) }))),
    demandPerKwMonth: steady / MONTHS,
    firstYearDemandShare: steady > 0 ? Math.min(1, Number((first / steady).toPrecision(9))) : 1,
    reactivePerKvarMonth: saved(lessReactive) / MONTHS,
    reactivePerKvarh: saved(lessReactiveEnergy),
    variesByTime: new Set(compiled.tariff.energy.map(({ pricePerKwh }) => pricePerKwh)).size > 1,
  };
}

/** Price of one unit from the costs of each month: month by month, since a difference of two large sums is less sharp. */
function difference(before: readonly number[], after: readonly number[]): number {
  return sum(before.map((cost, month) => cost - (after[month] ?? 0))) / STEP;
}

/** A difference carries the noise of the amounts it comes from: nine digits of it are kept, and what is no more than that noise is zero. */
function tidy(price: number, costs: readonly number[]): number {
  return Math.abs(price) <= NOISE * sum(costs.map(Math.abs)) ? 0 : Number(price.toPrecision(9));
}

/** Share of a year's cost below which a difference of two years is rounding. */
const NOISE = 1e-13;

/** By month and period: the share of a machine's year that falls there, as one kilowatt-hour in all. */
export function sharesOf(compiled: CompiledTariff, week: Week): readonly (readonly number[])[] {
  const hours = compiled.hours.map((periods, month) => periods.map((period) => hoursInMonth(common(period, week), month)));
  const all = sum(hours.map(sum));
  return all > 0 ? hours.map((month) => month.map((part) => part / all)) : hours;
}

/** For each demand charge, whether the machine's hours meet those in which the peak is taken: one kilowatt, or none. */
export function inPeak({ peaks }: CompiledTariff, week: Week): readonly number[] {
  return peaks.map((peak) => (hoursOf(common(peak, week)) > 0 ? 1 : 0));
}

function minus(from: readonly number[], what: readonly number[]): number[] {
  return from.map((value, index) => value - STEP * (what[index] ?? 0));
}

/** The marginal price of a kilowatt-hour in each period alone, in order; absent where a period has no hours. */
export function marginalByPeriod(tariff: Tariff): readonly (number | undefined)[] {
  const compiled = compileTariff(tariff);
  const base = steadyCosts(compiled, compiled.usage);
  return tariff.energy.map((_, period) => {
    const hours = eachMonth((month) => hoursInMonth(compiled.hours[month]?.[period] ?? [], month));
    const all = sum(hours);
    if (all === 0) return undefined;
    const less = compiled.usage.map((use, month) => ({
      ...use,
      kwh: use.kwh.map((kwh, index) => (index === period ? kwh - (STEP * (hours[month] ?? 0)) / all : kwh)),
    }));
    return tidy(difference(base, steadyCosts(compiled, less)), base);
  });
}
