import { expect } from 'vitest';
import * as O from '@/lib/engine/generated/options';
import { fromMoney } from '@/lib/engine/money/money';
import { yearBill } from '@/lib/engine/tariff/bill';
import { marginalPrices } from '@/lib/engine/tariff/marginal';
import type { DemandCharge, Tariff, Usage } from '@/lib/engine/tariff/tariff';
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

/** One month's bill before rounding: its total, and what its lines of a kind come to. */
function monthOf(tariff: Parameters<typeof tariffOf>[0], usage: Usage, month = 1) {
  const lines = yearBill(tariffOf({ ...tariff, usage })).months[month - 1]?.lines ?? [];
  const sum = (list: typeof lines) => list.reduce((total, { quantity, price }) => total + quantity * price, 0);
  return { total: sum(lines), of: (kind: string) => sum(lines.filter((line) => line.kind === kind)) };
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
  'K-EMH-18.5': (c) => {
    const lines = monthOf(
      {
        pricePerKwh: given(c, 'energy_rate'),
        blocks: [{ pricePerKwh: given(c, 'adjustment') }],
        demand: [{ name: 'demand', price: given(c, 'demand_charge') / given(c, 'demand'), unit: 'kW' }],
        fixedPerMonth: given(c, 'customer'),
      },
      { energyKwh: given(c, 'energy'), demandKw: given(c, 'demand') },
    );
    return { energy_charge: lines.of('energy'), adjustment_charge: lines.of('block'), total: lines.total };
  },
  'K-MUN-BLOCKS': (c) => {
    const [first, next] = [given(c, 'first'), given(c, 'next')];
    const tariff = {
      pricePerKwh: given(c, 'power_cost'),
      blocks: [
        { upToKwh: first, pricePerKwh: given(c, 'rate_1') },
        { upToKwh: first + next, pricePerKwh: given(c, 'rate_2') },
        { pricePerKwh: given(c, 'rate_3') },
      ],
      fixedPerMonth: given(c, 'customer'),
      taxes: [{ name: 'sales tax', rate: given(c, 'tax') }],
    };
    const use = { energyKwh: given(c, 'energy'), demandKw: 0 };
    const { of, total } = monthOf(tariff, use);
    // Far from the average of the bill: the last kilowatt-hour falls into the last block and pays no customer charge.
    const marginal = marginalPrices(tariffOf({ ...tariff, usage: use })).energyPerKwh;
    expect(marginal).toBeCloseTo(1.01 * (0.0446 + 0.085), 9);
    expect(total / use.energyKwh - marginal).toBeGreaterThan(0.012);
    return { before_tax: total - of('tax'), tax: of('tax'), total };
  },
  'K-KEY-3': (c) => {
    const tariff = {
      pricePerKwh: given(c, 'energy_rate') + given(c, 'fuel'),
      demand: [{ name: 'demand', price: given(c, 'demand_rate'), unit: 'kW' } as const],
      fixedPerMonth: given(c, 'customer'),
      taxes: [{ name: 'sales tax', rate: given(c, 'tax') }],
    };
    const use = { energyKwh: given(c, 'energy'), demandKw: given(c, 'demand') };
    const [before, after] = [monthOf(tariff, use), monthOf(tariff, { ...use, demandKw: given(c, 'demand_new') })];
    const saved = before.total - after.total;
    // What the difference of the two bills gives a kilowatt is the marginal price that is stated.
    const { demandPerKwMonth } = marginalPrices(tariffOf({ ...tariff, usage: use }));
    expect(demandPerKwMonth * (given(c, 'demand') - given(c, 'demand_new'))).toBeCloseTo(saved, 6);
    return { tax: before.of('tax'), total: before.total, demand_saving: saved };
  },
  'K-KEY-6': (c) => {
    const ratchet = { share: given(c, 'share'), months: 11 };
    const billed = (at: number) => {
      const [highest, now] = ['highest', 'now'].map((name) => ((c.inputs[name]?.value ?? []) as number[])[at] ?? Number.NaN);
      // The highest demand fell into January, the bill is that of December.
      const demandKw = Array.from({ length: 12 }, (_, month) => (month === 0 ? (highest ?? 0) : (now ?? 0)));
      return monthOf(
        { pricePerKwh: 0, demand: [{ name: 'demand', price: given(c, 'rate'), unit: 'kW', ratchet }] },
        { energyKwh: 1000, demandKw },
        12,
      ).of('demand');
    };
    return { a: billed(0), b: billed(1), c: billed(2), d: billed(3) };
  },
  'K-KEY-7': (c) => {
    const demand = { name: 'demand', price: given(c, 'demand_rate'), unit: 'kW' } as const;
    const fixedPerMonth = given(c, 'customer');
    const fuel = [{ pricePerKwh: given(c, 'fuel') }];
    const flat = monthOf(
      { pricePerKwh: given(c, 'energy_rate'), blocks: fuel, demand: [demand], fixedPerMonth },
      { energyKwh: given(c, 'energy'), demandKw: given(c, 'demand') },
    ).total;
    const when = 'Mo-Fr 08:00-20:00';
    const byTime = monthOf(
      {
        energy: [
          { name: 'peak', when, pricePerKwh: given(c, 'on_rate') },
          { name: 'other', pricePerKwh: given(c, 'off_rate') },
        ],
        blocks: fuel,
        demand: [{ ...demand, when }],
        fixedPerMonth,
      },
      { energyKwh: { peak: given(c, 'on_peak'), other: given(c, 'off_peak') }, demandKw: given(c, 'demand_on_peak') },
    ).total;
    return { flat, by_time: byTime, saving: flat - byTime };
  },
});
