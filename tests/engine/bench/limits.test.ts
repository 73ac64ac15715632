import { describe, expect, it } from 'vitest';
import { compareTests } from '@/lib/engine/bench/compare';
import { evaluateBench } from '@/lib/engine/bench/evaluate';
import { fitAt, fitPowers } from '@/lib/engine/bench/least-squares';
import { doubtfulReadings } from '@/lib/engine/bench/plausible';
import { benchResult } from '@/lib/engine/bench/result';
import { currentAt, type LoadCurves, reachedLoads } from '@/lib/engine/bench/standard-loads';
import type { BenchTest } from '@/lib/engine/bench/test';
import { exact, standardUncertainty } from '@/lib/engine/quantity/quantity';
import { loadTables } from '@/lib/reference/load';
import { scopeOf } from '../support/study';
import { METHOD_B } from './context';
import { NO_ERRORS, PLATE, syntheticTest, TRUTH } from './synthetic';

const { tables } = loadTables();
const run = (test: BenchTest) => evaluateBench(test, METHOD_B);
const sound = syntheticTest();

describe('resistances of two tests', () => {
  it('are compared at one temperature: the same copper read warm has not changed (234.5 °C, IEEE 112-2017 5.2, from memory)', () => {
    const warm = syntheticTest(NO_ERRORS, (point, section) =>
      section !== 'cold'
        ? point
        : {
            ...point,
            windingTempC: 60,
            resistanceOhm: (TRUTH.resistance25 * (234.5 + 60)) / (234.5 + 25),
          },
    );
    const [resistance] = compareTests(benchResult(run(sound)), benchResult(run(warm)), tables.rewindLimits).changes;
    expect(resistance?.id).toBe('resistance');
    expect(resistance?.percent.value).toBeCloseTo(0, 6);
    expect(resistance?.before.value).toBeCloseTo(TRUTH.resistance25, 9);
  });
});

describe('standard loads', () => {
  it('are reached to 5 % beyond the highest tested load (contract of the results) and 12 % below the lowest', () => {
    expect(reachedLoads(0.25, 1.201).reached).toContain(1.25);
    expect(reachedLoads(0.25, 1.199).reached).not.toContain(1.25);
    expect(reachedLoads(0.369, 1).reached).toContain(0.25);
    expect(reachedLoads(0.371, 1).reached).not.toContain(0.25);
    expect(reachedLoads(0.371, 0.949).notReached).toEqual([0.25, 1]);
  });

  it('have a current whose doubt is that of its square over twice the current (JCGM 100, 5.1.2)', () => {
    const scope = scopeOf();
    const measured = (value: number, i: number) => ({ unit: 'A²' as const, value, parts: { at: [i], by: [0.02 * value] } });
    const fit = fitPowers(
      scope,
      'squares',
      [0, 1],
      [0.5, 1].map((x, i) => ({ x: exact(x, '1'), y: measured(100 + 700 * x, i) })),
    );
    if (!fit) throw new Error('two points make a line');
    const curves = { currentSquared: fit } as LoadCurves;
    const squared = fitAt(fit, exact(0.75, '1'), 'A²');
    const current = currentAt(curves, 0.75);
    expect(current.value).toBeCloseTo(Math.sqrt(625), 9);
    expect(standardUncertainty(current)).toBeCloseTo(standardUncertainty(squared) / (2 * 25), 9);
    expect(standardUncertainty(current)).toBeGreaterThan(0);
  });
});

describe('a temperature noted beside a resistance', () => {
  it('may differ from that by resistance by 15 K (own judgement)', () => {
    const noted = (windingTempC: number) => {
      // Copper at 80 °C by resistance.
      const hot = { row: 9, windingTempC, resistanceOhm: (TRUTH.resistance25 * (234.5 + 80)) / (234.5 + 25) };
      const sections = {
        ...sound.sections,
        cold: [{ row: 2, windingTempC: 25, resistanceOhm: TRUTH.resistance25 }],
        load: [hot],
      };
      return doubtfulReadings(sections, PLATE, 60, 234.5).map(({ code, evidence }) => [code, evidence.row]);
    };
    for (const near of [66, 94]) expect(noted(near)).not.toContainEqual(['bench-temperatures-disagree', 9]);
    for (const far of [64, 96]) expect(noted(far)).toContainEqual(['bench-temperatures-disagree', 9]);
  });
});
