import { describe, expect, it } from 'vitest';
import { type BenchContext, evaluateBench } from '@/lib/engine/bench/evaluate';
import { benchResult } from '@/lib/engine/bench/result';
import { type BenchTest, USUAL_INSTRUMENTS } from '@/lib/engine/bench/test';
import { standardUncertainty } from '@/lib/engine/quantity/quantity';
import { loadTables } from '@/lib/reference/load';
import { DIRECT, directLoss, directRuns } from './direct-runs';
import { drawnErrors, NO_ERRORS, PLATE, seeded, syntheticTest, TRUTH } from './synthetic';

const { tables } = loadTables();
const context: BenchContext = {
  plate: PLATE,
  method: 'ieee-112-e',
  instruments: USUAL_INSTRUMENTS,
  assumedStray: tables.assumedStray,
};
const withRuns = (runs: ReturnType<typeof directRuns>, errors = NO_ERRORS): BenchTest => {
  const test = syntheticTest(errors);
  return { ...test, sections: { ...test.sections, ...runs } };
};
const found = (test: BenchTest) => {
  const { load } = evaluateBench(test, context);
  if (!load?.reverse) throw new Error('no stray-load loss was found');
  return { reverse: load.reverse, loads: load.loads };
};

describe('stray-load loss by reverse rotation', () => {
  it.each([
    [2, 2],
    [1.92, 2.13],
    [2.3, 1.8],
  ])('gives back the two powers of the current: exponents %d and %d', (fundamentalExponent, harmonicExponent) => {
    const { reverse } = found(withRuns(directRuns({ fundamentalExponent, harmonicExponent })));
    expect(reverse.fundamental.exponent.value).toBeCloseTo(fundamentalExponent, 9);
    expect(reverse.harmonic.exponent.value).toBeCloseTo(harmonicExponent, 9);
    const truth = directLoss(reverse.referenceA, { fundamentalExponent, harmonicExponent });
    expect(reverse.fundamental.atReference.value).toBeCloseTo(truth.fundamental, 6);
    expect(reverse.harmonic.atReference.value).toBeCloseTo(truth.harmonic, 6);
  });

  it('at rated load follows from the rotor’s part of the current, not from the whole of it', () => {
    const rated = found(withRuns(directRuns())).loads.find((load) => load.loadFraction === 1);
    const rotor = Math.sqrt((rated?.current.value ?? 0) ** 2 - TRUTH.noLoadCurrentA ** 2);
    const { fundamental, harmonic } = directLoss(rotor);
    expect(1000 * (rated?.losses.stray.value ?? 0)).toBeCloseTo(fundamental + harmonic, 3);
  });

  it('does not ask for equal currents in both runs, nor for their order', () => {
    const runs = directRuns();
    const some = {
      'rotor-removed': [4, 0, 2].flatMap((i) => runs['rotor-removed'][i] ?? []),
      'reverse-rotation': [6, 5, 1, 3].flatMap((i) => runs['reverse-rotation'][i] ?? []),
    };
    const { reverse } = found(withRuns(some));
    expect(reverse.harmonic.exponent.value).toBeCloseTo(DIRECT.harmonicExponent, 9);
  });

  it.each([
    ['two points of a run', (r: ReturnType<typeof directRuns>) => ({ ...r, 'rotor-removed': r['rotor-removed'].slice(0, 2) })],
    [
      'no row without current',
      (r: ReturnType<typeof directRuns>) => ({ ...r, 'reverse-rotation': r['reverse-rotation'].slice(0, 6) }),
    ],
    [
      'one current thrice',
      (r: ReturnType<typeof directRuns>) => ({
        ...r,
        'rotor-removed': r['rotor-removed'].map((point) => ({ ...point, currentA: 20, inputPowerKw: 0.5 })),
      }),
    ],
  ])('%s is refused with the reason', (_, change) => {
    const { accepted, findings } = evaluateBench(withRuns(change(directRuns())), context);
    expect(accepted).toBe(false);
    expect(findings.map(({ code }) => code)).toContain('reverse-rotation-missing');
  });

  it('every column stands in the result, and the parts add up to the balance of powers', () => {
    const { reverse_rotation: columns } = benchResult(evaluateBench(withRuns(directRuns()), context));
    expect([columns?.rotor_removed.length, columns?.driven.length]).toEqual([6, 6]);
    for (const column of columns?.driven ?? []) {
      const truth = directLoss(column.current.value);
      expect(column.loss.value).toBeCloseTo(truth.harmonic, 5);
      expect(column.shaft_power?.unit).toBe('kW');
    }
    expect(columns?.shaft_power_without_field.value).toBeCloseTo(TRUTH.frictionKw, 9);
  });

  // 1.96 standard uncertainties hold 95 %; of 300, fewer than 274 would happen about once in two hundred times if they held just that.
  it('holds the known loss within its 95 % interval, in tests with drawn errors of meters', () => {
    let inside = 0;
    for (let seed = 1; seed <= 300; seed++) {
      const errors = drawnErrors(seeded(seed));
      const { reverse } = found(withRuns(directRuns({}, errors), errors));
      const truth = directLoss(reverse.referenceA);
      const parts = [
        [reverse.fundamental.atReference, truth.fundamental],
        [reverse.harmonic.atReference, truth.harmonic],
        [reverse.fundamental.exponent, DIRECT.fundamentalExponent],
        [reverse.harmonic.exponent, DIRECT.harmonicExponent],
      ] as const;
      if (parts.every(([got, true_]) => Math.abs(got.value - true_) <= 2.5 * standardUncertainty(got))) inside++;
    }
    // Four figures at once, each by 2.5 standard uncertainties (98.8 %): 95 % if they were independent.
    expect(inside).toBeGreaterThanOrEqual(274);
  });
});
