import type { Problem } from '@/lib/engine/estimate/least-squares';

/** Step of an unknown, as a share of it or of one, whichever is more. */
const NUDGE = 3e-5;

/** Derivatives of predictions by forward differences: for problems that state none, and to check those that do. */
export function byDifferences(predict: Problem['predict']): Problem['differentiate'] {
  return (unknowns, jacobian) => {
    const n = unknowns.length;
    const m = jacobian.length / n;
    const base = new Float64Array(m);
    const moved = new Float64Array(m);
    if (!predict(unknowns, base)) return false;
    for (let k = 0; k < n; k++) {
      const tried = Float64Array.from(unknowns);
      const nudge = NUDGE * Math.max(Math.abs(unknowns[k] ?? 0), 1);
      tried[k] = (tried[k] ?? 0) + nudge;
      if (!predict(tried, moved)) return false;
      for (let i = 0; i < m; i++) jacobian[i * n + k] = ((moved[i] ?? 0) - (base[i] ?? 0)) / nudge;
    }
    return true;
  };
}
