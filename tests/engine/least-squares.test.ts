import fc from 'fast-check';
import { inv, multiply, transpose } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { factorise, solveFactored } from '@/lib/engine/estimate/cholesky';
import { type Fit, leastSquares } from '@/lib/engine/estimate/least-squares';
import { byDifferences } from './support/differences';

/** A problem whose predictions are a function of the unknowns alone. */
function fitOf(
  start: readonly number[],
  observed: readonly number[],
  u: readonly number[],
  model: (unknowns: Float64Array, i: number) => number,
): Fit | undefined {
  const predict = (unknowns: Float64Array, out: Float64Array): boolean => {
    for (let i = 0; i < out.length; i++) out[i] = model(unknowns, i);
    return out.every(Number.isFinite);
  };
  return leastSquares({
    start: Float64Array.from(start),
    observed: Float64Array.from(observed),
    u: Float64Array.from(u),
    predict,
    differentiate: byDifferences(predict),
  });
}

/** Covariance of the unknowns from the gains: each observation's variance by how much it moves them. */
function covarianceOf(fit: Fit, u: readonly number[]): number[][] {
  const n = fit.unknowns.length;
  return Array.from({ length: n }, (_, k) =>
    Array.from({ length: n }, (_, l) =>
      u.reduce((sum, each, i) => sum + (fit.gain[i * n + k] ?? 0) * (fit.gain[i * n + l] ?? 0) * each ** 2, 0),
    ),
  );
}

describe('linear problems in closed form', () => {
  it('one unknown observed often is the weighted mean, its variance one over the sum of the weights', () => {
    const values = [10.1, 9.7, 10.4];
    const u = [0.1, 0.2, 0.4];
    const fit = fitOf([0], values, u, (x) => x[0] ?? 0);
    // Weights 100, 25 and 6.25: (1010 + 242.5 + 65) / 131.25.
    expect(fit?.unknowns[0]).toBeCloseTo(1317.5 / 131.25, 10);
    expect(fit && covarianceOf(fit, u)[0]?.[0]).toBeCloseTo(1 / 131.25, 8);
    expect([...(fit?.gain ?? [])].reduce((sum, gain) => sum + gain, 0)).toBeCloseTo(1, 8);
  });

  it('a straight line has the textbook slope, intercept and covariance', () => {
    // x 1 to 4, y 6, 5, 7, 10: slope 1.4, intercept 3.5, sum of squares 4.2 (arithmetic).
    const y = [6, 5, 7, 10];
    const fit = fitOf([0, 0], y, [1, 1, 1, 1], (b, i) => (b[0] ?? 0) + (b[1] ?? 0) * (i + 1));
    expect(fit?.unknowns[0]).toBeCloseTo(3.5, 8);
    expect(fit?.unknowns[1]).toBeCloseTo(1.4, 8);
    expect(fit?.chiSquared).toBeCloseTo(4.2, 8);
    // (XᵀX)⁻¹ of x 1 to 4: [1.5, −0.5; −0.5, 0.2].
    const covariance = fit && covarianceOf(fit, [1, 1, 1, 1]);
    expect(covariance?.[0]?.[0]).toBeCloseTo(1.5, 6);
    expect(covariance?.[0]?.[1]).toBeCloseTo(-0.5, 6);
    expect(covariance?.[1]?.[1]).toBeCloseTo(0.2, 6);
  });

  it('an observation alone on its unknown is met exactly, and the one of endless doubt moves nothing', () => {
    const fit = fitOf([5, 5], [1, 2, 7], [0.1, 0.1, 1e9], (x, i) =>
      i === 0 ? (x[0] ?? 0) : i === 1 ? (x[1] ?? 0) : (x[0] ?? 0) + (x[1] ?? 0),
    );
    expect(fit?.unknowns[0]).toBeCloseTo(1, 9);
    expect(fit?.unknowns[1]).toBeCloseTo(2, 9);
    expect(Math.abs(fit?.gain[4] ?? 1)).toBeLessThan(1e-12);
  });

  it('agrees with the normal equations of a general matrix library on random problems, covariance included', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(fc.double({ min: -2, max: 2, noNaN: true }), { minLength: 3, maxLength: 3 }), {
          minLength: 6,
          maxLength: 9,
        }),
        fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: 9, maxLength: 9 }),
        fc.array(fc.double({ min: 0.2, max: 3, noNaN: true }), { minLength: 9, maxLength: 9 }),
        (rows, values, doubts) => {
          // A small identity keeps every problem solvable: three more observations, one of each unknown.
          const design = [...rows, [1, 0, 0], [0, 1, 0], [0, 0, 1]];
          const y = [...values.slice(0, rows.length), 0, 0, 0];
          const u = [...doubts.slice(0, rows.length), 1, 1, 1];
          const fit = fitOf([0, 0, 0], y, u, (x, i) => (design[i] ?? []).reduce((sum, a, k) => sum + a * (x[k] ?? 0), 0));
          const weighted = design.map((row, i) => row.map((a) => a / (u[i] ?? 1)));
          const covariance = inv(multiply(transpose(weighted), weighted)) as number[][];
          const right = multiply(
            transpose(weighted),
            y.map((value, i) => value / (u[i] ?? 1)),
          ) as number[];
          const expected = multiply(covariance, right) as number[];
          const found = fit && covarianceOf(fit, u);
          for (let k = 0; k < 3; k++) {
            expect(Math.abs((fit?.unknowns[k] ?? Number.NaN) - (expected[k] ?? 0))).toBeLessThan(1e-6);
            for (let l = 0; l < 3; l++)
              expect(Math.abs((found?.[k]?.[l] ?? Number.NaN) - (covariance[k]?.[l] ?? 0))).toBeLessThan(1e-6);
          }
        },
      ),
      { seed: 3, numRuns: 100 },
    );
  });
});

/**
 * NIST Statistical Reference Datasets, nonlinear regression, lower level of difficulty (public domain; certified to eleven digits).
 * Standard deviations there are scaled by the residual's, and so they are here.
 */
const X3 = Array.from({ length: 24 }, (_, i) => 0.05 * i);
const STRD = {
  /** D. Misra, dental research study of monomolecular adsorption, NIST 1978: y = b₁ (1 − exp(−b₂ x)). */
  Misra1a: {
    y: [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78],
    x: [77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760],
    starts: [
      [500, 0.0001],
      [250, 0.0005],
    ],
    certified: [238.94212918, 5.5015643181e-4],
    deviations: [2.7070075241, 7.2668688436e-6],
    squares: 0.12455138894,
    scales: [100, 1e-4],
    model: (b: readonly number[], x: number) => (b[0] ?? 0) * (1 - Math.exp(-(b[1] ?? 0) * x)),
  },
  /** C. Lanczos, Applied Analysis, 1956: three exponentials to five digits, famous for being badly conditioned. */
  Lanczos3: {
    y: [
      2.5134, 2.0443, 1.6684, 1.3664, 1.1232, 0.9269, 0.7679, 0.6389, 0.5338, 0.4479, 0.3776, 0.3197, 0.272, 0.2325, 0.1997,
      0.1723, 0.1493, 0.1301, 0.1138, 0.1, 0.0883, 0.0783, 0.0698, 0.0624,
    ],
    x: X3,
    starts: [
      [0.5, 0.7, 3.6, 4.2, 4, 6.3],
      [1.2, 0.3, 5.6, 5.5, 6.5, 7.6],
    ],
    certified: [8.6816414977e-2, 0.95498101505, 0.84400777463, 2.9515951832, 1.5825685901, 4.9863565084],
    deviations: [1.7197908859e-2, 9.7041624475e-2, 4.1488663282e-2, 0.10766312506, 5.8371576281e-2, 3.4436403035e-2],
    squares: 1.6117193594e-8,
    scales: [1, 1, 1, 1, 1, 1],
    model: (b: readonly number[], x: number) =>
      (b[0] ?? 0) * Math.exp(-(b[1] ?? 0) * x) +
      (b[2] ?? 0) * Math.exp(-(b[3] ?? 0) * x) +
      (b[4] ?? 0) * Math.exp(-(b[5] ?? 0) * x),
  },
} as const;

describe('reference problems of NIST', () => {
  for (const [name, problem] of Object.entries(STRD))
    it.each([0, 1])(`${name} from start ${'%d'}`, (which) => {
      const { x, y, certified, deviations, squares, scales, model } = problem;
      const n = certified.length;
      const freedom = y.length - n;
      const s = Math.sqrt(squares / freedom);
      const u = y.map(() => s);
      // The solver's unknowns are of the order of one by agreement, so each is counted in a scale of its own.
      const fit = fitOf(
        (problem.starts[which] ?? []).map((b, k) => b / (scales[k] ?? 1)),
        y,
        u,
        (unknowns, i) =>
          model(
            Array.from(unknowns, (value, k) => value * (scales[k] ?? 1)),
            x[i] ?? 0,
          ),
      );
      expect(fit, 'converges').toBeDefined();
      expect(Math.abs((fit?.chiSquared ?? 0) / freedom - 1)).toBeLessThan(1e-6);
      const covariance = fit && covarianceOf(fit, u);
      for (let k = 0; k < n; k++) {
        expect(
          Math.abs(((fit?.unknowns[k] ?? Number.NaN) * (scales[k] ?? 1)) / (certified[k] ?? 0) - 1),
          `b${k + 1}`,
        ).toBeLessThan(1e-5);
        const deviation = Math.sqrt(covariance?.[k]?.[k] ?? Number.NaN) * (scales[k] ?? 1);
        expect(Math.abs(deviation / (deviations[k] ?? 0) - 1), `deviation of b${k + 1}`).toBeLessThan(1e-3);
      }
    });
});

describe('problems without an answer', () => {
  it('an impossible start, and unknowns that nothing observes', () => {
    expect(
      leastSquares({
        start: Float64Array.of(1),
        observed: Float64Array.of(1),
        u: Float64Array.of(1),
        predict: () => false,
        differentiate: () => true,
      }),
    ).toBeUndefined();
    expect(fitOf([1, 1], [2], [1], (x) => x[0] ?? 0)).toBeUndefined();
    expect(fitOf([1, 1], [2, 2], [1, 1], (x) => (x[0] ?? 0) + (x[1] ?? 0))).toBeUndefined();
  });

  it('steps back from what cannot be, and still arrives', () => {
    // Only above zero; the first full step from 3 would be to −3.6: ln 3 − 3.
    const fit = fitOf([3], [0.1], [1], (x) => Math.log(x[0] ?? 0));
    expect(fit?.unknowns[0]).toBeCloseTo(Math.exp(0.1), 6);
    expect(fitOf([30], [-1], [1], (x) => Math.log(x[0] ?? 0))?.unknowns[0]).toBeCloseTo(Math.exp(-1), 6);
  });
});

describe('Cholesky factors', () => {
  it('solve what they were made of, and refuse what is not positive', () => {
    const a = Float64Array.of(4, 0, 0, 2, 5, 0, 1, 3, 6);
    expect(factorise(a, 3)).toBe(true);
    // [4 2 1; 2 5 3; 1 3 6] times (1, −2, 3) is (3, 1, 13).
    const b = Float64Array.of(3, 1, 13);
    solveFactored(a, 3, b);
    expect([...b].map((value) => Math.round(value * 1e12) / 1e12)).toEqual([1, -2, 3]);
    expect(factorise(Float64Array.of(1, 0, 2, 1), 2)).toBe(false);
    expect(factorise(Float64Array.of(Number.NaN), 1)).toBe(false);
  });
});
