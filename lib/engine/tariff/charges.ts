import { sum } from '../numbers';
import type { CompiledTariff, MonthUse } from './compile';
import type { DemandCharge, EnergyBlock, Tariff } from './tariff';
import { MONTHS } from './week';

/** One charge of a month's bill, not rounded. */
export interface Charge {
  readonly kind: 'energy' | 'block' | 'demand' | 'power-factor' | 'fixed' | 'tax';
  readonly name: string;
  readonly quantity: number;
  readonly unit: 'kWh' | 'kW' | 'kVA' | 'kvarh' | 'month' | 'share';
  readonly price: number;
  readonly amount: number;
}

/** What a site took in a month so many months before another one. */
type Earlier = (monthsBefore: number) => MonthUse;

/**
 * The charges of a month: energy by period and block, demand with ratchet and minimum, power factor, what is fixed, taxes. A month in which a
 * demand charge is not billed has no demand that its ratchet would remember.
 *
 * Units: currency, kWh, kW, kVA, kvarh. Source: definitions of the charges; V. K. Mehta and R. Mehta, Principles of Power System,
 * examples 5.9 to 5.11 (power factor); see docs/methods/tariffs.md.
 */
export function chargesOf(
  { tariff, billed: isBilled }: CompiledTariff,
  month: number,
  use: MonthUse,
  earlier: Earlier,
): Charge[] {
  const charges: Charge[] = [];
  const energy = sum(use.kwh);
  const factor = powerFactor(energy, use.kvarh);
  tariff.energy.forEach(({ name, pricePerKwh }, index) => {
    const kwh = use.kwh[index] ?? 0;
    if (kwh !== 0)
      charges.push({ kind: 'energy', name, quantity: kwh, unit: 'kWh', price: pricePerKwh, amount: kwh * pricePerKwh });
  });
  charges.push(...blockCharges(tariff, energy, use.kw[0] ?? 0));
  tariff.demand.forEach((charge, index) => {
    if (isBilled[month]?.[index] !== true) return;
    const before = (back: number) => (isBilled[monthBefore(month, back)]?.[index] === true ? earlier(back) : NOTHING);
    const billed = billedDemand(charge, index, use, before) * scale(tariff, charge, factor);
    charges.push({
      kind: 'demand',
      name: charge.name,
      quantity: billed,
      unit: charge.unit,
      price: charge.price,
      amount: billed * charge.price,
    });
  });
  const low = lowFactorCharge(tariff, energy, use.kvarh, factor);
  if (low) charges.push(low);
  if (tariff.fixedPerMonth !== 0)
    charges.push({
      kind: 'fixed',
      name: 'fixed',
      quantity: 1,
      unit: 'month',
      price: tariff.fixedPerMonth,
      amount: tariff.fixedPerMonth,
    });
  const base = charges.reduce((total, charge) => total + charge.amount, 0);
  for (const { name, rate } of tariff.taxes)
    charges.push({ kind: 'tax', name, quantity: rate, unit: 'share', price: base, amount: rate * base });
  return charges;
}

/** Cost of each month of a year in which every month follows itself a year before, as in a steady state. */
export function steadyCosts(compiled: CompiledTariff, uses: readonly MonthUse[]): number[] {
  return costsFrom(compiled, uses, uses, 0);
}

/** Cost of each month (January first) of the twelve from `start` (0 to 11), before which the site took `before`. */
export function costsFrom(
  compiled: CompiledTariff,
  uses: readonly MonthUse[],
  before: readonly MonthUse[],
  start: number,
): number[] {
  const costs = new Array<number>(MONTHS).fill(0);
  for (let step = 0; step < MONTHS; step++) {
    const month = (start + step) % MONTHS;
    const earlier: Earlier = (back) => at(back <= step ? uses : before, monthBefore(start + step, back));
    costs[month] = chargesOf(compiled, month, at(uses, month), earlier).reduce((sum, { amount }) => sum + amount, 0);
  }
  return costs;
}

/** The month of the year (0 to 11) so many months before another one. */
export function monthBefore(month: number, back: number): number {
  return (month - back + 10 * MONTHS) % MONTHS;
}

const NOTHING: MonthUse = { kwh: [], kw: [], kvar: [], kvarh: 0 };

function at(uses: readonly MonthUse[], month: number): MonthUse {
  return uses[month] ?? NOTHING;
}

function powerFactor(kwh: number, kvarh: number): number {
  return kwh > 0 ? kwh / Math.hypot(kwh, kvarh) : 1;
}

function blockCharges(tariff: Tariff, energy: number, demand: number): Charge[] {
  const charges: Charge[] = [];
  let from = 0;
  tariff.blocks.forEach((block, index) => {
    const end = blockEnd(block, demand);
    const kwh = Math.max(0, Math.min(energy, end) - from);
    from = Math.max(from, end);
    if (kwh > 0 && block.pricePerKwh !== 0)
      charges.push({
        kind: 'block',
        name: `block ${index + 1}`,
        quantity: kwh,
        unit: 'kWh',
        price: block.pricePerKwh,
        amount: kwh * block.pricePerKwh,
      });
  });
  return charges;
}

function blockEnd(block: EnergyBlock, demand: number): number {
  return block.upToKwh ?? (block.upToKwhPerKw === undefined ? Number.POSITIVE_INFINITY : block.upToKwhPerKw * demand);
}

function billedDemand(charge: DemandCharge, index: number, use: MonthUse, earlier: Earlier): number {
  let billed = Math.max(measured(charge, index, use), charge.minimum ?? 0);
  const { ratchet } = charge;
  if (ratchet)
    for (let back = 1; back <= ratchet.months; back++)
      billed = Math.max(billed, ratchet.share * measured(charge, index, earlier(back)));
  return billed;
}

function measured(charge: DemandCharge, index: number, use: MonthUse): number {
  const kw = use.kw[index] ?? 0;
  return charge.unit === 'kW' ? kw : Math.hypot(kw, use.kvar[index] ?? 0);
}

function scale(tariff: Tariff, charge: DemandCharge, factor: number): number {
  const rule = tariff.powerFactor;
  return rule?.kind === 'scaled-demand' && charge.unit === 'kW' && factor < rule.target ? rule.target / factor : 1;
}

function lowFactorCharge(tariff: Tariff, kwh: number, kvarh: number, factor: number): Charge | undefined {
  const rule = tariff.powerFactor;
  if (rule?.kind === 'per-point') {
    const points = Math.max(0, 100 * (rule.below - factor));
    const price = rule.pricePerKwhPerPoint * points;
    return points > 0
      ? { kind: 'power-factor', name: 'power factor', quantity: kwh, unit: 'kWh', price, amount: kwh * price }
      : undefined;
  }
  if (rule?.kind === 'reactive-energy') {
    const beyond = Math.max(0, kvarh - rule.freeKvarhPerKwh * kwh);
    const price = rule.pricePerKvarh;
    return beyond > 0
      ? { kind: 'power-factor', name: 'reactive energy', quantity: beyond, unit: 'kvarh', price, amount: beyond * price }
      : undefined;
  }
  return undefined;
}
