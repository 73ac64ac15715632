import type { LineTable } from '@/lib/engine';
import { formatNumber } from '@/lib/platform/format';

const SPACE = '\u202f';

/** A step, a distance or a resolution in Hz: two digits say enough of it, and what is far below any spectrum's step is nothing. */
export function stepHertz(value: number): string {
  if (Math.abs(value) < 1e-6) return `0${SPACE}Hz`;
  return `${formatNumber(value, Math.max(0, 1 - Math.floor(Math.log10(Math.abs(value)))))}${SPACE}Hz`;
}

/** The place of a line that was seen, in Hz: as many digits as the resolution of the spectrum bears; four where none is known. */
export function lineSeen(value: number, resolution: LineTable['resolution']): string {
  if (!resolution) return `${Number(value.toPrecision(4))}${SPACE}Hz`;
  return `${formatNumber(value, Math.max(0, -Math.floor(Math.log10(resolution.value_hz))))}${SPACE}Hz`;
}

/** What the signs in the relations mean, each as it stands there. */
const SYMBOLS: readonly (readonly [RegExp, string])[] = [
  [/f₁/, 'f₁ supply frequency'],
  [/f_r/, 'f_r turns of the shaft in a second'],
  [/\bs f₁/, 's slip'],
  [/\bR\b/, 'R rotor bars'],
  [/\bS\b/, 'S stator slots'],
  [/z₁/, 'z₁, z₂ teeth of pinion and wheel'],
  [/lcm/, 'lcm the least common multiple of both'],
  [/f_belt/, 'f_belt turns of the belt'],
  [/f_driven/, 'f_driven turns of the shaft beyond the belt'],
  [/f_outer/, 'f_outer, f_inner rolling elements that pass a spot of the outer, the inner race'],
  [/f_cage/, 'f_cage turns of the cage'],
  [/f_element/, 'f_element hits of a spot on a rolling element'],
];

/** The signs in a table's relations, in words. */
export function symbolWords({ lines }: Pick<LineTable, 'lines'>): string {
  const found = SYMBOLS.filter(([sign]) => lines.some(({ relation }) => sign.test(relation))).map(([, words]) => words);
  return found.length === 0 ? '' : `Signs: ${found.join(', ')}.`;
}
