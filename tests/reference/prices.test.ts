/** The invented price list: plausible shape, and marked as invented wherever it shows. */
import { describe, expect, it } from 'vitest';
import type { Price } from '@/lib/engine';
import { loadTables } from '@/lib/reference/load';
import { common, steps } from './support';

const { prices, tables, passports } = loadTables();
const of = (item: Price['item']) => prices.prices.filter((p) => p.item === item);
const kw = (p: Price) => p.ratedPowerKw ?? Number.NaN;
const motors = of('motor');
const newMotor = motors.filter((p) => p.poles === 4 && p.enclosure === 'enclosed' && p.efficiencyClass === 'premium');

describe('invented price list', () => {
  it('says that it is invented: in the list, in its passport, in the source of every row', () => {
    expect(prices.invented).toBe(true);
    expect(passports.find((p) => p.use === 'prices')?.title).toMatch(/^Invented/);
    expect(prices.prices.filter((p) => !p.source?.startsWith('invented'))).toEqual([]);
  });

  it('has a premium motor for every horsepower step from 1 to 500 hp, 2 to 8 poles, open and enclosed, within 2 % of its kW', () => {
    for (const step of tables.horsepowerSteps.rows.filter((r) => r.ratedPowerHp >= 1)) {
      const near = motors.filter((p) => p.efficiencyClass === 'premium' && Math.abs(kw(p) / step.ratedPowerKw - 1) < 0.021);
      const kinds = new Set(near.map((p) => `${p.poles} ${p.enclosure}`));
      expect(kinds.size, `${step.ratedPowerHp} hp`).toBe(8);
    }
  });

  it('rises with rating within every kind of line', () => {
    for (const [before, after] of steps(prices.prices, (p) => `${p.item} ${p.poles} ${p.enclosure} ${p.efficiencyClass}`)) {
      expect(kw(after)).toBeGreaterThan(kw(before));
      expect(after.price, `${after.item} ${kw(after)} kW`).toBeGreaterThanOrEqual(before.price);
    }
  });

  it('asks more for enclosed than open, for 6 poles than 4, for 8 than 6, for IE4 than premium', () => {
    const compare = (dear: (p: Price) => boolean, cheap: (p: Price) => boolean, keyOf: (p: Price) => string) => {
      const pairs = common(motors.filter(dear), keyOf, motors.filter(cheap), keyOf);
      expect(pairs.length).toBeGreaterThan(60);
      for (const [more, less] of pairs) expect(more.price, keyOf(more)).toBeGreaterThan(less.price);
    };
    compare(
      (p) => p.enclosure === 'enclosed',
      (p) => p.enclosure === 'open',
      (p) => `${p.efficiencyClass} ${p.poles} ${kw(p)}`,
    );
    compare(
      (p) => p.poles === 6,
      (p) => p.poles === 4,
      (p) => `${p.efficiencyClass} ${p.enclosure} ${kw(p)}`,
    );
    compare(
      (p) => p.poles === 8,
      (p) => p.poles === 6,
      (p) => `${p.efficiencyClass} ${p.enclosure} ${kw(p)}`,
    );
    compare(
      (p) => p.efficiencyClass === 'IE4',
      (p) => p.efficiencyClass === 'premium',
      (p) => `${p.poles} ${p.enclosure} ${kw(p)}`,
    );
  });

  /** Published screening range: rewinding costs 30 to 65 % of a new motor, 40 % as a rule (training notes of a university assessment centre). */
  it('puts rewinding at 40 to 66 % of a new motor, a share that does not rise with rating', () => {
    const pairs = common(
      of('rewind'),
      (p) => `${kw(p)}`,
      newMotor,
      (p) => `${kw(p)}`,
    );
    expect(pairs).toHaveLength(34);
    const shares = pairs.map(([rewind, motor]) => rewind.price / motor.price);
    for (const share of shares) {
      expect(share).toBeGreaterThan(0.4);
      expect(share).toBeLessThan(0.66);
    }
    // Prices are rounded to 5, 10 or 50 dollars, which moves a share by up to 0.01.
    for (const [at, share] of shares.slice(1).entries()) expect(share).toBeLessThanOrEqual((shares[at] ?? Number.NaN) + 0.01);
  });

  /** Same notes: 2 to 4 hours of an electrician below 25 hp, 4 to 8 above. */
  it('puts removal and installation at 2 to 4 hours below 25 hp and 4 to 8 above, at the stated rate of 95 dollars an hour', () => {
    for (const p of of('removal-install')) {
      const hours = p.price / 95;
      const small = kw(p) < 18.5;
      expect(hours, `${kw(p)} kW`).toBeGreaterThanOrEqual((small ? 2 : 4) - 0.05);
      expect(hours, `${kw(p)} kW`).toBeLessThanOrEqual((small ? 4 : 8) + 0.05);
    }
  });

  it('keeps a bearing job and a frame adapter below rewinding for the same motor', () => {
    for (const item of ['bearing-job', 'frame-adapter'] as const) {
      for (const [job, rewind] of common(
        of(item),
        (p) => `${kw(p)}`,
        of('rewind'),
        (p) => `${kw(p)}`,
      )) {
        expect(job.price, `${item} ${kw(job)} kW`).toBeLessThan(rewind.price);
      }
    }
  });
});
