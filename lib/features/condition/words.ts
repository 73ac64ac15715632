import {
  FEWEST_SISTERS,
  type Figure,
  type HypothesisId,
  type HypothesisResult,
  type IndicatorResult,
  type SisterResult,
} from '@/lib/engine';
import { COVERAGE_FACTOR, decimalsFor, formatFigure, formatNumber, uncapitalised } from '@/lib/platform/format';
import { columnByName } from '../fleet/columns';

/** Each suspicion as a heading. */
export const SUSPICION_TITLES: Readonly<Record<HypothesisId, string>> = {
  supply: 'Supply',
  'overload-ventilation': 'Overload or poor cooling',
  'moisture-dirt': 'Moisture or dirt in the winding',
  'stator-winding': 'Stator winding',
  'rotor-cage': 'Rotor cage',
  eccentricity: 'Uneven air gap',
  bearing: 'Bearing',
  'misalignment-soft-foot': 'Misalignment or soft foot',
  'belt-drive': 'Belt drive',
  'driven-machine': 'Driven machine',
  'instrument-data': 'Wrong readings',
};

/** Causes of spectral lines that are no suspicion. */
export function causeWords(cause: string): string {
  return cause === 'always' ? 'in every motor' : (SUSPICION_TITLES[cause as HypothesisId] ?? cause);
}

/** How a limit is known. */
export const LIMIT_STATUS_WORDS: Readonly<Record<string, string>> = {
  read: 'read in the source',
  'read-secondary': 'read in a second text',
  memory: 'from memory: shown, not a claim of compliance',
  practice: 'common practice',
  derived: 'derived',
};

/** An indicator's value as a screen has it: a multiple says of what it is one, its limit what it is a multiple of. */
export function indicatorFigure({ id, value }: Pick<IndicatorResult, 'id' | 'value'>): Figure {
  return id === 'insulation-life' ? { ...value, unit: 'times' } : value;
}

/** What is left to the limit, with its interval: `0.8 ± 0.3 % left`. */
export function marginWords(margin: Figure): string {
  const { text } = formatFigure({ ...margin, value: Math.abs(margin.value) });
  const open = Math.abs(margin.value) < COVERAGE_FACTOR * margin.u ? ', so it may lie on either side' : '';
  return margin.value < 0 ? `beyond it by ${text}${open}` : `${text} left${open}`;
}

/** Odds as people say them: `10 to 1`, `even`, `1 in 20`; below one in a thousand that is said. */
export function oddsWords(odds: number): string {
  if (odds >= 100) return 'more than 100 to 1';
  if (odds >= 1.5) return `${formatNumber(odds, 0)} to 1`;
  if (odds > 0.67) return 'about even';
  const chance = odds / (1 + odds);
  return chance < 0.001 ? 'less than 1 in 1,000' : `1 in ${formatNumber(1 / chance, 0)}`;
}

/** What a strength means. */
export const STRENGTH_WORDS: Readonly<Record<HypothesisResult['strength'], string>> = {
  weak: 'weak: one independent sign at most, or odds below even',
  moderate: 'moderate: two independent signs, odds of even or more',
  strong: 'strong: two independent signs, odds of 9 to 1 or more',
};

/** Sisters without which nothing is compared, in words. */
export const SISTERS_WANTED = `${FEWEST_SISTERS} at least`;

const three = (value: number): string => formatNumber(value, value === 0 ? 0 : decimalsFor(Math.abs(value)) + 1);
const measure = (unit: string): string => (unit === '1' ? '' : `\u202f${unit}`);

/** The value that is compared: `2.7 mm/s`. */
export function ownWords({ value, unit }: SisterResult): string {
  return `${three(value)}${measure(unit)}`;
}

/** How a value stands among like motors: `above its 9 sisters (median 1.4, from 0.8 to 2.6 mm/s)`. */
export function sisterWords({ standing, count, alike, median, low, high, unit }: SisterResult): string {
  const whose = alike === 'type' ? `its ${count} sisters` : `${count} like motors of its area`;
  const most = Math.max(...[median, low, high].map(Math.abs));
  // In the digits of the largest, so that the three can be compared.
  const digits = most === 0 ? 0 : decimalsFor(most) + 1;
  // Unless one of them would be called zero: insulation of 2 and of 200,000 MΩ may stand in one row.
  const lost = [median, low, high].some((value) => value !== 0 && Math.abs(value) < 0.5 * 10 ** -digits);
  const [middle, from, to] = [median, low, high].map((value) => (lost ? three(value) : formatNumber(value, digits)));
  return `${standing} ${whose} (median ${middle}, from ${from} to ${to}${measure(unit)})`;
}

/** Readings by the names of their columns, as people say them: `vibration and vibration at shaft speed`. */
export function readingWords(columns: readonly string[]): string {
  const names = columns.map((name) => {
    const label = columnByName(name)?.label ?? name;
    return uncapitalised(label);
  });
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
