/** Cost and payback of the measures beside another motor. Expected values are worked by hand or drawn at random. */
import { describe, expect, it } from 'vitest';
import { evaluateMotor, measuresOf, type Price, type StudyContext } from '@/lib/engine';
import type { Plate, Reading } from '@/lib/engine/motor';
import { costTogether, type MeasureCost, screenedPayback } from '@/lib/engine/options/measures/cost';
import { worthwhile } from '@/lib/features/ranking/measure-words';
import { Chance } from '../../simulator/random';
import { motorOf, study } from '../support/study';
import { tariffOf } from '../tariff/tariffs';

const BELT_AND_THROTTLE: Partial<Plate> = { drivenMachine: 'pump', coupling: 'v-belt', flowControl: 'throttle', peakLoadKw: 30 };
const POOR_FACTOR: Partial<Reading> = { inputPowerKw: 10, currentA: 22.4, shaftSpeedRpm: undefined };
const listed = (...prices: readonly Price[]): StudyContext => ({ ...study(), prices: { invented: false, prices } });
const of = (context: StudyContext, plate: Partial<Plate> = BELT_AND_THROTTLE, reading: Partial<Reading> = {}) =>
  measuresOf(evaluateMotor(motorOf({ plate, reading }), context));
const one = (found: ReturnType<typeof of>, wanted: string) => {
  const measure = found.measures.find(({ id }) => id === wanted);
  if (!measure) throw new Error(`there is no ${wanted}`);
  return measure;
};

const RATED = 50 * 0.7457;
const DRIVE: Price = { item: 'drive', ratedPowerKw: RATED, price: 6000 };
const BELT: Price = { item: 'synchronous-belt', ratedPowerKw: RATED, price: 1200 };

describe('what a measure costs', () => {
  it('is the line of the list for the rating of the motor, with the doubt of a listed price', () => {
    const found = of(listed(DRIVE, BELT));
    expect(one(found, 'speed-control').cost).toEqual({
      ...{ value: 6000, u: 900, items: ['drive'], invented: false, extrapolated: false },
    });
    expect(one(found, 'better-belt').cost?.value).toBe(1200);
    expect(of(study()).measures.every(({ item, cost }) => item === undefined || cost?.invented === true)).toBe(true);
  });
  it('is not known where the list has no such item: no other line serves for it', () => {
    const found = of(listed({ item: 'motor', efficiencyClass: 'premium', price: 3000 }, { item: 'notched-belt', price: 90 }));
    for (const measure of found.measures) expect([measure.cost, measure.payback]).toEqual([undefined, undefined]);
    expect([found.costTogether, found.paybackTogether]).toEqual([undefined, undefined]);
  });
  it('is that of a notched belt where the load jerks', () => {
    const found = of(listed(BELT, { item: 'notched-belt', price: 90 }), { coupling: 'v-belt', drivenMachine: 'crusher' });
    expect(one(found, 'better-belt').cost?.value).toBe(90);
  });
  it('of a capacitor goes by its kvar', () => {
    const capacitor = one(
      of(listed({ item: 'capacitor', price: 50 }), { drivenMachine: 'conveyor' }, POOR_FACTOR),
      'power-factor',
    );
    expect(capacitor.cost?.value).toBeCloseTo(50 * (capacitor.capacitorKvar ?? Number.NaN), 9);
    // No charge for reactive power, so there is nothing to pay it back.
    expect(capacitor.payback).toBeUndefined();
  });
  it('of a capacitor is said to be for nothing by a tariff alone: flat prices leave open what reactive power costs', () => {
    const { site } = motorOf();
    const capacitorAt = (tariffs: StudyContext['settings']['tariffs']) => {
      const context = listed();
      return one(
        of({ ...context, settings: { ...context.settings, tariffs } }, { drivenMachine: 'conveyor' }, POOR_FACTOR),
        'power-factor',
      );
    };
    const flat = capacitorAt({});
    expect(flat.text).toMatch(/; flat prices say nothing of a charge for reactive power: see the bill, which may have one\.$/);
    expect(worthwhile(flat, study().settings).words).toBe(
      'What it saves depends on a charge for reactive power, of which the flat prices say nothing.',
    );
    const priced = capacitorAt({ [site]: tariffOf() });
    expect(priced.text).toMatch(/; the tariff charges nothing for reactive power, so it saves no money on the bill\.$/);
    expect(worthwhile(priced, study().settings).words).toBe('Saves no money on the bill, so it never pays back.');
    const charged = tariffOf({
      powerFactor: { kind: 'reactive-energy', pricePerKvarh: 0.01, freeKvarhPerKwh: 0.3 },
      usage: { energyKwh: 100_000, demandKw: 300, powerFactor: 0.7 },
    });
    expect(capacitorAt({ [site]: charged }).text).not.toMatch(/reactive power/);
  });
  it('is carried on beyond the ratings of the list with twice the doubt', () => {
    const cost = one(of(listed({ ...DRIVE, ratedPowerKw: 5, price: 1000 })), 'speed-control').cost;
    expect(cost).toMatchObject({ value: expect.closeTo(1000, 9), u: expect.closeTo(300, 9), extrapolated: true });
  });
});

describe('what measures of one motor cost and pay back together', () => {
  it('is the sum of the prices over the joint saving: later than the first alone, sooner than the second once the first is done', () => {
    const found = of(listed(DRIVE, BELT));
    const [drive, belt] = [one(found, 'speed-control'), one(found, 'better-belt')];
    expect(found.costTogether).toMatchObject({ value: 7200, u: Math.hypot(900, 180), items: ['drive', 'synchronous-belt'] });
    const saved = found.moneySavedTogether?.likely ?? Number.NaN;
    expect(found.paybackTogether?.likely).toBeCloseTo(7200 / saved, 9);
    const left = belt.moneySavedInSequence ?? Number.NaN;
    expect(left).toBeLessThan(belt.moneySaved?.likely ?? Number.NaN);
    expect((drive.moneySavedInSequence ?? Number.NaN) + left).toBeCloseTo(saved, 6);
    expect(7200 / saved).toBeLessThan(1200 / left);
    expect(7200 / saved).toBeGreaterThan(6000 / saved);
  });
  it('counts what the first year brings, in which a ratchet still holds the old peak', () => {
    // All demand, no energy: of a year's twelve months a full ratchet over eleven lets the first year have one.
    const demand = [{ name: 'any time', price: 10, unit: 'kW', ratchet: { share: 1, months: 11 } }] as const;
    const North = tariffOf({ pricePerKwh: 0, demand, usage: { energyKwh: 10_000, demandKw: 50 } });
    const found = measuresOf(
      evaluateMotor(motorOf({ plate: BELT_AND_THROTTLE, motor: { site: 'North' } }), {
        ...study({ tariffs: { North } }),
        prices: listed(DRIVE, BELT).prices,
      }),
    );
    const drive = one(found, 'speed-control');
    expect(drive.payback?.likely).toBeCloseTo((12 * 6000) / (drive.moneySaved?.likely ?? Number.NaN), 6);
    expect(drive.paybackInSequence).toBeCloseTo(drive.payback?.likely ?? Number.NaN, 9);
    const belt = one(found, 'better-belt');
    expect(belt.paybackInSequence).toBeCloseTo((12 * 1200) / (belt.moneySavedInSequence ?? Number.NaN), 6);
  });
  it('leaves out a measure that adds nothing to those before it: a drive holds the unbalance off the motor', () => {
    const found = of(listed(DRIVE), { ...BELT_AND_THROTTLE, coupling: 'direct' }, { voltagesV: [474, 455, 457] });
    expect(one(found, 'balance-voltages').energySavedInSequence).toBe(0);
    expect(found.costTogether?.value).toBe(6000);
  });
  it('is not known where one of them has no price', () => {
    expect(of(listed(DRIVE)).costTogether).toBeUndefined();
    expect(costTogether([])).toBeUndefined();
  });
  it('never joins a capacitor with a drive: it is one or the other', () => {
    const found = of(study(), { drivenMachine: 'pump', flowControl: 'throttle', peakLoadKw: 30 }, POOR_FACTOR);
    expect(one(found, 'power-factor')).toMatchObject({ notWith: 'speed-control' });
    expect(one(of(study(), { drivenMachine: 'pump' }, POOR_FACTOR), 'power-factor').notWith).toBeUndefined();
  });
});

describe('a screened payback', () => {
  const cost = (value: number, u: number): Pick<MeasureCost, 'value' | 'u'> => ({ value, u });
  it('is the price over the saving; a price that is sure leaves the ends of the saving', () => {
    const found = screenedPayback(cost(1000, 0), { low: 250, likely: 500, high: 1000 });
    expect(found?.low).toBeCloseTo(1, 12);
    expect(found?.likely).toBe(2);
    expect(found?.high).toBeCloseTo(4, 12);
  });
  it('has no latest end where the least saving is none, and none at all where the likely one is', () => {
    expect(screenedPayback(cost(1000, 150), { low: 0, likely: 500, high: 600 })).not.toHaveProperty('high');
    expect(screenedPayback(cost(1000, 150), { low: -5, likely: 0, high: 600 })).toBeUndefined();
    expect(screenedPayback(cost(1000, 150), undefined)).toBeUndefined();
    expect(screenedPayback(cost(0, 0), { low: 1, likely: 2, high: 3 })).toEqual({ low: 0, likely: 0, high: 0 });
  });
  it('has the limits of draws of price and saving, each on its logarithm (JCGM 101)', () => {
    const chance = new Chance(12345);
    const [u, ratio] = [0.15, 1.6];
    const draws = Array.from({ length: 20000 }, () => {
      const price = 1000 * Math.exp(u * chance.normal());
      const saving = 400 * Math.exp((Math.log(ratio) / 1.96) * chance.normal());
      return price / saving;
    }).sort((a, b) => a - b);
    const found = screenedPayback(cost(1000, 1000 * u), { low: 400 / ratio, likely: 400, high: 400 * ratio });
    expect(Math.abs((found?.low ?? 0) / (draws[500] ?? 0) - 1)).toBeLessThan(0.02);
    expect(Math.abs((found?.high ?? 0) / (draws[19500] ?? 0) - 1)).toBeLessThan(0.02);
  });
});
