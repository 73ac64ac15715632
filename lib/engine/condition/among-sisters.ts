/** How one motor's value stands among its sisters'. All numbers in the unit of the value. */
interface AmongSisters {
  readonly count: number;
  readonly median: number;
  /** A value between these is like its sisters'. */
  readonly low: number;
  readonly high: number;
  /** Outside what the sisters scatter by, on the upper or the lower side. */
  readonly standing: 'like' | 'above' | 'below';
}

/** `ratio` for values that are never negative and differ by factors, such as insulation resistance; `difference` for all else. */
export type SisterScale = 'ratio' | 'difference';

/** Fewer sisters than this say too little of their scatter (common practice). */
export const FEWEST_SISTERS = 5;
/** Median absolute deviation to standard deviation of a normal distribution. */
const MAD_TO_DEVIATION = 1.4826;
/** Sisters may agree by chance: their scatter counts as at least this share of the median (common practice). */
const LEAST_SCATTER = 0.1;

/**
 * Deviations beyond which a value stands apart from so many sisters. A scatter found from few is itself doubtful, so few sisters ask for more:
 * 8.5 for five, 4.2 for ten, 3.2 for twenty. Of normally scattered like motors fewer than 3 in 100 stand apart (checked by simulation in
 * the tests); with a fixed bound of three it would be 15 of 100 among five sisters.
 */
function deviationsApart(count: number): number {
  return 2.5 + 12 / (count - 3);
}

/**
 * Compares a value with those of like motors: median, and median absolute deviation as the scatter, which single odd sisters do not move.
 * The value's own standard uncertainty `u` adds to the scatter. A comparison never makes a band: it says where to look.
 *
 * Units: all in one. Valid for: {@link FEWEST_SISTERS} sisters or more, read in the same way; undefined otherwise, and for a value of zero or
 * less on the scale of ratios. Source: robust statistics, any textbook (1.4826 = 1/Φ⁻¹(3/4)); bound for few sisters by own simulation.
 */
export function amongSisters(
  own: { readonly value: number; readonly u: number },
  sisters: readonly number[],
  scale: SisterScale,
): AmongSisters | undefined {
  const byRatio = scale === 'ratio';
  const values = Float64Array.from(byRatio ? sisters.filter((value) => value > 0).map(Math.log) : sisters).sort();
  if (values.length < FEWEST_SISTERS || (byRatio && own.value <= 0)) return undefined;
  const middle = median(values);
  const deviation = MAD_TO_DEVIATION * median(values.map((value) => Math.abs(value - middle)).sort());
  const scatter = Math.max(deviation, byRatio ? LEAST_SCATTER : LEAST_SCATTER * Math.abs(middle));
  const doubt = byRatio ? own.u / own.value : own.u;
  const reach = deviationsApart(values.length) * Math.hypot(scatter, doubt);
  const off = (byRatio ? Math.log(own.value) : own.value) - middle;
  const back = byRatio ? Math.exp : (value: number) => value;
  return {
    count: values.length,
    median: back(middle),
    // Nothing of what is compared by differences is below zero, unless a sister is.
    low: byRatio || own.value < 0 || (values[0] ?? 0) < 0 ? back(middle - reach) : Math.max(0, middle - reach),
    high: back(middle + reach),
    standing: Math.abs(off) <= reach ? 'like' : off > 0 ? 'above' : 'below',
  };
}

/** Of values in order. */
function median(sorted: Float64Array): number {
  const half = Math.floor(sorted.length / 2);
  const upper = sorted[half] ?? 0;
  return sorted.length % 2 === 1 ? upper : ((sorted[half - 1] ?? 0) + upper) / 2;
}
