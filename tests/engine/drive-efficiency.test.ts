import { describe, expect, it } from 'vitest';
import { KILOWATTS_PER_HORSEPOWER } from '@/lib/engine/formula/constants';
import { driveEfficiency, driveEfficiencyAtInput } from '@/lib/engine/load/drive';
import { standardUncertainty } from '@/lib/engine/quantity/quantity';
import { scopeOf } from './support/study';

/** US DOE Motor Systems Tip Sheet 11 (2012), table 1: efficiency of a drive of 5 hp by its output, per cent. */
const OF_5_HP = [
  [1.6, 35],
  [12.5, 80],
  [25, 88],
  [42, 91],
  [50, 92],
  [75, 94],
  [100, 95],
] as const;

const KW = 5 * KILOWATTS_PER_HORSEPOWER;

describe('efficiency of a drive', () => {
  it('is that of the table at an output, and at the input that such an output takes', () => {
    for (const [load, pct] of OF_5_HP) {
      expect(driveEfficiency(scopeOf({}), KW, load / 100).value).toBeCloseTo(pct / 100, 10);
      expect(driveEfficiencyAtInput(scopeOf({}), KW, load / pct).value, `${load} % of output`).toBeCloseTo(pct / 100, 10);
    }
  });

  it('leaves input times efficiency as the output whose efficiency it is, between the rows too', () => {
    for (let input = 0.05; input <= 1.05; input += 0.01) {
      const { value } = driveEfficiencyAtInput(scopeOf({}), KW, input);
      expect(driveEfficiency(scopeOf({}), KW, input * value).value, `input ${input}`).toBeCloseTo(value, 9);
    }
  });

  it('stays that of the outermost rows beyond them', () => {
    expect(driveEfficiencyAtInput(scopeOf({}), KW, 0).value).toBeCloseTo(0.35, 10);
    expect(driveEfficiencyAtInput(scopeOf({}), KW, 2).value).toBeCloseTo(0.95, 10);
  });

  it('is as doubtful at 12.5 % of output as the listed drives of 5 to 200 hp differ there: 80 to 89 % (table 1)', () => {
    const middle = driveEfficiency(scopeOf({}), 30 * KILOWATTS_PER_HORSEPOWER, 0.125);
    const half = 1.96 * standardUncertainty(middle);
    expect(middle.value - half).toBeLessThan(0.83);
    expect(middle.value + half).toBeGreaterThan(0.89);
    // At full output they lie within two points.
    expect(standardUncertainty(driveEfficiency(scopeOf({}), KW, 1))).toBeCloseTo(0.0125, 10);
  });
});
