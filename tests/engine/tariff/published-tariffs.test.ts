import { expect } from 'vitest';
import * as O from '@/lib/engine/generated/options';
import { fromMoney } from '@/lib/engine/money/money';
import { yearBill } from '@/lib/engine/tariff/bill';
import type { DemandCharge, Tariff } from '@/lib/engine/tariff/tariff';
import { checkCases, given, type PublishedCase } from '../cases/published';
import { tariffOf } from './tariffs';

/** Price of a kilowatt or kilovolt-ampere that the source states by the year. */
const yearly = (price: number, unit: DemandCharge['unit']): DemandCharge => ({ name: 'demand', price: price / 12, unit });

/** A year's bill of a steady site: energy spread over twelve equal months. */
function steady(
  tariff: Partial<Tariff> & { readonly pricePerKwh: number },
  use: { kwh: number; kw: number; powerFactor?: number },
) {
  const bill = yearBill(
    tariffOf({ ...tariff, usage: { energyKwh: use.kwh / 12, demandKw: use.kw, powerFactor: use.powerFactor ?? 1 } }),
  );
  // Before rounding, since the case file keeps its figures to a millionth.
  const lines = bill.months.flatMap((month) => month.lines);
  const total = lines.reduce((sum, line) => sum + line.quantity * line.price, 0);
  expect(Math.abs(fromMoney(bill.total) - total)).toBeLessThanOrEqual(0.005 * lines.length);
  return { total, perKwh: total / bill.kwh, bill };
}

const reactive = (kw: number, powerFactor: number): number => O.reactive_power.f(kw, powerFactor);

/** Energy and unit cost at a load factor, billed by apparent power. */
function unitCost(c: PublishedCase, powerFactor: number): number {
  const kva = 1000;
  const kwh = 8760 * given(c, 'load_factor') * kva * powerFactor;
  const demand = [yearly(given(c, 'demand_rate'), 'kVA')];
  return steady({ pricePerKwh: given(c, 'energy_rate'), demand }, { kwh, kw: kva * powerFactor, powerFactor }).perKwh;
}

checkCases('./tariffs.json', {
  'K-MEH-5.1': (c) => {
    const kwh = given(c, 'demand') * given(c, 'load_factor') * given(c, 'hours');
    const demand = [yearly(given(c, 'demand_rate'), 'kW')];
    const { perKwh, bill } = steady({ pricePerKwh: given(c, 'energy_rate'), demand }, { kwh, kw: given(c, 'demand') });
    return { energy: bill.kwh, unit_cost: perKwh };
  },
  'K-MEH-5.9': (c) => {
    const tariff = { pricePerKwh: given(c, 'energy_rate'), demand: [yearly(given(c, 'demand_rate'), 'kVA')] };
    const use = { kwh: given(c, 'energy'), kw: given(c, 'demand') };
    const before = steady(tariff, { ...use, powerFactor: given(c, 'pf') });
    const after = steady(tariff, { ...use, powerFactor: given(c, 'pf_new') });
    return { flat_rate: before.perKwh, saving: before.total - after.total };
  },
  'K-MEH-5.10': (c) => {
    const [kwh, kvarh] = [given(c, 'energy'), given(c, 'reactive')];
    const powerFactor = kwh / Math.hypot(kwh, kvarh);
    const { bill } = steady(
      {
        pricePerKwh: given(c, 'energy_rate'),
        demand: [{ name: 'demand', price: given(c, 'demand_rate'), unit: 'kW' }],
        powerFactor: { kind: 'per-point', below: 0.86, pricePerKwhPerPoint: given(c, 'surcharge') },
      },
      { kwh: 12 * kwh, kw: given(c, 'demand'), powerFactor },
    );
    const [month] = bill.months;
    return { pf: powerFactor, bill: month ? fromMoney(month.total) : Number.NaN };
  },
  'K-MEH-5.11': (c) => ({ cost_a: unitCost(c, given(c, 'pf_a')), cost_b: unitCost(c, given(c, 'pf_b')) }),
  'K-MEH-6.6': (c) => {
    const p = given(c, 'p');
    const tariff = { pricePerKwh: given(c, 'energy_rate'), demand: [yearly(given(c, 'demand_rate'), 'kVA')] };
    const use = { kwh: p * given(c, 'hours'), kw: p };
    const [before, after] = [given(c, 'pf1'), given(c, 'pf2')].map(
      (powerFactor) => steady(tariff, { ...use, powerFactor }).total,
    );
    const kvar = reactive(p, given(c, 'pf1')) - reactive(p, given(c, 'pf2'));
    return { kvar, saving: (before ?? 0) - (after ?? 0) - given(c, 'fixed_charge') * given(c, 'capacitor_cost') * kvar };
  },
  'K-MEH-6.8': (c) => {
    const kw = given(c, 'kva') * given(c, 'pf');
    const left = reactive(kw, given(c, 'pf')) - given(c, 'capacitor');
    const demand: DemandCharge[] = [{ name: 'demand', price: given(c, 'rate'), unit: 'kVA' }];
    const before = steady({ pricePerKwh: 0, demand }, { kwh: 12, kw, powerFactor: given(c, 'pf') });
    const after = steady({ pricePerKwh: 0, demand }, { kwh: 12, kw, powerFactor: kw / Math.hypot(kw, left) });
    const kva = after.bill.months[0]?.lines.find((line) => line.kind === 'demand')?.quantity;
    const fixed = given(c, 'fixed_charge') * given(c, 'cost');
    return { kva_new: kva ?? Number.NaN, saving: before.total - after.total - fixed };
  },
  'K-GON-2.5': (c) => {
    const peaks = ((c.inputs.peaks?.value ?? []) as number[]).reduce((sum, peak) => sum + peak, 0);
    const group = given(c, 'group_peak');
    // The share that makes the billed demand of all peaks that of the group.
    const coincidence = group / O.billed_demand.f(peaks, 1);
    return { coincidence, diversity: 1 / coincidence, diversity_kw: peaks - O.billed_demand.f(peaks, coincidence) };
  },
});
