import type { Contribution } from '@/lib/engine';
import { formatNumber, formatPercent } from '@/lib/platform/format';
import type { ReadingDates } from '../fleet/reading-dates';

/** What is observed, by the head of its name; the longest that fits counts. */
const WORDS: Readonly<Record<string, string>> = {
  stamped_efficiency: 'total loss by the efficiency stamped or of the class',
  assumed_efficiency: 'total loss of motors of that age',
  tested_efficiency: 'total loss by bench test',
  tested_resistance: 'winding resistance by bench test',
  tested_core: 'core loss by bench test',
  tested_friction: 'friction and windage by bench test',
  tested_constant: 'core loss with friction and windage by bench test',
  tested_stray: 'stray-load loss by bench test',
  tested_no_load_current: 'no-load current by bench test',
  stamped_speed: 'rated slip by the stamped speed',
  typical_slip: 'rated slip',
  stamped_current: 'rated current stamped',
  stamped_power_factor: 'rated power factor stamped',
  code_letter: 'leakage reactance by the code letter',
  measured_resistance: 'winding resistance measured',
  measured_friction: 'friction and windage measured',
  no_load_current: 'no-load current measured',
  no_load_power: 'no-load input measured',
  typical_core_loss: 'core loss over stator loss',
  typical_friction: 'friction and windage over stator loss',
  typical_stray_loss: 'stray-load loss over stator loss',
  typical_rise: 'rise of the winding at rated load',
  typical_saturation: 'exponent of the magnetising current',
  typical_leakage: 'leakage reactance, per unit',
  typical_magnetising_current: 'magnetising current, per unit',
  input_power: 'input power',
  current: 'line current',
  speed: 'slip by the speed read',
  voltage: 'voltage, of rated',
  heat: 'winding hotter than reckoned',
  prior_load: 'load before anything is read',
};

/** What a contribution is of, in words; the reading's date stands with it where there are several. */
export function contributionWords(
  { name, row }: Pick<Contribution, 'name' | 'row'>,
  severalRows: boolean,
  dates: ReadingDates,
): string {
  const head = row === undefined ? name : name.slice(0, -`_row_${row}`.length);
  const words = WORDS[head] ?? head.replaceAll('_', ' ');
  return row !== undefined && severalRows ? `${words}, ${dates.get(row) ?? 'no date'}` : words;
}

/** Misses in own deviations: from here on one looks, and from here on something is wrong. */
const LOOK = 2;
const WRONG = 3;

/** How much it matters and whether it fits, in a few words. */
export function standing({ residual, influence }: Pick<Contribution, 'residual' | 'influence'>): string {
  const size = Math.abs(residual);
  if (size >= WRONG) return 'does not fit: it or an assumption is wrong';
  if (size >= LOOK) return 'deserves a look';
  return influence > 0.95 ? 'nothing else speaks of it' : 'fits';
}

/** All of them in two sentences: which weighs most in the doubt of the load, and which do not fit. */
export function standingWords(rows: readonly Contribution[], dates: ReadingDates): string {
  const several = new Set(rows.flatMap(({ row }) => row ?? [])).size > 1;
  const named = (row: Contribution) => contributionWords(row, several, dates);
  const heaviest = rows.reduce<Contribution | undefined>(
    (most, row) => (most && most.share >= row.share ? most : row),
    undefined,
  );
  const misfits = rows.filter(({ residual }) => Math.abs(residual) >= LOOK);
  return [
    heaviest && `Of these, ${named(heaviest)} has the largest part in the doubt of the load, ${formatPercent(heaviest.share)}.`,
    misfits.length === 0
      ? 'None misses what fits best by more than its doubt explains.'
      : `To be looked at: ${misfits.map((row) => `${named(row)} (${standing(row)})`).join('; ')}.`,
  ]
    .filter(Boolean)
    .join(' ');
}

/** A load moved by a reading, in points of rating with its sign. */
export function points(fraction: number): string {
  const rounded = formatNumber(100 * fraction, Math.abs(fraction) < 0.1 ? 1 : 0);
  return fraction > 0 && Number(rounded) !== 0 ? `+${rounded}` : rounded;
}
