import cdf from '@stdlib/stats-base-dists-normal-cdf';
import type { Limits } from '../quantity/coverage';
import type { Parts } from '../quantity/quantity';
import { ESTIMATED, type Estimated, type Estimator, type Scores } from './estimator';

/** How far along the load's direction the estimate is made anew, in standard uncertainties. */
const RUNGS = [-2.4, -1.2, 0, 1.2, 2.4] as const;
const OUTERMOST = 2.4;

/** Places of the sum over the load's direction: enough for a smooth integrand under a normal curve. */
const STEP = 0.4;
const PLACES = Array.from({ length: 21 }, (_, i) => STEP * (i - 10));
const WEIGHTS = PLACES.map((z) => (STEP * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI));

const TAIL = 0.025;

/** Halvings that leave a thousandth of a deviation. */
const HALVINGS = 14;

/** A figure on its scale at one rung: its value, and its deviation by all that does not act along the load. */
interface Rung {
  readonly value: number;
  readonly deviation: number;
}

/**
 * The distribution of a reading's figures where they bend with the load: one dimension in full, the rest to first order.
 *
 * The estimate is made anew at five places along the direction that moves the load most; at each, what acts across it spreads the figure by its slopes
 * there. Between them a polynomial. Efficiency stands on the scale of its logit, on which a loss known by a factor is normal.
 * `undefined` where a place describes no possible motor.
 */
export class Ladder {
  private readonly rungs: ReadonlyMap<Estimated, readonly Rung[]> | undefined;

  constructor(estimator: Estimator, along: Parts) {
    const direction = new Float64Array(estimator.sources);
    for (let i = 0; i < along.at.length; i++) direction[along.at[i] as number] = along.by[i] as number;
    const length = Math.hypot(...direction);
    const found = new Map<Estimated, Rung[]>(ESTIMATED.map((of) => [of, []]));
    for (const z of RUNGS) {
      const scores: Scores = direction.map((part) => (z * part) / length);
      const moved = estimator.step(scores, estimator.search(scores));
      const gain = moved?.gain();
      const figures = moved && estimator.figures(moved.unknowns, scores);
      if (!moved || !gain || !figures) return;
      for (const [of, rungs] of found) {
        const slopes = estimator.contributions(of, moved.unknowns, gain, scores);
        if (!slopes || (of === 'efficiency' && !(figures.efficiency > 0 && figures.efficiency < 1))) return;
        let all = 0;
        let own = 0;
        for (let i = 0; i < slopes.length; i++) {
          all += (slopes[i] as number) ** 2;
          own += ((slopes[i] as number) * (direction[i] as number)) / length;
        }
        const across = Math.sqrt(Math.max(0, all - own * own));
        const value = figures[of];
        rungs.push(
          of === 'efficiency'
            ? { value: Math.log(value / (1 - value)), deviation: across / (value * (1 - value)) }
            : { value, deviation: across },
        );
      }
    }
    this.rungs = found;
  }

  limits(of: Estimated): Limits | undefined {
    const rungs = this.rungs?.get(of);
    if (!rungs) return undefined;
    const values = PLACES.map((z) =>
      between(
        rungs.map(({ value }) => value),
        z,
      ),
    );
    const deviations = PLACES.map((z) =>
      Math.max(
        1e-9,
        between(
          rungs.map(({ deviation }) => deviation),
          z,
        ),
      ),
    );
    const chance = (x: number): number =>
      WEIGHTS.reduce((sum, weight, i) => sum + weight * cdf(x, values[i] as number, deviations[i] as number), 0);
    const at = (p: number): number => {
      let low = Math.min(...values) - 4 * Math.max(...deviations);
      let high = Math.max(...values) + 4 * Math.max(...deviations);
      for (let i = 0; i < HALVINGS; i++) {
        const middle = (low + high) / 2;
        if (chance(middle) < p) low = middle;
        else high = middle;
      }
      return of === 'efficiency' ? 1 / (1 + Math.exp(-(low + high) / 2)) : (low + high) / 2;
    };
    return { low: at(TAIL), high: at(1 - TAIL) };
  }
}

/** Polynomial through the rungs (Lagrange), a straight line beyond the outermost. */
function between(values: readonly number[], z: number): number {
  if (Math.abs(z) > OUTERMOST) {
    const end = Math.sign(z) * OUTERMOST;
    const slope = (between(values, end) - between(values, end - Math.sign(z) * 0.1)) / 0.1;
    return between(values, end) + slope * (Math.abs(z) - OUTERMOST);
  }
  return values.reduce((sum, value, i) => {
    let weight = 1;
    RUNGS.forEach((other, j) => {
      if (j !== i) weight *= (z - other) / ((RUNGS[i] as number) - other);
    });
    return sum + weight * value;
  }, 0);
}
