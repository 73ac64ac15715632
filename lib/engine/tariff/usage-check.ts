import { sum } from '../numbers';
import { compileTariff } from './compile';
import type { Tariff } from './tariff';
import { hoursInMonth, MONTHS, WHOLE_WEEK } from './week';

/** A month (1 to 12) whose energy asks for more power on average than its highest demand, in kW. */
interface BeyondPeak {
  readonly month: number;
  readonly energyKwh: number;
  readonly meanKw: number;
  readonly highestKw: number;
}

/**
 * The first month in which a site is stated to take more kilowatt-hours than its highest demand could in all of its hours; `undefined` when
 * there is none, or when no demand is stated that holds at any time.
 * Units: kWh, kW. Source: a mean is never above the highest value.
 */
export function usageBeyondPeak(tariff: Tariff): BeyondPeak | undefined {
  const { usage } = tariff;
  if (!usage) return undefined;
  const compiled = compileTariff(tariff);
  const whole = typeof usage.demandKw === 'number' || Array.isArray(usage.demandKw);
  for (let month = 0; month < MONTHS; month++) {
    const use = compiled.usage[month];
    if (!use) continue;
    const peaks = use.kw.filter((_, charge) => whole || tariff.demand[charge]?.when === undefined);
    if (peaks.length === 0) continue;
    const energyKwh = sum(use.kwh);
    const meanKw = energyKwh / hoursInMonth(WHOLE_WEEK, month);
    const highestKw = Math.max(...peaks);
    if (meanKw > highestKw * (1 + 1e-9)) return { month: month + 1, energyKwh, meanKw, highestKw };
  }
  return undefined;
}
