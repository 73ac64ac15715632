import { factorise, solveFactored } from './cholesky';

/** A weighted least-squares problem: predictions of observed values from unknowns. */
export interface Problem {
  readonly start: Float64Array;
  readonly observed: Float64Array;
  /** Standard uncertainty of each observed value, all above zero. */
  readonly u: Float64Array;
  /** Predicts every observed value; false where the unknowns describe nothing possible. */
  readonly predict: (unknowns: Float64Array, out: Float64Array) => boolean;
  /**
   * Derivative of prediction i by unknown k, put at `i * count + k`, at the unknowns of the last successful prediction; false where it
   * does not exist.
   */
  readonly differentiate: (unknowns: Float64Array, jacobian: Float64Array) => boolean;
}

/** A solution: the unknowns, the misfit, and how each observed value moves each unknown. */
export interface Fit {
  readonly unknowns: Float64Array;
  readonly predicted: Float64Array;
  /** Sum of squared residuals over their uncertainties. */
  readonly chiSquared: number;
  /** Derivative of unknown k by observed value i, at `i * count + k`. */
  readonly gain: Float64Array;
  /** Derivative of prediction i by unknown k, at `i * count + k`. */
  readonly jacobian: Float64Array;
  readonly iterations: number;
  /** Largest last step of an unknown. */
  readonly residual: number;
}

/** Where stamps are far from what is typical each step may be but a quarter shorter than the last. */
const ITERATIONS = 100;

/** Steps below this end the search; it may stop early, where halving finds nothing better, below the second. */
const SETTLED = 1e-10;
const ACCEPTABLE = 1e-5;

/**
 * Gauss-Newton with step halving: minimises Σ((observed − predicted)/u)².
 *
 * Returns `undefined` when the start is impossible, the normal equations cannot be factored, or the steps do not settle: never a
 * half-solved point. Source: GUM 5 and JCGM 102 for the linearised covariance; Nocedal and Wright, Numerical Optimization, chapter 10
 * (from memory) for the step rule.
 */
export function leastSquares(problem: Problem): Fit | undefined {
  const { observed, u, predict, differentiate } = problem;
  const n = problem.start.length;
  const m = observed.length;
  let y = Float64Array.from(problem.start);
  let predicted = new Float64Array(m);
  if (!predict(y, predicted)) return undefined;
  let cost = costOf(observed, u, predicted);
  const jacobian = new Float64Array(m * n);
  const normal = new Float64Array(n * n);
  let trial = new Float64Array(n);
  let outcome = new Float64Array(m);
  const step = new Float64Array(n);
  for (let iteration = 1; iteration <= ITERATIONS; iteration++) {
    if (!differentiate(y, jacobian)) return undefined;
    normalMatrix(jacobian, u, normal, n);
    if (!factorise(normal, n)) return undefined;
    gradient(jacobian, observed, predicted, u, step);
    solveFactored(normal, n, step);
    let size = 0;
    for (let k = 0; k < n; k++) size = Math.max(size, Math.abs(step[k] as number));
    let better = false;
    let scale = 1;
    for (let halving = 0; halving < 12; halving++, scale /= 2) {
      for (let k = 0; k < n; k++) trial[k] = (y[k] as number) + scale * (step[k] as number);
      if (!predict(trial, outcome)) continue;
      const next = costOf(observed, u, outcome);
      if (next > cost + 1e-9 * (1 + cost)) continue;
      [y, trial] = [trial, y];
      [predicted, outcome] = [outcome, predicted];
      better = true;
      cost = next;
      size *= scale;
      break;
    }
    if (!better || size < SETTLED || iteration === ITERATIONS) {
      if (size > ACCEPTABLE) return undefined;
      return {
        unknowns: y,
        predicted,
        chiSquared: cost,
        gain: gains(normal, jacobian, u, n, m),
        jacobian,
        iterations: iteration,
        residual: size,
      };
    }
  }
  return undefined;
}

function costOf(observed: Float64Array, u: Float64Array, predicted: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < observed.length; i++) {
    const r = ((observed[i] as number) - (predicted[i] as number)) / (u[i] as number);
    sum += r * r;
  }
  return sum;
}

function normalMatrix(jacobian: Float64Array, u: Float64Array, normal: Float64Array, n: number): void {
  normal.fill(0);
  for (let i = 0; i < u.length; i++) {
    const w = 1 / ((u[i] as number) * (u[i] as number));
    for (let k = 0; k < n; k++) {
      const jk = jacobian[i * n + k] as number;
      if (jk === 0) continue;
      for (let l = 0; l <= k; l++) normal[k * n + l] = (normal[k * n + l] as number) + w * jk * (jacobian[i * n + l] as number);
    }
  }
}

function gradient(
  jacobian: Float64Array,
  observed: Float64Array,
  predicted: Float64Array,
  u: Float64Array,
  right: Float64Array,
): void {
  const n = right.length;
  right.fill(0);
  for (let i = 0; i < observed.length; i++) {
    const r = ((observed[i] as number) - (predicted[i] as number)) / ((u[i] as number) * (u[i] as number));
    for (let k = 0; k < n; k++) right[k] = (right[k] as number) + (jacobian[i * n + k] as number) * r;
  }
}

/** Normal matrix factored, times Jᵀ over u²: one column for each observed value. */
function gains(factored: Float64Array, jacobian: Float64Array, u: Float64Array, n: number, m: number): Float64Array {
  const gain = new Float64Array(m * n);
  const column = new Float64Array(n);
  for (let i = 0; i < m; i++) {
    const w = 1 / ((u[i] as number) * (u[i] as number));
    for (let k = 0; k < n; k++) column[k] = w * (jacobian[i * n + k] as number);
    solveFactored(factored, n, column);
    gain.set(column, i * n);
  }
  return gain;
}
