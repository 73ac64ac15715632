import { describe, expect, it } from 'vitest';
import { evaluateMotor, HYPOTHESIS_IDS, type HypothesisId } from '@/lib/engine';
import { study } from '../support/study';
import { simulatedMotor } from './simulated-faults';

const suspicionsOf = (seed: number, faults: readonly HypothesisId[], stray: number) =>
  evaluateMotor(simulatedMotor(seed, faults, stray), study()).condition.suspicions().hypotheses;

const MOTORS = 40;
const seeds = Array.from({ length: MOTORS }, (_, i) => 1000 + i);

describe('simulated motors with one planted fault and a full set of readings', () => {
  it.each(HYPOTHESIS_IDS)('%s leads in at least 90 %% of them', (fault) => {
    const right = seeds.filter((seed) => suspicionsOf(seed, [fault], 0)[0]?.id === fault).length;
    expect(right / MOTORS).toBeGreaterThanOrEqual(0.9);
  });

  it('leads in at least 90 % where one in five motors has another reading out of line', () => {
    // 2 % for each of twelve readings: 1 − 0.98^12 = 21.5 % of the motors.
    const right = HYPOTHESIS_IDS.flatMap((fault) =>
      seeds.map((seed) => suspicionsOf(seed + 7000, [fault], 0.02)[0]?.id === fault),
    );
    expect(right.filter(Boolean).length / right.length).toBeGreaterThanOrEqual(0.9);
  });

  it('another fault is never strong in more than 1 % of them', () => {
    const wrong = HYPOTHESIS_IDS.flatMap((fault) =>
      seeds.map((seed) =>
        suspicionsOf(seed + 7000, [fault], 0.02).some((found) => found.strength === 'strong' && found.id !== fault),
      ),
    );
    expect(wrong.filter(Boolean).length / wrong.length).toBeLessThanOrEqual(0.01);
  });
});

describe('simulated sound motors', () => {
  it('are strongly suspected in at most 1 %, though four in ten have a reading out of line', () => {
    // 4 % for each of twelve readings: 1 − 0.96^12 = 38.7 %.
    const count = 500;
    let strong = 0;
    for (let seed = 0; seed < count; seed++)
      if (suspicionsOf(50000 + seed, [], 0.04).some((found) => found.strength === 'strong')) strong += 1;
    expect(strong / count).toBeLessThanOrEqual(0.01);
  });
});

describe('simulated motors with two planted faults', () => {
  it('are led by one of the two in at least 90 %, and both are among the first three in at least 90 %', () => {
    const outcomes = HYPOTHESIS_IDS.flatMap((first, i) =>
      HYPOTHESIS_IDS.slice(i + 1).flatMap((second, j) =>
        [0, 1].map((k) => {
          const ids = suspicionsOf(90000 + 100 * i + 10 * j + k, [first, second], 0).map((found) => found.id);
          return {
            led: ids[0] === first || ids[0] === second,
            both: [first, second].every((fault) => ids.slice(0, 3).includes(fault)),
          };
        }),
      ),
    );
    expect(outcomes.filter(({ led }) => led).length / outcomes.length).toBeGreaterThanOrEqual(0.9);
    expect(outcomes.filter(({ both }) => both).length / outcomes.length).toBeGreaterThanOrEqual(0.9);
  });
});
