import { describe, expect, it } from 'vitest';
import { evaluateMotor, type Motor, type StudyContext, shelfMotor, shelvesOf } from '@/lib/engine';
import { generateDemo } from '@/lib/features/demo/generate';
import { defaultSettings } from '@/lib/features/study/settings';
import { loadTables } from '@/lib/reference/load';

const reference = loadTables();
const STUDY: StudyContext = {
  settings: { ...defaultSettings(), asOf: '2026-01-01' },
  tables: reference.tables,
  prices: reference.prices,
};
const MOTORS = generateDemo({ asOf: '2026-01-01' }).map((entry) => entry.motor);
const GIVEN = { restockYears: 0.15, keepingPerYear: 0.02 };
const shelvesIn = (motors: readonly Motor[], study = STUDY, given = GIVEN) =>
  shelvesOf(
    motors.flatMap((motor) => shelfMotor(evaluateMotor(motor, study)) ?? []),
    study,
    given,
  );

describe('shelves of the demonstration site', () => {
  const shelves = shelvesIn(MOTORS);

  it('count each motor with a priced replacement at failure once, and list what is worth most first', () => {
    const tags = shelves.flatMap((shelf) => shelf.tags);
    expect(tags.length).toBeGreaterThan(50);
    expect(new Set(tags).size).toBe(tags.length);
    for (const [index, shelf] of shelves.entries()) {
      expect(shelf.best.value).toBeGreaterThanOrEqual(0);
      expect(shelf.best.value).toBeLessThanOrEqual(shelves[index - 1]?.best.value ?? Number.POSITIVE_INFINITY);
    }
  });
  it('more like motors never make a spare worth less', () => {
    const worth = [1, 4, 12].map((count) => {
      const like = MOTORS.filter((motor) => motor.tag === shelves[0]?.tags[0]).flatMap((motor) =>
        Array.from({ length: count }, (_, n) => ({ ...motor, tag: `${motor.tag}-${n}` })),
      );
      return shelvesIn(like)[0]?.best.value ?? -1;
    });
    expect(worth[1]).toBeGreaterThanOrEqual(worth[0] ?? 0);
    expect(worth[2]).toBeGreaterThan(worth[1] ?? 0);
  });
  it('keep none where the policy replaces a failed motor anyway, or where nothing fails', () => {
    const anyway = {
      ...STUDY,
      settings: { ...STUDY.settings, policy: { ...STUDY.settings.policy, atFailure: 'replace' as const } },
    };
    const never = { ...STUDY, settings: { ...STUDY.settings, failureRatePerYear: 0 } };
    for (const study of [anyway, never]) for (const shelf of shelvesIn(MOTORS, study)) expect(shelf.best.spares).toBe(0);
    expect(shelvesIn([])).toEqual([]);
  });

  it('take the lead time of the price list where it has one, between two ratings the longer, and say where it has none', () => {
    const shelf = shelves[0];
    if (!shelf) throw new Error('there is no shelf');
    const near = (kw: number) => Math.abs(Math.log(kw / shelf.ratedPowerKw)) < 0.02;
    const found = (weeks: (ratedPowerKw: number) => number | undefined, without = false) => {
      const list = STUDY.prices.prices.filter(({ item, ratedPowerKw: kw = 0 }) => !without || item !== 'motor' || !near(kw));
      const priced = list.map((price) => ({ ...price, leadTimeWeeks: weeks(price.ratedPowerKw ?? 0) }));
      return shelvesIn(MOTORS, { ...STUDY, prices: { ...STUDY.prices, prices: priced } }).find(
        ({ tags }) => tags[0] === shelf.tags[0],
      );
    };
    expect(found(() => undefined)).toMatchObject({ restockListed: false, restockYears: GIVEN.restockYears });
    // 26 weeks are 26 / 52.18 of a year.
    expect(found((kw) => (near(kw) ? 26 : 4))).toMatchObject({ restockListed: true, restockYears: expect.closeTo(0.4983, 3) });
    const between = found((kw) => (kw < shelf.ratedPowerKw ? 26 : 4), true);
    expect(between).toMatchObject({ restockListed: true, restockYears: expect.closeTo(0.4983, 3) });
    expect(found(() => 26)?.one.empty ?? 0).toBeGreaterThan(found(() => 2)?.one.empty ?? 1);
  });

  it('name the most that stops could save, by hand for one motor: rate × cost × chance that the shelf is full × 8.559 years at 8 %', () => {
    const tag = shelves[0]?.tags[0];
    const base = MOTORS.filter((motor) => motor.tag === tag);
    const at = (changes: Partial<Motor['plate']>) =>
      shelvesIn(base.map((motor) => ({ ...motor, plate: { ...motor.plate, standby: undefined, ...changes } })))[0];
    const priced = at({ unplannedStopCost: 10_000 });
    // Uniform present value factor, 8 %, 15 years: 8.559 (NIST Handbook 135, table B-1).
    expect(priced?.stopsMet).toBeCloseTo(0.05 * 10_000 * (1 - (priced?.one.empty ?? 1)) * 8.559, 0);
    expect(priced?.stopsUnknown).toBe(0);
    expect(at({ unplannedStopCost: undefined })).toMatchObject({ stopsMet: 0, stopsUnknown: 1 });
    expect(at({ unplannedStopCost: 10_000, standby: true })).toMatchObject({ stopsMet: 0, stopsUnknown: 0 });
  });
});
