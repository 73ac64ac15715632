import { CholeskyDecomposition, Matrix, QrDecomposition } from 'ml-matrix';
import type { Scope } from '../formula/apply';
import { combineParts, onePart, type Parts, type Quantity } from '../quantity/quantity';
import type { Unit } from '../quantity/unit';

/** One point to be fitted. */
export interface FitPoint {
  readonly x: Quantity;
  readonly y: Quantity;
}

/** A linear combination of powers of x, fitted by least squares. */
export interface Fit {
  readonly powers: readonly number[];
  readonly coefficients: readonly number[];
  /** Uncertainty of each coefficient by source; two coefficients are correlated through the sources they share. */
  readonly parts: readonly Parts[];
  readonly residuals: readonly number[];
  /** Degrees of freedom, and standard deviation of the residuals; absent without freedom. */
  readonly freedom: number;
  readonly deviation: number | undefined;
  /** Inverse of the normal matrix, row by row: times the square of the deviation it is the covariance of a plain fit. */
  readonly normalInverse: readonly (readonly number[])[];
}

/**
 * Ordinary least squares on powers of x, with the doubts of abscissae and ordinates carried into the coefficients.
 *
 * Units: those of the points. Valid for: at least as many different x as powers; returns `undefined` otherwise, never a half-solved fit.
 * The coefficients are those of equal weights, as the standards ask. Their derivatives by each x and y are exact: with W the
 * pseudo-inverse, N the inverse normal matrix, r the residuals and f the derivatives of the basis,
 * dβ = W dy − W (f·β) dx + N f r dx. Where the points scatter more than their stated doubts explain, the surplus of variance is added with
 * the covariance of a plain fit.
 * Apart from the search of `estimate/least-squares.ts`, and not by oversight. That one is given a weight for each observation, solves for a
 * few unknowns that enter the predictions in curves, thousands of times in a row, by normal equations, which square the condition of the
 * design. Here weights are equal, the coefficients enter in proportion, and what counts is the digits (a cubic over the load, the
 * certified values of NIST), hence the QR factors, and the derivative by abscissae as well as ordinates, which a search with exact
 * abscissae has not. One function for both would branch at every step.
 * Source: GUM (JCGM 100:2008) 5.2 and annex H.3; any text on least squares for W and N.
 */
export function fitPowers(scope: Scope, id: string, powers: readonly number[], points: readonly FitPoint[]): Fit | undefined {
  const n = points.length;
  const p = powers.length;
  if (n < p || new Set(points.map((point) => point.x.value)).size < p) return undefined;
  const design = new Matrix(points.map((point) => powers.map((power) => point.x.value ** power)));
  const qr = new QrDecomposition(design);
  if (!qr.isFullRank()) return undefined;
  const y = Matrix.columnVector(points.map((point) => point.y.value));
  const beta = qr.solve(y).to1DArray();
  const inverse = qr.solve(Matrix.eye(n));
  const normal = inverse.mmul(inverse.transpose());
  const residuals = y.sub(design.mmul(Matrix.columnVector(beta))).to1DArray();
  const slopes = points.map((point) => powers.map((power) => (power === 0 ? 0 : power * point.x.value ** (power - 1))));
  // What each point's own error does to y − f(x).
  const errors = points.map((point, i) =>
    combineParts([
      [1, point.y.parts],
      [-dot(slopes[i] ?? [], beta), point.x.parts],
    ]),
  );
  const parts = powers.map((_, k) =>
    combineParts([
      ...errors.map((error, i) => [inverse.get(k, i), error] as const),
      ...points.map((point, i) => [dot(normal.getRow(k), slopes[i] ?? []) * (residuals[i] ?? 0), point.x.parts] as const),
    ]),
  );
  const freedom = n - p;
  const sum = residuals.reduce((total, residual) => total + residual * residual, 0);
  const surplus = freedom > 0 ? Math.max(0, (sum - expectedSum(design, inverse, errors)) / freedom) : 0;
  return {
    powers,
    coefficients: beta,
    parts: withScatter(scope, id, parts, normal, surplus),
    residuals,
    freedom,
    deviation: freedom > 0 ? Math.sqrt(sum / freedom) : undefined,
    normalInverse: normal.to2DArray(),
  };
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);
}

/** Sum of squared residuals that the stated doubts lead one to expect: each source's errors, less what the fit takes up. */
function expectedSum(design: Matrix, inverse: Matrix, errors: readonly Parts[]): number {
  const bySource = new Map<number, number[]>();
  errors.forEach((error, i) => {
    error.at.forEach((source, j) => {
      const column = bySource.get(source) ?? new Array<number>(errors.length).fill(0);
      column[i] = (column[i] ?? 0) + (error.by[j] ?? 0);
      bySource.set(source, column);
    });
  });
  let sum = 0;
  for (const column of bySource.values()) {
    const error = Matrix.columnVector(column);
    const left = Matrix.sub(error, design.mmul(inverse.mmul(error)));
    sum += left.to1DArray().reduce((total, value) => total + value * value, 0);
  }
  return sum;
}

function withScatter(scope: Scope, id: string, parts: readonly Parts[], normal: Matrix, surplus: number): readonly Parts[] {
  if (surplus === 0) return parts;
  const root = new CholeskyDecomposition(normal).lowerTriangularMatrix;
  return parts.map((own, k) =>
    combineParts([
      [1, own],
      ...parts.map(
        (_, j) =>
          [
            1,
            onePart(
              scope.sources.number(`${id}:scatter:${j}`, 'scatter about the fitted line'),
              root.get(k, j) * Math.sqrt(surplus),
            ),
          ] as const,
      ),
    ]),
  );
}

/** One coefficient as a quantity. */
export function coefficient<U extends Unit>(fit: Fit, index: number, unit: U): Quantity<U> {
  const value = fit.coefficients[index];
  const parts = fit.parts[index];
  if (value === undefined || parts === undefined) throw new Error(`the fit has no coefficient ${index}`);
  return { unit, value, parts };
}

/** The fitted curve at an abscissa. */
export function fitAt<U extends Unit>(fit: Fit, x: Quantity, unit: U): Quantity<U> {
  const terms = fit.powers.map((power) => x.value ** power);
  const slope = fit.powers.reduce(
    (sum, power, k) => sum + (power === 0 ? 0 : power * x.value ** (power - 1)) * (fit.coefficients[k] ?? 0),
    0,
  );
  return {
    unit,
    value: dot(terms, fit.coefficients),
    parts: combineParts([...fit.parts.map((parts, k) => [terms[k] ?? 0, parts] as const), [slope, x.parts]]),
  };
}

/** Pearson's correlation coefficient; `undefined` where all x or all y are equal. */
export function correlation(points: readonly FitPoint[]): number | undefined {
  const n = points.length;
  const mx = points.reduce((sum, point) => sum + point.x.value, 0) / n;
  const my = points.reduce((sum, point) => sum + point.y.value, 0) / n;
  let xx = 0;
  let yy = 0;
  let xy = 0;
  for (const { x, y } of points) {
    xx += (x.value - mx) ** 2;
    yy += (y.value - my) ** 2;
    xy += (x.value - mx) * (y.value - my);
  }
  return xx > 0 && yy > 0 ? xy / Math.sqrt(xx * yy) : undefined;
}
