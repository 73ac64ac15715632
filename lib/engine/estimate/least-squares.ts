import { copied, doubles } from '../room';
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

/** Most searches take half a dozen steps; where stamps are far from what is typical each may be but a little shorter than the last. */
const ITERATIONS = 100;

/** The search ends with a step below this, or when all steps to come should add up to less; see {@link stillToCome}. */
const SETTLED = 1e-8;

/** It may stop early, where halving finds nothing better, after a step below this. */
const ACCEPTABLE = 1e-5;

/** What a step must still take off the misfit, where only the misfit is asked for. */
const WORTH_A_STEP = 1e-3;

/** Room that every search works in, by the largest so far: arrays of their own would cost as much as the arithmetic. */
let jacobian = new Float64Array(0);
let normal = new Float64Array(0);
let step = new Float64Array(0);
let last = new Float64Array(0);
let trial = new Float64Array(0);
let outcome = new Float64Array(0);

function makeRoom(n: number, m: number): void {
  if (jacobian.length < m * n) jacobian = new Float64Array(m * n);
  if (normal.length < n * n) normal = new Float64Array(n * n);
  if (step.length < n) {
    step = new Float64Array(n);
    last = new Float64Array(n);
    trial = new Float64Array(n);
  }
  if (outcome.length < m) outcome = new Float64Array(m);
}

/** Where a search ended. */
interface End {
  readonly unknowns: Float64Array;
  readonly predicted: Float64Array;
  readonly cost: number;
  readonly iterations: number;
  readonly size: number;
}

/**
 * Gauss-Newton with step halving: minimises Σ((observed − predicted)/u)².
 *
 * Where residuals stay large its steps shrink by the same share each time; then the rest of that series is taken at once (Aitken's rule), if
 * it lowers the misfit.
 * Returns `undefined` when the start is impossible, the normal equations cannot be factored, or the steps do not settle: never a
 * half-solved point. Source: GUM 5 and JCGM 102 for the linearised covariance; Nocedal and Wright, Numerical Optimization, chapter 10
 * (from memory) for the step rule.
 */
export function leastSquares(problem: Problem): Fit | undefined {
  const end = search(problem, 0, problem.observed, problem.start);
  if (!end) return undefined;
  const n = end.unknowns.length;
  const m = problem.u.length;
  const { unknowns, predicted, cost, iterations, size } = end;
  return {
    unknowns,
    predicted,
    chiSquared: cost,
    gain: gains(normal, jacobian, problem.u, n, doubles(m * n)),
    jacobian: copied(jacobian, 0, m * n),
    iterations,
    residual: size,
  };
}

/** The least misfit alone, to within a few thousandths, and the unknowns there; from another start or with other observed values where given. */
export function leastMisfit(
  problem: Problem,
  observed: Float64Array = problem.observed,
  start: Float64Array = problem.start,
): Pick<Fit, 'unknowns' | 'predicted' | 'chiSquared'> | undefined {
  const end = search(problem, WORTH_A_STEP, observed, start);
  return end && { unknowns: end.unknowns, predicted: end.predicted, chiSquared: end.cost };
}

/** Unknowns after one step, and how each observed value moves each unknown there; see {@link Fit}. */
export interface Moved {
  readonly unknowns: Float64Array;
  readonly gain: () => Float64Array;
}

/**
 * One Gauss-Newton step from unknowns that lie near a solution, towards observed values a little off those of the problem: a fifth of the work of a
 * search.
 * `undefined` where the unknowns describe nothing possible. `gain` is to be asked for before the next step.
 */
export function stepFrom(
  { u, predict, differentiate }: Problem,
  observed: Float64Array,
  unknowns: Float64Array,
): Moved | undefined {
  const n = unknowns.length;
  const m = observed.length;
  makeRoom(n, m);
  const predicted = doubles(m);
  if (!predict(unknowns, predicted) || !differentiate(unknowns, jacobian)) return undefined;
  normalMatrix(jacobian, u, normal, n, m);
  if (!factorise(normal, n)) return undefined;
  const next = doubles(n);
  gradient(jacobian, observed, predicted, u, next, n);
  solveFactored(normal, n, next);
  for (let k = 0; k < n; k++) next[k] = (next[k] as number) + (unknowns[k] as number);
  return { unknowns: next, gain: () => gains(normal, jacobian, u, n, doubles(m * n)) };
}

/** Searches until steps are small, or take less than `worth` off the misfit. */
function search(
  { u, predict, differentiate }: Problem,
  worth: number,
  observed: Float64Array,
  start: Float64Array,
): End | undefined {
  const n = start.length;
  const m = observed.length;
  makeRoom(n, m);
  const y = copied(start);
  const predicted = doubles(m);
  if (!predict(y, predicted)) return undefined;
  let cost = costOf(observed, u, predicted);
  let lastScale = 1;
  let lastSize = 0;
  let lastShare = 1;
  for (let iteration = 1; iteration <= ITERATIONS; iteration++) {
    if (!differentiate(y, jacobian)) return undefined;
    normalMatrix(jacobian, u, normal, n, m);
    if (!factorise(normal, n)) return undefined;
    gradient(jacobian, observed, predicted, u, step, n);
    solveFactored(normal, n, step);
    let size = 0;
    for (let k = 0; k < n; k++) size = Math.max(size, Math.abs(step[k] as number));
    let gained: number | undefined;
    let scale = iteration > 1 ? reach(step, last, lastScale, n) : 1;
    for (let tries = 0; tries < 13; tries++) {
      for (let k = 0; k < n; k++) trial[k] = (y[k] as number) + scale * (step[k] as number);
      const next = predict(trial, outcome) ? costOf(observed, u, outcome) : Number.POSITIVE_INFINITY;
      if (next <= cost + 1e-9 * (1 + cost)) {
        for (let k = 0; k < n; k++) y[k] = trial[k] as number;
        for (let i = 0; i < m; i++) predicted[i] = outcome[i] as number;
        gained = cost - next;
        cost = next;
        size *= scale;
        for (let k = 0; k < n; k++) last[k] = scale * (step[k] as number);
        lastScale = scale;
        break;
      }
      scale = scale > 1 ? 1 : scale / 2;
    }
    if (worth > 0 && gained !== undefined && gained < worth) return { unknowns: y, predicted, cost, iterations: iteration, size };
    const share = size / lastSize;
    // A step that was drawn out makes the next one look short, so the larger of two shares counts.
    const left = stillToCome(size, Math.max(share, lastShare));
    if (gained === undefined || size < SETTLED || left < SETTLED || iteration === ITERATIONS)
      return size > ACCEPTABLE ? undefined : { unknowns: y, predicted, cost, iterations: iteration, size };
    lastSize = size;
    lastShare = share;
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

/** A share that stays beyond this is no series yet. */
const FIRMEST = 0.97;

/**
 * How far to go along a step: the sum of the series that it begins, where it points along the last one; else 1.
 * `last` was taken `scale` times as long as Gauss-Newton had it. Steps that turn back and forth are cut short by the same rule.
 */
function reach(step: Float64Array, last: Float64Array, scale: number, n: number): number {
  let together = 0;
  let before = 0;
  let now = 0;
  for (let k = 0; k < n; k++) {
    const a = step[k] as number;
    const b = last[k] as number;
    together += a * b;
    before += b * b;
    now += a * a;
  }
  if (!(Math.abs(together) > 0.9 * Math.sqrt(before * now))) return 1;
  const share = 1 - (1 - (together / before) * scale) / scale;
  return share < FIRMEST ? 1 / (1 - share) : 1;
}

/** What all steps after one of this size add up to, where each is so large a share of the one before. */
function stillToCome(size: number, share: number): number {
  return share < FIRMEST ? (size * share) / (1 - share) : Number.POSITIVE_INFINITY;
}

function normalMatrix(jacobian: Float64Array, u: Float64Array, normal: Float64Array, n: number, m: number): void {
  normal.fill(0, 0, n * n);
  for (let i = 0; i < m; i++) {
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
  n: number,
): void {
  right.fill(0, 0, n);
  for (let i = 0; i < observed.length; i++) {
    const r = ((observed[i] as number) - (predicted[i] as number)) / ((u[i] as number) * (u[i] as number));
    for (let k = 0; k < n; k++) right[k] = (right[k] as number) + (jacobian[i * n + k] as number) * r;
  }
}

/** Puts the factored normal matrix times Jᵀ over u² into `gain`: one column for each observed value. */
function gains(factored: Float64Array, jacobian: Float64Array, u: Float64Array, n: number, gain: Float64Array): Float64Array {
  for (let i = 0; i * n < gain.length; i++) {
    const w = 1 / ((u[i] as number) * (u[i] as number));
    for (let k = 0; k < n; k++) step[k] = w * (jacobian[i * n + k] as number);
    solveFactored(factored, n, step);
    for (let k = 0; k < n; k++) gain[i * n + k] = step[k] as number;
  }
  return gain;
}
