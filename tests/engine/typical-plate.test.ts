import { describe, expect, it } from 'vitest';
import { typicalPowerFactor } from '@/lib/engine/nameplate/current';
import { roundingOf } from '@/lib/engine/nameplate/speed';
import { widened } from '@/lib/engine/quantity/coverage';
import { figure } from '@/lib/engine/result-figure';

/**
 * Largest capacitor at the terminals of old motors, as amperes at 460 V: a handbook table read in one source. It stays below the no-load
 * current, lest the motor excite itself. Old efficiencies from memory.
 */
const CAPACITORS = [
  { hp: 3, poles: 4, amperes: 0.392 * 4.8, efficiency: 0.8 },
  { hp: 3, poles: 8, amperes: 0.523 * 4.8, efficiency: 0.77 },
  { hp: 10, poles: 2, amperes: 0.269 * 14, efficiency: 0.85 },
  { hp: 10, poles: 4, amperes: 0.269 * 14, efficiency: 0.855 },
  { hp: 10, poles: 8, amperes: 0.448 * 14, efficiency: 0.84 },
  { hp: 10, poles: 10, amperes: 0.538 * 14, efficiency: 0.83 },
  { hp: 10, poles: 12, amperes: 0.672 * 14, efficiency: 0.82 },
];

describe('typical power factor at rated load', () => {
  it.each(CAPACITORS)('$hp hp, $poles poles: the no-load current is above the largest capacitor’s', (row) => {
    const factor = typicalPowerFactor(row.poles, row.hp * 0.7457);
    const rated = (row.hp * 745.7) / (Math.sqrt(3) * 460 * row.efficiency * factor);
    expect((Math.sqrt(1 - factor ** 2) - 0.17) * rated).toBeGreaterThan(row.amperes);
  });

  it('falls with the poles and rises with the rating, within what catalogues show (0.5 to 0.94, from memory)', () => {
    for (const kw of [0.75, 3, 15, 75, 375, 750]) {
      const factors = [2, 4, 6, 8, 10, 12].map((poles) => typicalPowerFactor(poles, kw));
      expect(factors).toEqual([...factors].sort((a, b) => b - a));
      expect(Math.min(...factors)).toBeGreaterThan(0.5);
      expect(Math.max(...factors)).toBeLessThan(0.94);
    }
    for (const poles of [2, 4, 6, 8, 10, 12])
      expect(typicalPowerFactor(poles, 75)).toBeGreaterThan(typicalPowerFactor(poles, 3.7));
  });
});

describe('rounding of a stamped speed', () => {
  it('has the variance of the mixture where the stamp is a multiple of ten', () => {
    expect(roundingOf(1750) ** 2 / 3).toBeCloseTo((0.4 * 25 + 0.6 * 6.25) / 3, 1);
    expect([roundingOf(1745), roundingOf(1752)]).toEqual([2.5, 0.5]);
  });
});

describe('the standard uncertainty of a figure that bends', () => {
  const quantity = { value: 10, unit: 'kW', parts: { at: [0], by: [1] } } as const;
  it('is never less than its limits of 95 % say', () => {
    expect(widened(quantity, { low: 2, high: 12 })).toBeCloseTo(10 / 3.919928, 6);
  });
  it('stays where the limits are narrower, as where one rectangular error rules', () => {
    expect(widened(quantity, { low: 8.355, high: 11.645 })).toBe(1);
    expect(widened(quantity, undefined)).toBe(1);
    expect(figure(quantity, 'USD', { low: 2, high: 12 }).u).toBe(1);
  });
});
