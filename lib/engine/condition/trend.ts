import { mean } from '../numbers';
import { NORMAL_FACTOR } from '../quantity/coverage';
import { type Quantity, standardUncertainty } from '../quantity/quantity';
import { yearsBetween } from '../trust/judge';

/** One value of an indicator with its date. */
export interface DatedValue {
  readonly takenAt: string;
  readonly value: Quantity;
}

/** How an indicator moved over its readings. `perYear` and `u` in its unit a year. */
export interface Trend {
  readonly perYear: number;
  readonly u: number;
  readonly unit: string;
  readonly readings: number;
  readonly since: string;
  readonly direction: 'worse' | 'better' | 'steady';
}

/** Indicators whose fall is the bad news; levels in dB below the line are so too. */
const LOWER_IS_WORSE: ReadonlySet<string> = new Set(['insulation-resistance', 'polarization-index', 'insulation-life']);

/** True where a falling value of the indicator is the bad one. */
export function lowerIsWorse(id: string, unit: string): boolean {
  return unit === 'dB' || LOWER_IS_WORSE.has(id);
}

/** Readings closer together than this say nothing of a trend, years (common practice: a month). */
const SHORTEST_YEARS = 1 / 12;

/**
 * Straight line through the dated values of one indicator, by least squares.
 *
 * Units: the indicator's a year. Valid for: two readings or more over at least a month; undefined otherwise. The doubt of the slope takes the
 * larger of the scatter about the line and of the readings' own doubt, so two readings alone have a doubt as well. A slope that is not
 * surely different from zero at 95 % is steady.
 * @param fallIsWorse true where a falling value is the bad one.
 * Source: least squares, any textbook of statistics.
 */
export function trendOf(values: readonly DatedValue[], fallIsWorse: boolean): Trend | undefined {
  const first = values[0];
  const last = values.at(-1);
  if (!first || !last || values.length < 2) return undefined;
  const times = values.map((entry) => yearsBetween(first.takenAt, entry.takenAt));
  const sizes = values.map((entry) => entry.value.value);
  const meanTime = mean(times);
  const meanSize = mean(sizes);
  const spread = times.reduce((sum, time) => sum + (time - meanTime) ** 2, 0);
  if (Math.max(...times) - Math.min(...times) < SHORTEST_YEARS) return undefined;
  const perYear = times.reduce((sum, time, i) => sum + (time - meanTime) * ((sizes[i] ?? 0) - meanSize), 0) / spread;
  const residual = times.reduce((sum, time, i) => sum + ((sizes[i] ?? 0) - meanSize - perYear * (time - meanTime)) ** 2, 0);
  const scatter = values.length > 2 ? residual / (values.length - 2) : 0;
  const own = mean(values.map((entry) => standardUncertainty(entry.value) ** 2));
  const u = Math.sqrt(Math.max(scatter, own) / spread);
  const sure = Math.abs(perYear) > NORMAL_FACTOR * u;
  const direction = !sure ? 'steady' : perYear < 0 === fallIsWorse ? 'worse' : 'better';
  return { perYear, u, unit: `${last.value.unit}/a`, readings: values.length, since: first.takenAt, direction };
}
