import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import * as $ from '../generated/money';
import type { Rebate } from '../settings';
import type { Basis } from './flow-counts';
import type { LaterTerm } from './flow-plan';

/** The arithmetic of an option's money by plain numbers: what the evaluation and a ranking at other prices have in common. */

/**
 * Present value of a plan's terms: each times what its basis is worth, and its delay times the demand in it. Absent bases count nothing.
 * Units: currency. Source: linearity of the cash flow, see {@link FlowPlan}.
 */
export function presentSum(
  terms: readonly Pick<LaterTerm, 'basis' | 'presentValue' | 'delay'>[],
  worthOf: (basis: Basis) => number | undefined,
  demandOf: (basis: Basis) => number | undefined,
): number {
  let sum = 0;
  for (const { basis, presentValue, delay } of terms) {
    const worth = worthOf(basis);
    if (worth !== undefined) sum += presentValue * worth;
    const demand = delay && demandOf(basis);
    if (delay && demand !== undefined) sum += delay.presentValue * demand;
  }
  return sum;
}

/** A motor as a rebate programme sees it: rating, cost installed, and kilowatt-hours saved in the first year. */
export interface RebatedMotor {
  readonly ratedPowerKw: number;
  readonly installedCost: number;
  readonly savedKwh: number;
}

/**
 * What the rebates of the study pay for a motor, by programme up to its caps. `savedKwh` is what it saves in a year against the present
 * motor as it is; a motor that saves nothing earns nothing by the kilowatt-hour. Units: currency.
 */
export function rebatePaid(rebates: readonly Rebate[], action: 'replace' | 'resize', motor: RebatedMotor): number {
  let sum = 0;
  for (const { action: paidFor, perKw, perKwh = 0, perMotor = 0, cap, capShare } of rebates) {
    if (paidFor !== action) continue;
    const paid = perKw * motor.ratedPowerKw + perKwh * Math.max(0, motor.savedKwh) + perMotor;
    sum += Math.min(paid, cap ?? paid, capShare === undefined ? paid : capShare * motor.installedCost);
  }
  return sum;
}

/** Simple payback by plain numbers: none without a saving, zero where nothing more is spent. Units: currency, currency a year, years. */
export function paybackYears(netCost: number, saving: number): number | undefined {
  if (saving <= 0) return undefined;
  return netCost <= 0 ? 0 : $.simple_payback.f(netCost, saving);
}

/**
 * Chance that the saving is positive and `limit` years of it cover the net cost. `spreadOf` gives the standard uncertainty of `limit` savings
 * less the cost, or of the saving alone where nothing more is spent: then any saving pays at once.
 * Units: currency a year, currency, years. Valid for: a normal margin. Source: GUM 5.2 for its doubt.
 */
export function chanceWithin(saving: number, netCost: number, limit: number, spreadOf: (free: boolean) => number): number {
  const free = netCost <= 0;
  const margin = free ? saving : saving * limit - netCost;
  const spread = spreadOf(free);
  if (spread === 0) return margin > 0 || (margin === 0 && !free) ? 1 : 0;
  return normalCdf(margin / spread, 0, 1);
}
