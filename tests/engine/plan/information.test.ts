import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Act, resolvedShare, unitNormalLoss, valueOfInformation } from '@/lib/engine/plan/information';
import { Chance } from '../../simulator/random';

/** Mean of a function of a standard normal deviate, by the trapezoidal rule: 40,000 steps from −10 to 10. */
function meanOver(f: (z: number) => number): number {
  const steps = 40_000;
  let sum = 0;
  for (let k = 0; k <= steps; k++) {
    const z = -10 + (20 * k) / steps;
    sum += (f(z) * Math.exp(-0.5 * z * z)) / Math.sqrt(2 * Math.PI);
  }
  return (sum * 20) / steps;
}

const gain = (acts: readonly Act[]) => {
  const best = Math.max(...acts.map(({ mean }) => mean));
  return meanOver((z) => Math.max(...acts.map(({ mean, slope }) => mean + slope * z)) - best);
};

describe('the value of information', () => {
  it('has the unit normal loss of the tables', () => {
    // Raiffa and Schlaifer 1961, table of the unit normal loss integral (from memory; four significant digits).
    const table = [
      [0, 0.3989],
      [0.5, 0.1978],
      [1, 0.08332],
      [1.5, 0.02931],
      [2, 0.008491],
      [2.5, 0.002004],
      [3, 0.0003822],
    ] as const;
    for (const [u, loss] of table) expect(Number(unitNormalLoss(u).toPrecision(4))).toBe(loss);
    // And L(−u) = u + L(u).
    expect(unitNormalLoss(-1.5)).toBeCloseTo(1.5 + unitNormalLoss(1.5), 12);
    for (const u of [-2, 0.3, 1.7])
      expect(unitNormalLoss(u)).toBeCloseTo(
        meanOver((z) => Math.max(0, z - u)),
        7,
      );
  });

  it('of two acts is the unit normal loss times the spread of their difference', () => {
    // Keeping is worth 0; replacing 1000 on average with a spread of 2000: 2000 L(0.5) = 2000 × 0.1978.
    expect(
      valueOfInformation([
        { mean: 0, slope: 0 },
        { mean: 1000, slope: 2000 },
      ]),
    ).toBeCloseTo(395.6, 0);
  });

  it('of any acts is what integration finds, and no more than a perfect reading brings', () => {
    const act = fc.record({ mean: fc.integer({ min: -50, max: 50 }), slope: fc.integer({ min: -40, max: 40 }) });
    fc.assert(
      fc.property(
        fc.array(act, { minLength: 1, maxLength: 6 }),
        fc.double({ min: 0.1, max: 3, noNaN: true }),
        (acts, reading) => {
          const perfect = valueOfInformation(acts);
          expect(perfect).toBeCloseTo(gain(acts), 4);
          const share = resolvedShare(1, reading);
          const sample = valueOfInformation(acts.map(({ mean, slope }) => ({ mean, slope: share * slope })));
          expect(sample).toBeLessThanOrEqual(perfect + 1e-9);
        },
      ),
      { seed: 11, numRuns: 150 },
    );
  });

  it('of a sample is what playing it out finds: draw the truth, read it, choose by what is then believed', () => {
    const chance = new Chance(23);
    const [doubt, reading, slope] = [0.08, 0.05, 30_000];
    const games = 200_000;
    let sum = 0;
    for (let k = 0; k < games; k++) {
      const truth = doubt * chance.normal();
      const read = truth + reading * chance.normal();
      const believed = (read * doubt ** 2) / (doubt ** 2 + reading ** 2);
      // Replacing is worth −500 plus 30,000 for each unit of load beyond what was thought; keeping 0.
      if (-500 + slope * believed > 0) sum += -500 + slope * truth;
    }
    const exact = valueOfInformation([
      { mean: 0, slope: 0 },
      { mean: -500, slope: slope * doubt * resolvedShare(doubt, reading) },
    ]);
    // Spread of the mean of so many games: about 2,000 / √200,000 = 4.5.
    expect(Math.abs(exact - sum / games)).toBeLessThan(18);
  });

  it('is zero where nothing can flip the choice', () => {
    expect(valueOfInformation([])).toBe(0);
    expect(valueOfInformation([{ mean: 5, slope: 3 }])).toBe(0);
    expect(
      valueOfInformation([
        { mean: 5, slope: 3 },
        { mean: 2, slope: 3 },
      ]),
    ).toBe(0);
    expect(
      valueOfInformation([
        { mean: 1e6, slope: 1 },
        { mean: 0, slope: 0 },
      ]),
    ).toBe(0);
    expect(resolvedShare(0, 1)).toBe(0);
  });
});
