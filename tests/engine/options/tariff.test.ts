import { describe, expect, it } from 'vitest';
import { fromMoney, type Money } from '@/lib/engine/money/money';
import { netPresentValue } from '@/lib/engine/money/present-value';
import { optionResult } from '@/lib/engine/options/result';
import { marginalPrices } from '@/lib/engine/tariff/marginal';
import { readSchedule } from '@/lib/engine/tariff/schedule';
import { BY_TIME, tariffOf, USAGE } from '../tariff/tariffs';
import { cash, money, npv, POOR, saved, type Trial, weigh } from './weighing';

const under = (tariff: ReturnType<typeof tariffOf>, trial: Trial = POOR) =>
  weigh({ ...trial, settings: { tariffs: { North: tariff }, ...trial.settings } });
const now = (trial: Trial) => weigh(trial).option('replace', 'now');
const amounts = (line: readonly Money[] | undefined) => line?.map(fromMoney) ?? [];
const results = (trial: Trial) => weigh(trial).options.map((option) => optionResult(option, 'USD'));
const DEMAND = { name: 'any time', price: 9.5, unit: 'kW' } as const;

describe('a site with a tariff', () => {
  it('of the flat prices has exactly the figures of the flat prices', () => {
    const flat = tariffOf({ demand: [DEMAND] });
    for (const trial of [POOR, { load: 0.3 }, { calls: ['rewind' as const] }]) {
      const same = { ...trial, settings: { tariffs: { North: flat } } };
      expect(results(same)).toEqual(results(trial));
      // Bills of a large site beside it change nothing either.
      const billed = { ...trial, settings: { tariffs: { North: { ...flat, usage: USAGE, fixedPerMonth: 900 } } } };
      expect(results(billed)).toEqual(results(trial));
    }
  });
  it('leaves another site at the flat prices', () => {
    expect(results({ ...POOR, settings: { tariffs: { South: BY_TIME } } })).toEqual(results(POOR));
  });
  it('prices the motor’s own hours', () => {
    const night = under(BY_TIME, { ...POOR, plate: { ...POOR.plate, schedule: 'Mo-Fr 22:00-07:00; Sa,Su' } }).option(
      'replace',
      'now',
    );
    expect(money(night)).toBeCloseTo(0.08 * saved(night), 6);
    const text = 'Mo-Fr 07:00-22:00';
    const day = under(BY_TIME, { ...POOR, plate: { ...POOR.plate, schedule: text } }).option('replace', 'now');
    const read = readSchedule(text);
    const price = read.ok ? marginalPrices(BY_TIME, read.week, text).energyPerKwh : Number.NaN;
    expect(money(day)).toBeCloseTo(price * saved(day), 6);
    expect(day.marginalPrice).toBeCloseTo(price, 9);
  });
  it('with a ratchet on the whole old peak saves no demand in the first year and all of it from the second on', () => {
    const settings = { failureRatePerYear: 0 };
    const ratchet = tariffOf({
      demand: [{ ...DEMAND, ratchet: { share: 1, months: 12 } }],
      usage: { energyKwh: 1e5, demandKw: 500 },
    });
    const held = under(ratchet, { ...POOR, settings }).option('replace', 'now');
    const free = now({ ...POOR, settings });
    expect(cash(held.lines?.demand, 1)).toBe(0);
    expect(amounts(held.lines?.demand).slice(2)).toEqual(amounts(free.lines?.demand).slice(2));
    expect(npv(free) - npv(held)).toBeCloseTo(cash(free.lines?.demand, 1) / 1.08, 2);
    // Carried out a year later, it loses the first year after that.
    const [, second] = held.netPresentValueByYear;
    const [, freeSecond] = free.netPresentValueByYear;
    expect(((freeSecond ?? 0) - (second ?? 0)) / 100).toBeCloseTo(cash(free.lines?.demand, 1) / 1.08 ** 2, 1);
    // Simple payback counts the first year; what is saved in any year stays.
    const first = money(free) - cash(free.lines?.demand, 1);
    expect(held.figures.simple_payback?.value).toBeCloseTo(held.figures.cost.value / first, 4);
    expect(money(held)).toBeCloseTo(money(free), 9);
  });
  it('billed by kVA counts the power factor as a line of its own, inside the saving', () => {
    const kva = tariffOf({ demand: [{ ...DEMAND, unit: 'kVA' }], usage: { energyKwh: 1e5, demandKw: 5000, powerFactor: 0.8 } });
    const option = under(kva, { ...POOR, settings: { failureRatePerYear: 0 } }).option('replace', 'now');
    const lines = option.lines;
    const year = (name: 'energy' | 'demand' | 'power_factor') => cash(lines?.[name], 1);
    expect(Math.abs(year('power_factor'))).toBeGreaterThan(1);
    expect(year('energy') + year('demand') + year('power_factor')).toBeCloseTo(money(option), 1);
    expect(now(POOR).lines?.power_factor).toBeUndefined();
  });
  it('grows by its own escalation where it states one', () => {
    const settings = { failureRatePerYear: 0, energyPriceEscalation: 0.5 };
    const option = under(tariffOf({ escalation: [0.1, 0] }), { ...POOR, settings }).option('replace', 'now');
    const energy = amounts(option.lines?.energy);
    expect((energy[2] ?? 0) / (energy[1] ?? 1)).toBeCloseTo(1.1, 4);
    expect((energy[9] ?? 0) / (energy[2] ?? 1)).toBeCloseTo(1, 4);
  });
});

describe('tax with depreciation', () => {
  const settings = { taxRate: 0.3, failureRatePerYear: 0, depreciation: { method: 'straight-line', years: 5 } } as const;
  it('gives back the rate times each year’s part of the purchase, and takes it on what is left', () => {
    const option = now({ ...POOR, settings });
    const cost = -cash(option.lines?.investment, 0);
    const tax = amounts(option.lines?.tax);
    expect(tax[0]).toBe(0);
    for (const year of [1, 2, 3, 4, 5]) expect(tax[year]).toBeCloseTo((0.3 * cost) / 5, 2);
    expect(tax[6]).toBe(0);
    expect(tax[15]).toBeCloseTo(-0.3 * cash(option.lines?.residual, 15), 2);
    expect(npv(option)).toBeCloseTo(netPresentValue(option.cashFlow.map(fromMoney), 0.08), 1);
  });
  it('raises the value by what it is worth, and takes the finding away', () => {
    const without = weigh({ ...POOR, settings: { ...settings, depreciation: null } });
    const withIt = weigh({ ...POOR, settings });
    expect(npv(withIt.option('replace', 'now'))).toBeGreaterThan(npv(without.option('replace', 'now')));
    expect(withIt.findings.map((found) => found.code)).not.toContain('tax-without-depreciation');
  });
  it('in real money is worth less by inflation, since books are kept in the money of their day', () => {
    const option = now({ ...POOR, settings: { ...settings, inflation: 0.1 } });
    const tax = amounts(option.lines?.tax);
    expect(tax[3]).toBeCloseTo((tax[1] ?? 0) / 1.1 ** 2, 1);
  });
  it('of 100 %: what is bought comes back, no saving is left, and nothing is infinite', () => {
    const option = now({ ...POOR, settings: { ...settings, taxRate: 1 } });
    expect(amounts(option.lines?.energy).every((amount) => amount === 0)).toBe(true);
    const tax = amounts(option.lines?.tax).slice(0, 15);
    expect(tax.reduce((sum, amount) => sum + amount, 0)).toBeCloseTo(-cash(option.lines?.investment, 0), 1);
    for (const amount of option.cashFlow) expect(Number.isFinite(amount)).toBe(true);
  });
  it('deducts a repair at once', () => {
    const failed = weigh({ ...POOR, plate: { ...POOR.plate, status: 'failed' }, settings }).option('replace', 'now');
    const repair = cash(failed.lines?.avoided_repair, 0);
    const cost = -cash(failed.lines?.investment, 0);
    expect(cash(failed.lines?.tax, 1)).toBeCloseTo(0.3 * (cost / 5 - repair), 1);
    const eroded = weigh({ ...POOR, plate: { ...POOR.plate, status: 'failed' }, settings: { ...settings, inflation: 0.1 } });
    expect(cash(eroded.option('replace', 'now').lines?.tax, 1)).toBeCloseTo((0.3 * (cost / 5 - repair)) / 1.1, 1);
  });
  it('deducts a repair that is put off a year after it is paid, as one that is done at once', () => {
    const { netPresentValueByYear, figures } = weigh({ ...POOR, calls: ['bearing-job'], settings }).option('repair');
    const now = figures.cost.value * (-1 + 0.3 / 1.08);
    netPresentValueByYear.forEach((value, years) => {
      expect(fromMoney(value)).toBeCloseTo(now / 1.08 ** years, 2);
    });
  });
});

describe('rebates', () => {
  const rebate = (own: object) =>
    cash(now({ ...POOR, settings: { rebates: [{ action: 'replace', perKw: 0, ...own }] } }).lines?.rebate, 0);
  it('pay by kilowatt, by kilowatt-hour saved and by motor, up to each cap', () => {
    const option = now(POOR);
    const cost = option.figures.cost.value;
    expect(rebate({ perKw: 10 })).toBeCloseTo(10 * 50 * 0.7457, 2);
    expect(rebate({ perKwh: 0.05 })).toBeCloseTo(0.05 * saved(option), 2);
    expect(rebate({ perMotor: 250 })).toBe(250);
    expect(rebate({ perKw: 10, perMotor: 250 })).toBeCloseTo(10 * 50 * 0.7457 + 250, 2);
    expect(rebate({ perMotor: 250, cap: 100 })).toBe(100);
    expect(rebate({ perMotor: 1e6, capShare: 0.4 })).toBeCloseTo(0.4 * cost, 2);
  });
  it('pay nothing for kilowatt-hours that are lost', () => {
    const worse: Trial = {
      plate: { nominalEfficiencyPct: 96 },
      settings: { rebates: [{ action: 'replace', perKw: 0, perKwh: 1 }] },
    };
    expect(saved(now(worse))).toBeLessThan(0);
    expect(cash(now(worse).lines?.rebate, 0)).toBe(0);
  });
});

describe('emission factors by year', () => {
  it('give the first year’s saving with the first year’s factor', () => {
    const one = now({ ...POOR, settings: { emissionFactorKgPerKwh: [0.4, 0.3] } });
    expect(one.figures.emissions_saved?.value).toBeCloseTo(0.4 * saved(one), 6);
    expect(optionResult(now(POOR), 'USD').emissions_saved_by_year).toBeUndefined();
  });
  it('give each later year its own factor and what is then expected to be saved', () => {
    const settings = { emissionFactorKgPerKwh: [0.4, 0.3], horizonYears: 3, failureRatePerYear: 0 };
    const one = now({ ...POOR, settings });
    const years = one.emissionsByYear ?? [];
    expect(years).toHaveLength(3);
    for (const [index, factor] of [0.4, 0.3, 0.3].entries()) expect(years[index]).toBeCloseTo(factor * saved(one), 6);
    // Where the old motor may fail, it is repaired to a worse one, and more is saved.
    const failing = now({ ...POOR, settings: { ...settings, failureRatePerYear: 0.1 } }).emissionsByYear ?? [];
    expect(failing[0]).toBeCloseTo(0.4 * saved(one), 6);
    expect(weigh({ ...POOR, settings }).option('keep').emissionsByYear).toBeUndefined();
  });
});
