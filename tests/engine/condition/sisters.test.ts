import { describe, expect, it } from 'vitest';
import { evaluateMotor, fleetKeyOf, motorResult, type SisterResult, type UnrankedMotor } from '@/lib/engine';
import { amongSisters, FEWEST_SISTERS } from '@/lib/engine/condition/among-sisters';
import type { SisterFacts } from '@/lib/engine/condition/likeness';
import { compareSisters } from '@/lib/engine/condition/sisters';
import { motorOf, study } from '../support/study';

const sure = (value: number) => ({ value, u: 0 });

describe('a value among its sisters', () => {
  it('goes by median and median absolute deviation, worked by hand', () => {
    // Median 2.0; deviations 0.2, 0.1, 0, 0.1, 7.0: their median 0.1 is 0.148, below a tenth of 2.0. Five sisters ask for 2.5 + 12/2 = 8.5
    // deviations: 8.5 × 0.2 = 1.7.
    const sisters = [1.8, 1.9, 2.0, 2.1, 9.0];
    expect(amongSisters(sure(3.69), sisters, 'difference')).toMatchObject({ count: 5, median: 2, standing: 'like' });
    expect(amongSisters(sure(3.71), sisters, 'difference')?.standing).toBe('above');
    expect(amongSisters(sure(0.29), sisters, 'difference')?.standing).toBe('below');
  });

  it('goes by their scatter where that is larger than a tenth', () => {
    // Median 3; deviations 2, 1, 0, 1, 2: median 1, times 1.4826 and 8.5 is 12.6.
    expect(amongSisters(sure(15.6), [1, 2, 3, 4, 5], 'difference')?.standing).toBe('like');
    expect(amongSisters(sure(15.7), [1, 2, 3, 4, 5], 'difference')?.standing).toBe('above');
  });

  it('its bounds do not go below zero where nothing compared does', () => {
    // Median 3 less 12.6, as above; with a sister below zero: median 2, deviations 3, 1, 0, 1, 2: again 1, so 2 less 12.6.
    expect(amongSisters(sure(16), [1, 2, 3, 4, 5], 'difference')?.low).toBe(0);
    expect(amongSisters(sure(16), [-1, 1, 2, 3, 4], 'difference')?.low).toBeCloseTo(2 - 8.5 * 1.4826, 9);
  });

  it('compares by ratio what differs by factors: 2 MΩ among some hundreds stands apart, which differences would not show', () => {
    const sisters = [200, 400, 800, 500, 300, 600, 1500, 250, 450, 700];
    expect(amongSisters(sure(2), sisters, 'ratio')?.standing).toBe('below');
    expect(amongSisters(sure(2), sisters, 'difference')?.standing).toBe('like');
  });

  it('the doubt of the value itself counts', () => {
    const sisters = [1.8, 1.9, 2.0, 2.1, 2.2];
    expect(amongSisters({ value: 4, u: 0 }, sisters, 'difference')?.standing).toBe('above');
    expect(amongSisters({ value: 4, u: 0.5 }, sisters, 'difference')?.standing).toBe('like');
  });

  it.each([[[]], [[1, 1, 1, 1]]])('says nothing beside %j: five are wanted', (sisters) => {
    expect(sisters.length).toBeLessThan(FEWEST_SISTERS);
    expect(amongSisters(sure(5), sisters, 'difference')).toBeUndefined();
  });

  it('by ratio, what is zero or less says nothing', () => {
    expect(amongSisters(sure(0), [1, 1, 1, 1, 1], 'ratio')).toBeUndefined();
    expect(amongSisters(sure(1), [0, 1, 1, 1, 1], 'ratio')).toBeUndefined();
  });

  it('of five alike, only another value stands apart', () => {
    expect(amongSisters(sure(0), [0, 0, 0, 0, 0], 'difference')?.standing).toBe('like');
    expect(amongSisters(sure(1), [0, 0, 0, 0, 0], 'difference')?.standing).toBe('above');
  });

  it.each([5, 6, 7, 8, 10, 15, 30])(
    'of normally scattered like motors beside %d sisters, at most 3 in 100 stand apart',
    (count) => {
      // A linear congruential generator (Numerical Recipes) and Box and Muller: like for like, centred on 0 so that no floor helps.
      let state = 12345;
      const uniform = () => {
        state = (1664525 * state + 1013904223) % 4294967296;
        return (state + 0.5) / 4294967296;
      };
      const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
      const trials = 6000;
      let apart = 0;
      for (let i = 0; i < trials; i++) {
        const sisters = Array.from({ length: count }, normal);
        if (amongSisters(sure(normal()), sisters, 'difference')?.standing !== 'like') apart += 1;
      }
      expect(apart / trials).toBeLessThanOrEqual(0.03);
    },
  );
});

const base: SisterFacts = {
  site: 'S',
  area: 'A',
  ratedPowerKw: 30,
  likeness: { machine_kind: 'cage', poles: 4, rated_voltage_v: 460, drive_fed: false, driven_machine: 'pump' },
  values: [{ id: 'vibration', value: 1.5, u: 0.05, unit: 'mm/s' }],
};
const vibrating = (value: number, changes: Partial<SisterFacts> = {}): SisterFacts => ({
  ...base,
  ...changes,
  values: [{ id: 'vibration', value, u: 0.03 * value, unit: 'mm/s' }],
});
const five = [1.3, 1.4, 1.5, 1.6, 1.7].map((value) => vibrating(value));

describe('the comparison over a fleet', () => {
  it('finds the one that shakes more than those of its type', () => {
    const found = compareSisters([...five, vibrating(6)]);
    expect(found.at(-1)).toMatchObject([
      { indicator: 'vibration', alike: 'type', value: 6, count: 5, standing: 'above', worse: true },
    ]);
    // The odd one does not make the others stand apart.
    for (const among of found.slice(0, -1)) expect(among).toMatchObject([{ count: 5, standing: 'like', worse: false }]);
  });

  it.each([
    ['another site', { site: 'T' }],
    ['another rating', { ratedPowerKw: 100 }],
    ['another number of poles', { likeness: { ...base.likeness, poles: 2 } }],
    ['a drive', { likeness: { ...base.likeness, drive_fed: true } }],
    ['another kind', { likeness: { ...base.likeness, machine_kind: 'synchronous' } }],
  ])('%s is no sister', (_, changes) => {
    expect(compareSisters([...five, vibrating(6, changes)]).at(-1)).toEqual([]);
  });

  it('a rating within the rounding of plates is the same', () => {
    expect(compareSisters([...five, vibrating(6, { ratedPowerKw: 29.83 })]).at(-1)).toHaveLength(1);
  });

  it('goes by area and driven machine where the type has too few', () => {
    const other = { ratedPowerKw: 45, likeness: { ...base.likeness, rated_voltage_v: 480 } };
    expect(compareSisters([...five, vibrating(6, other)]).at(-1)).toMatchObject([{ alike: 'place', count: 5, worse: true }]);
    expect(compareSisters([...five, vibrating(6, { ...other, area: 'B' })]).at(-1)).toEqual([]);
    expect(compareSisters([...five, vibrating(6, { ...other, area: undefined })]).at(-1)).toEqual([]);
  });

  it('compares like units alone', () => {
    const sideband = (value: number, unit: string): SisterFacts => ({
      ...base,
      values: [{ id: 'rotor-sideband', value, u: 0.5, unit }],
    });
    const level = [58, 59, 60, 61, 62].map((value) => sideband(value, 'dB'));
    // Fewer decibels below the line is the bad side; bars are another unit.
    const found = compareSisters([...level, sideband(1, 'dB'), sideband(2, 'bars')]);
    expect(found.at(-2)).toMatchObject([{ standing: 'below', worse: true, count: 5 }]);
    expect(found.at(-1)).toEqual([]);
  });

  it('a low insulation resistance is the bad side, a high one is not', () => {
    const insulation = (value: number): SisterFacts => ({
      ...base,
      values: [{ id: 'insulation-resistance', value, u: 0.03 * value, unit: 'MΩ' }],
    });
    const sisters = [300, 400, 500, 600, 700].map(insulation);
    expect(compareSisters([...sisters, insulation(1)]).at(-1)).toMatchObject([{ standing: 'below', worse: true }]);
    expect(compareSisters([...sisters, insulation(500000)]).at(-1)).toMatchObject([{ standing: 'above', worse: false }]);
  });

  it('of many, the sixty nearest in rating count', () => {
    const many = Array.from({ length: 200 }, (_, i) => vibrating(1 + (i % 10) / 20));
    for (const among of compareSisters(many)) expect(among[0]?.count).toBe(60);
  });

  it('an empty fleet and a fleet without readings give empty lists', () => {
    expect(compareSisters([])).toEqual([]);
    expect(compareSisters([{ ...base, values: [] }])).toEqual([[]]);
  });
});

describe('sisters in the results of a fleet', () => {
  const result = (tag: string, vibrationMmS: number) =>
    motorResult(evaluateMotor({ ...motorOf({ plate: { foundation: 'rigid' }, reading: { vibrationMmS } }), tag }, study()));
  const fleet = ['A', 'B', 'C', 'D', 'E'].map((tag, i) => result(tag, 1.2 + 0.05 * i));

  const among = (results: readonly UnrankedMotor[]): ReadonlyMap<string, readonly SisterResult[] | undefined> => {
    const found = compareSisters(results.map((motor) => fleetKeyOf(motor).sisters));
    return new Map(results.map(({ tag }, index) => [tag, found[index]]));
  };

  it('stand for the motor that is unlike them, who alone has none', () => {
    expect(among([result('F', 9)]).get('F')).toEqual([]);
    expect(among([...fleet, result('F', 9)]).get('F')).toContainEqual(
      expect.objectContaining({ indicator: 'vibration', standing: 'above', worse: true }),
    );
  });

  it('are the same in any order of the fleet', () => {
    const forwards = among([...fleet, result('F', 9)]);
    const backwards = among([result('F', 9), ...[...fleet].reverse()]);
    expect(backwards).toEqual(forwards);
  });
});
