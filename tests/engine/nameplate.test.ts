import { describe, expect, it } from 'vitest';
import type { Plate } from '@/lib/engine/motor';
import { completePlate } from '@/lib/engine/nameplate/complete';
import { typicalPowerFactor } from '@/lib/engine/nameplate/current';
import { ratedEfficiency } from '@/lib/engine/nameplate/efficiency';
import { standardUncertainty } from '@/lib/engine/quantity/quantity';
import { PLATE, scopeOf } from './support/study';

const complete = (changes: Partial<Plate>) => completePlate(scopeOf(), { ...PLATE, ...changes }, '');
const codes = (changes: Partial<Plate>) => complete(changes).findings.map(({ code }) => code);

describe('poles against the rated speed', () => {
  // By definition 8 poles at 60 Hz turn at 900 r/min, so 715 r/min is a slip of 20.6 %; 10 poles at 720 r/min, a slip of 0.7 %.
  const slow: Partial<Plate> = { poles: 8, ratedSpeedRpm: 715, ratedCurrentA: undefined };
  it('a slip of a fifth is that of another pole count, but for the high slip of design D (5 to 25 %, from memory)', () => {
    expect(complete(slow).plate.poles).toBe(10);
    expect(codes(slow)).toContain('poles-contradict-speed');
    expect(complete({ ...slow, designLetter: 'D' }).plate.poles).toBe(8);
    expect(codes({ ...slow, designLetter: 'D' })).not.toContain('poles-contradict-speed');
  });
});

describe('rated current against the other stamps', () => {
  // By definition I = P / (√3 U η cos φ).
  const amperes = 37_285 / (Math.sqrt(3) * 460 * 0.917 * 0.835);
  it('has less room beside a stamped power factor than beside a typical one', () => {
    expect(codes({ ratedCurrentA: 1.1 * amperes })).not.toContain('current-contradicts-plate');
    expect(codes({ ratedCurrentA: 1.2 * amperes })).toContain('current-contradicts-plate');
    expect(codes({ ratedCurrentA: 1.2 * amperes, ratedPowerFactorPct: undefined })).not.toContain('current-contradicts-plate');
    expect(codes({ ratedCurrentA: 1.5 * amperes, ratedPowerFactorPct: undefined })).toContain('current-contradicts-plate');
  });
});

describe('typical power factor', () => {
  it('falls with every further pair of poles, where no bound holds it', () => {
    const factors = [2, 4, 6, 8, 10].map((poles) => typicalPowerFactor(poles, 75));
    factors.slice(1).forEach((factor, i) => {
      expect(factor).toBeLessThan((factors[i] ?? 0) - 0.005);
    });
  });
});

describe('doubt of a stamped efficiency', () => {
  /** Doubt of the loss as a share of it. */
  const doubt = (standards: 'nema' | 'iec', ratedPowerKw: number): number => {
    const plate = { ...PLATE, ratedPowerKw, nominalEfficiencyPct: 95, yearBuilt: 2018 };
    const { efficiency } = ratedEfficiency(scopeOf({ standards }), plate, 4, 60, '');
    return standardUncertainty(efficiency) / (0.95 * 0.05);
  };
  it('is the tolerance at 2.5 deviations: 15 % of the loss to 150 kW and 10 % above by IEC 60034-1 table 20, 20 % by NEMA MG 1 12.58.2', () => {
    expect(doubt('iec', 150)).toBeCloseTo(0.15 / 2.5, 9);
    expect(doubt('iec', 160)).toBeCloseTo(0.1 / 2.5, 9);
    expect(doubt('nema', 150)).toBeCloseTo(0.2 / 2.5, 9);
    expect(doubt('nema', 160)).toBeCloseTo(0.2 / 2.5, 9);
  });
});
