/** How one motor's indicator stands among its sisters'. */
export interface AmongSisters {
  readonly count: number;
  readonly median: number;
  /** Outside what the sisters scatter by, on the upper or the lower side. */
  readonly standing: 'like' | 'above' | 'below';
}

/** Fewer sisters than this say nothing of their scatter (common practice). */
const FEWEST = 3;
/** Median absolute deviation to standard deviation of a normal distribution. */
const MAD_TO_DEVIATION = 1.4826;
/** Deviations from the median beyond which a value stands apart (common practice: three). */
const APART = 3;
/** Sisters may agree by chance: their scatter counts as at least this share of the median (common practice). */
const LEAST_SCATTER = 0.1;

/**
 * Compares a value with those of like motors: median, and median absolute deviation as the scatter, which single odd sisters do not move.
 * Units: all in one. Valid for: three sisters or more, read in the same way; undefined otherwise. A comparison never makes a band: it says
 * where to look. Source: robust statistics, any textbook (1.4826 = 1/Φ⁻¹(3/4)).
 */
export function amongSisters(own: number, sisters: readonly number[]): AmongSisters | undefined {
  if (sisters.length < FEWEST) return undefined;
  const middle = median(sisters);
  const deviation = MAD_TO_DEVIATION * median(sisters.map((value) => Math.abs(value - middle)));
  const scatter = Math.max(deviation, LEAST_SCATTER * Math.abs(middle));
  const off = own - middle;
  const standing = Math.abs(off) <= APART * scatter ? 'like' : off > 0 ? 'above' : 'below';
  return { count: sisters.length, median: middle, standing };
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = Math.floor(sorted.length / 2);
  const upper = sorted[half] ?? 0;
  return sorted.length % 2 === 1 ? upper : ((sorted[half - 1] ?? 0) + upper) / 2;
}
