import cdf from '@stdlib/stats-base-dists-normal-cdf';
import type { Limits } from '../quantity/coverage';
import type { Parts } from '../quantity/quantity';
import { copied, doubles } from '../room';
import type { Estimated, Estimator, Scores } from './estimator';

/** How far along the load's direction the estimate is made anew, in standard uncertainties. */
const RUNGS = [-2.4, -1.2, 0, 1.2, 2.4] as const;

/** Places of the sum over the load's direction: enough for a smooth integrand under a normal curve. */
const STEP = 0.5;
const PLACES = Array.from({ length: 15 }, (_, i) => STEP * (i - 7));
const WEIGHTS = PLACES.map((z) => (STEP * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI));

/** What each rung counts for at each place: a polynomial through the rungs (Lagrange), a straight line beyond the outermost. */
const BASIS = PLACES.map((z) => {
  const end = Math.min(Math.max(z, RUNGS[0]), RUNGS[4]);
  const inner = end - Math.sign(end) * 0.1;
  const at = basisAt(end);
  const before = basisAt(inner);
  return at.map((weight, i) => weight + ((z - end) / (end - inner || 1)) * (weight - (before[i] as number)));
});

const TAIL = 0.025;

/** Halvings that leave a hundredth of a deviation, between whose ends a straight line does. */
const HALVINGS = 8;

/** Deviation below which a rung has none: keeps the sums defined. */
const NONE = 1e-9;

/** The estimate with the load's direction followed so far. */
interface Rung {
  readonly scores: Scores;
  readonly unknowns: Float64Array;
  readonly gain: Float64Array;
  readonly figures: Readonly<Record<Estimated, number>>;
}

/**
 * The distribution of a reading's figures where they bend with the load: one dimension in full, the rest to first order.
 *
 * The estimate is made anew at five places along the direction that moves the load most; at each, what acts across it spreads the figure by its slopes
 * there. Between them a polynomial. Efficiency stands on the scale of its logit, on which a loss known by a factor is normal.
 * No limits where a place describes no possible motor.
 */
export class Ladder {
  private readonly direction: Float64Array;
  private readonly rungs: readonly Rung[];

  constructor(
    private readonly estimator: Estimator,
    along: Parts,
  ) {
    this.direction = doubles(estimator.sources);
    let square = 0;
    for (const part of along.by) square += part * part;
    for (let i = 0; i < along.at.length; i++) this.direction[along.at[i] as number] = (along.by[i] as number) / Math.sqrt(square);
    const rungs: Rung[] = [];
    for (const z of RUNGS) {
      const scores = copied(this.direction);
      for (let i = 0; i < scores.length; i++) scores[i] = z * (scores[i] as number);
      const moved = estimator.step(scores, Math.abs(z) > 2 ? estimator.search(scores) : undefined);
      const gain = moved?.gain();
      const figures = moved && estimator.figures(moved.unknowns, scores);
      if (!moved || !gain || !figures) break;
      rungs.push({ scores, unknowns: moved.unknowns, gain, figures });
    }
    this.rungs = rungs;
  }

  limits(of: Estimated): Limits | undefined {
    if (this.rungs.length < RUNGS.length) return undefined;
    const values: number[] = [];
    const deviations: number[] = [];
    for (const { scores, unknowns, gain, figures } of this.rungs) {
      const slopes = this.estimator.contributions(of, unknowns, gain, scores);
      const value = figures[of];
      if (!slopes || (of === 'efficiency' && !(value > 0 && value < 1))) return undefined;
      let all = 0;
      let own = 0;
      for (let i = 0; i < slopes.length; i++) {
        all += (slopes[i] as number) ** 2;
        own += (slopes[i] as number) * (this.direction[i] as number);
      }
      const across = Math.sqrt(Math.max(0, all - own * own));
      values.push(of === 'efficiency' ? Math.log(value / (1 - value)) : value);
      deviations.push(of === 'efficiency' ? across / (value * (1 - value)) : across);
    }
    const found = limitsOf(values, deviations);
    return of === 'efficiency' ? { low: fromLogit(found.low), high: fromLogit(found.high) } : found;
  }
}

function fromLogit(x: number): number {
  return 1 / (1 + Math.exp(-x));
}

/** Limits of a sum of normal distributions whose means and deviations are known at the rungs. */
function limitsOf(values: readonly number[], deviations: readonly number[]): Limits {
  const between = (known: readonly number[]): number[] =>
    BASIS.map((weights) => weights.reduce((sum, weight, i) => sum + weight * (known[i] as number), 0));
  const means = between(values);
  const spreads = between(deviations).map((spread) => Math.max(NONE, spread));
  const below = (x: number): number => {
    let sum = 0;
    for (let i = 0; i < WEIGHTS.length; i++)
      sum += (WEIGHTS[i] as number) * cdf((x - (means[i] as number)) / (spreads[i] as number), 0, 1);
    return sum;
  };
  const widest = Math.max(...spreads);
  const at = (p: number): number => {
    let low = Math.min(...means) - 3 * widest;
    let high = Math.max(...means) + 3 * widest;
    let [atLow, atHigh] = [0, 1];
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (low + high) / 2;
      const there = below(middle);
      if (there < p) [low, atLow] = [middle, there];
      else [high, atHigh] = [middle, there];
    }
    return low + ((high - low) * (p - atLow)) / (atHigh - atLow);
  };
  return { low: at(TAIL), high: at(1 - TAIL) };
}

function basisAt(z: number): number[] {
  return RUNGS.map((own) => {
    let weight = 1;
    for (const other of RUNGS) if (other !== own) weight *= (z - other) / (own - other);
    return weight;
  });
}
