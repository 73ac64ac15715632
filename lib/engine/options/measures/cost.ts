import type { Evaluation } from '../../evaluate';
import { NORMAL_FACTOR } from '../../quantity/coverage';
import type { Price } from '../../settings';
import { listedPrice } from '../price';

/** What the price list may hold for a measure. */
export type MeasureItem = Extract<Price['item'], 'notched-belt' | 'synchronous-belt' | 'drive' | 'capacitor'>;

/** What a measure's parts cost by the price list, fitted. Units: currency. */
export interface MeasureCost {
  readonly value: number;
  /** Standard uncertainty: that of a price of the list, larger where it is carried on beyond the list. */
  readonly u: number;
  readonly items: readonly MeasureItem[];
  readonly invented: boolean;
  readonly extrapolated: boolean;
}

/** Years until a cost is paid back, with limits of about 95 %; `high` is absent where the least saving pays nothing back. */
export interface ScreenedPayback {
  readonly low: number;
  readonly likely: number;
  readonly high?: number | undefined;
}

/** A screened figure: the likely value between two ends that the assumptions allow. */
export interface Screened {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/** What an item costs for the motor, `count` of them; `undefined` where the list has none. */
export function measureCost(
  { scope: { prices }, machine, motor }: Evaluation,
  item: MeasureItem,
  count = 1,
): MeasureCost | undefined {
  const found = listedPrice(prices, {
    item,
    ratedPowerKw: motor.plate.ratedPowerKw,
    poles: machine.plate.poles,
    enclosure: motor.plate.enclosure ?? 'enclosed',
  });
  if (!found) return undefined;
  const value = count * found.price;
  return { value, u: found.spread * value, items: [item], invented: prices.invented, extrapolated: found.extrapolated };
}

/** The cost of several measures; `undefined` where the price of one of them is not known. Prices of different items err independently. */
export function costTogether(costs: readonly (MeasureCost | undefined)[]): MeasureCost | undefined {
  const known = costs.filter((cost) => cost !== undefined);
  if (known.length < costs.length || known.length === 0) return undefined;
  return {
    value: known.reduce((sum, { value }) => sum + value, 0),
    u: Math.hypot(...known.map(({ u }) => u)),
    items: known.flatMap(({ items }) => items),
    invented: known.some(({ invented }) => invented),
    extrapolated: known.some(({ extrapolated }) => extrapolated),
  };
}

/**
 * Simple payback of a screened saving. Price and assumptions err independently, so that their widths, as logarithms, add up in squares.
 * Units: years. Valid for: a positive likely saving, else `undefined`. Source: GUM (JCGM 100) 5.1.6, a quotient.
 */
export function screenedPayback(
  cost: Pick<MeasureCost, 'value' | 'u'>,
  saved: Screened | undefined,
): ScreenedPayback | undefined {
  if (!saved || saved.likely <= 0 || cost.value < 0) return undefined;
  const likely = cost.value / saved.likely;
  if (cost.value === 0) return { low: 0, likely, ...(saved.low > 0 && { high: 0 }) };
  const ofPrice = (NORMAL_FACTOR * cost.u) / cost.value;
  const sooner = Math.hypot(ofPrice, Math.log(Math.max(saved.high, saved.likely) / saved.likely));
  const later = saved.low > 0 ? Math.hypot(ofPrice, Math.log(saved.likely / Math.min(saved.low, saved.likely))) : undefined;
  return {
    low: likely * Math.exp(-sooner),
    likely,
    ...(later !== undefined && { high: likely * Math.exp(later) }),
  };
}
