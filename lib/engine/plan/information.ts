import normalCdf from '@stdlib/stats-base-dists-normal-cdf';

/** What an act is worth on average, and how much that moves with one standard deviation of what is to be learned. */
export interface Act {
  readonly mean: number;
  readonly slope: number;
}

/**
 * The unit normal linear loss integral: how far a standard normal deviate passes `u` on average, counting 0 where it does not.
 * Units: 1. Valid for: all `u`. Source: Raiffa and Schlaifer, Applied Statistical Decision Theory, 1961.
 */
export function unitNormalLoss(u: number): number {
  return Math.max(0, Math.exp(-0.5 * u * u) / Math.sqrt(2 * Math.PI) - u * normalCdf(-u, 0, 1));
}

/**
 * How much the best of several acts is worth more on average when a normal doubt that moves them all is resolved before the choice. With two acts it is the
 * difference of slopes times the unit normal loss at the distance of their break-even; with more, the sum of that over the corners of
 * their upper envelope. Zero where one act is the best whatever comes out.
 * Units: those of the means. Source: Raiffa and Schlaifer 1961 for two acts; Frazier, Powell and Dayanik 2009 (correlated normal beliefs) for more.
 */
export function valueOfInformation(acts: readonly Act[]): number {
  const hull: Act[] = [];
  // Corner where the act takes over from the one before it.
  const from: number[] = [];
  for (const act of [...acts].sort((a, b) => a.slope - b.slope || a.mean - b.mean)) {
    let corner = Number.NEGATIVE_INFINITY;
    for (;;) {
      const last = hull.at(-1);
      if (!last) break;
      corner = act.slope === last.slope ? Number.NEGATIVE_INFINITY : (last.mean - act.mean) / (act.slope - last.slope);
      if (act.slope !== last.slope && corner > (from.at(-1) ?? Number.NEGATIVE_INFINITY)) break;
      hull.pop();
      from.pop();
      corner = Number.NEGATIVE_INFINITY;
    }
    hull.push(act);
    from.push(corner);
  }
  let value = 0;
  for (let i = 1; i < hull.length; i++)
    value += ((hull[i]?.slope ?? 0) - (hull[i - 1]?.slope ?? 0)) * unitNormalLoss(Math.abs(from[i] ?? 0));
  return value;
}

/** Share of a doubt's standard deviation that a reading with its own doubt moves the estimate by. Units: 1; both in the same unit. */
export function resolvedShare(doubt: number, reading: number): number {
  return doubt > 0 ? doubt / Math.hypot(doubt, reading) : 0;
}
