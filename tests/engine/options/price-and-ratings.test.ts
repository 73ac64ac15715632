import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { listedPrice, type PriceQuery } from '@/lib/engine/options/price';
import { otherRatings, shortRating, standardRatings } from '@/lib/engine/options/ratings';
import { PRICE_ITEMS, type Price, type PriceList } from '@/lib/engine/settings';
import { PLATE, study } from '../support/study';
import { weigh } from './weighing';

const list = (...prices: Price[]): PriceList => ({ invented: false, prices });
const ask = (changes: Partial<PriceQuery> = {}): PriceQuery => ({
  item: 'motor',
  ratedPowerKw: 20,
  poles: 4,
  enclosure: 'enclosed',
  ...changes,
});
const motor = (ratedPowerKw: number, price: number, more: Partial<Price> = {}): Price => ({
  item: 'motor',
  efficiencyClass: 'premium',
  ratedPowerKw,
  price,
  ...more,
});

describe('listed price', () => {
  it('is the line of the rating, a horsepower rating and its kilowatt equivalent being one', () => {
    const found = listedPrice(list(motor(15, 1500), motor(30, 2900)), ask({ ratedPowerKw: 40 * 0.7457 }));
    expect(found).toMatchObject({ price: 2900, spread: 0.15, extrapolated: false });
    expect(found?.line?.ratedPowerKw).toBe(30);
  });
  it('lies on the power law between two ratings: the geometric mean halfway', () => {
    const found = listedPrice(list(motor(10, 1000), motor(40, 3000)), ask({ ratedPowerKw: 20 }));
    expect(found?.price).toBeCloseTo(Math.sqrt(1000 * 3000), 9);
    expect(found?.line).toBeUndefined();
  });
  it('rises with the rating on any rising list', () => {
    const rising = list(motor(5, 700), motor(11, 1200), motor(22, 2200), motor(55, 5100));
    fc.assert(
      fc.property(fc.double({ min: 1, max: 200, noNaN: true }), fc.double({ min: 1.05, max: 3, noNaN: true }), (kw, factor) => {
        const [small, large] = [kw, kw * factor].map(
          (ratedPowerKw) => listedPrice(rising, ask({ ratedPowerKw }))?.price ?? Number.NaN,
        );
        expect(small).toBeLessThanOrEqual((large ?? Number.NaN) * 1.02);
      }),
    );
  });
  it('is carried on beyond the list along its end, with twice the doubt', () => {
    const found = listedPrice(list(motor(10, 1000), motor(20, 2000)), ask({ ratedPowerKw: 80 }));
    expect(found?.price).toBeCloseTo(8000, 9);
    expect(found).toMatchObject({ extrapolated: true, spread: 0.3 });
    expect(listedPrice(list(motor(10, 1000)), ask({ ratedPowerKw: 80 }))?.price).toBeCloseTo(1000, 9);
  });
  it('prefers poles and enclosure, then poles, then any, and says what it took', () => {
    const all = list(
      motor(20, 1, { poles: 2, enclosure: 'open' }),
      motor(20, 2, { poles: 4, enclosure: 'open' }),
      motor(20, 3, { poles: 4, enclosure: 'enclosed' }),
    );
    expect(listedPrice(all, ask())).toMatchObject({ price: 3, matched: 'motor, 4 poles, enclosed' });
    expect(listedPrice(list(...all.prices.slice(0, 2)), ask())).toMatchObject({
      price: 2,
      matched: 'motor, 4 poles, any enclosure',
    });
    expect(listedPrice(list(...all.prices.slice(0, 1)), ask())).toMatchObject({
      price: 1,
      matched: 'motor, any poles and enclosure',
    });
    const otherPoles = listedPrice(list(motor(20, 7, { poles: 6, enclosure: 'enclosed' })), ask());
    expect(otherPoles).toMatchObject({ price: 7, matched: 'motor, any poles, enclosed' });
    // Its price serves, its speed and efficiency do not.
    expect(otherPoles?.line).toBeUndefined();
  });
  it('takes premium and IE3 motors before those of IE4, and none of a lower class or of none', () => {
    const better = motor(20, 9, { efficiencyClass: 'IE4' });
    expect(listedPrice(list(better), ask())).toMatchObject({ price: 9, matched: 'motor of class IE4' });
    expect(listedPrice(list(better, motor(40, 6)), ask())).toMatchObject({ price: 6, matched: 'motor', extrapolated: true });
    for (const efficiencyClass of ['IE1', 'IE2', 'standard', 'energy-efficient', undefined])
      expect(listedPrice(list(motor(20, 9, { efficiencyClass })), ask())).toBeUndefined();
  });
  it('takes the first of two lines, and a price without a rating for all', () => {
    expect(listedPrice(list(motor(20, 5, { efficiencyClass: 'IE3' }), motor(20, 6)), ask())?.price).toBe(5);
    expect(
      listedPrice(list({ item: 'removal-install', price: 300 }), ask({ item: 'removal-install', ratedPowerKw: 999 }))?.price,
    ).toBe(300);
    expect(listedPrice(list(), ask())).toBeUndefined();
    expect(listedPrice(list(motor(20, -5)), ask())).toBeUndefined();
  });
  it('has a line for every item and pole count of the shipped list', () => {
    const { prices } = study();
    for (const item of PRICE_ITEMS)
      for (const poles of [2, 4, 6, 8]) expect(listedPrice(prices, ask({ item, poles }))?.price).toBeGreaterThan(0);
  });
});

describe('a listed motor of another pole count or frequency', () => {
  const fourPoles = { rewind: { item: 'rewind', price: 900 }, installing: { item: 'removal-install', price: 300 } } as const;
  const at1780 = motor(50 * 0.7457, 3600, { poles: 4, nominalEfficiencyPct: 97, ratedSpeedRpm: 1780 });
  const prices: Price[] = [at1780, fourPoles.rewind, fourPoles.installing];
  const replaced = (plate: Partial<typeof PLATE>) => weigh({ plate, prices }).option('replace', 'now');

  it('gives its efficiency and speed to a motor of its own poles', () => {
    expect(replaced({}).nominalEfficiencyPct).toBeCloseTo(97, 9);
  });
  it('gives its price alone to a motor of other poles: no saving from a change of speed', () => {
    const option = replaced({ poles: 2, ratedSpeedRpm: 3540 });
    // NEMA premium, enclosed, 50 hp, 2 poles: 93.0 % (10 CFR 431.25, table of general-purpose motors).
    expect(option.nominalEfficiencyPct).toBeCloseTo(93, 9);
    expect(option.figures.cost.value).toBeCloseTo(3900, 6);
    expect(Math.abs(option.figures.energy_saved?.value ?? Number.NaN)).toBeLessThan(0.05 * 37 * 6000);
    expect(option.findings().map((found) => found.code)).not.toContain('poles-contradict-speed');
  });
  it('does not run above the synchronous speed of a 50 Hz motor', () => {
    const option = replaced({ ratedFrequencyHz: 50, ratedSpeedRpm: 1470 });
    expect(Math.abs(option.figures.energy_saved?.value ?? Number.NaN)).toBeLessThan(0.1 * 37 * 6000);
    expect(option.findings().map((found) => found.code)).not.toContain('poles-contradict-speed');
  });
});

describe('ratings', () => {
  const { tables } = study();
  const given = {
    ladder: standardRatings(tables, 'nema', 37),
    ratedPowerKw: 50 * 0.7457,
    resizeBelow: 0.5,
    spareCapacityPct: 10,
  };
  const hp = (ratings: readonly number[]) => ratings.map((kw) => Math.round((kw / 0.7457) * 100) / 100);

  it('are horsepower steps in US studies and for ratings of that ladder, in whichever unit written; kilowatt steps else, ascending', () => {
    expect(hp(standardRatings(tables, 'iec', PLATE.ratedPowerKw))).toContain(7.5);
    expect(standardRatings(tables, 'iec', 37.3)).toBe(standardRatings(tables, 'iec', 50 * 0.7457));
    const kilowatts = standardRatings(tables, 'iec', 37);
    expect(kilowatts).toEqual(expect.arrayContaining([5.5, 7.5, 11, 15, 18.5, 22, 30, 37, 45]));
    for (const ladder of [given.ladder, kilowatts]) expect([...ladder].sort((a, b) => a - b)).toEqual(ladder);
  });
  it('below the limit are the two smallest that carry the highest load with the spare', () => {
    // 13.5 kW and 10 % spare are 14.85 kW: 20 hp (14.914 kW) carries it, 15 hp does not.
    expect(hp(otherRatings({ ...given, loadFraction: 0.3, highestLoadKw: 13.5 }))).toEqual([20, 25]);
    expect(hp(otherRatings({ ...given, loadFraction: 0.3, highestLoadKw: 13.6 }))).toEqual([25, 30]);
    expect(hp(otherRatings({ ...given, loadFraction: 0.3, highestLoadKw: 27 }))).toEqual([40]);
    expect(otherRatings({ ...given, loadFraction: 0.3, highestLoadKw: 36 })).toEqual([]);
  });
  it('are not weighed at or above the limit, and one step up when overloaded', () => {
    expect(otherRatings({ ...given, loadFraction: 0.5, highestLoadKw: 15 })).toEqual([]);
    expect(otherRatings({ ...given, loadFraction: 1, highestLoadKw: 37 })).toEqual([]);
    expect(hp(otherRatings({ ...given, loadFraction: 1.05, highestLoadKw: 39.1 }))).toEqual([60]);
    expect(hp(otherRatings({ ...given, loadFraction: 1.3, highestLoadKw: 48.5 }))).toEqual([75]);
    expect(otherRatings({ ...given, ratedPowerKw: 373, loadFraction: 1.2, highestLoadKw: 450 })).toEqual([]);
  });
  it('keep their neighbours apart in ids', () => {
    for (const rating of [50 * 0.7457, 37]) {
      const ladder = standardRatings(tables, 'iec', rating);
      expect(new Set(ladder.map(shortRating)).size).toBe(ladder.length);
    }
  });
});
