import type { Reading } from '@/lib/engine';
import { COLUMNS } from './columns';

/** A reading that an indicator history may carry: its word there, its field, and what its units are worth in the fleet sheet's own. */
export interface HistoryIndicator {
  readonly name: string;
  readonly key: keyof Reading;
  readonly unit: string;
  readonly possible: readonly [low: number, high: number] | undefined;
}

/** Endings of column names that say the unit. */
const UNIT_ENDING = /_(mm_s|mohm|db|c|v|kw|hz|rpm|pct|g)$/;

/** Every number of a set of readings, by its column's name without the unit. */
export const HISTORY_INDICATORS: ReadonlyMap<string, HistoryIndicator> = new Map(
  COLUMNS.flatMap(({ name, kind, target, group }) => {
    if (target.of !== 'reading' || kind.type !== 'number' || group === 'visit' || name.includes('_accuracy_')) return [];
    const word = name.replace(UNIT_ENDING, '');
    return [[word, { name: word, key: target.key, unit: kind.unit, possible: kind.possible }] as const];
  }),
);

/** How a value in another unit becomes one in ours. */
type Conversion = (value: number) => number;

const times =
  (factor: number): Conversion =>
  (value) =>
    value * factor;

/** Standard gravity, m/s² (CGPM 1901). */
const GRAVITY = 9.80665;

/** For each unit of ours the units that are understood, as they are written; capitals count, since m and M differ. */
const CONVERSIONS: Readonly<Record<string, Readonly<Record<string, Conversion>>>> = {
  'mm/s': { 'mm/s': times(1), 'cm/s': times(10), 'm/s': times(1000), 'in/s': times(25.4), ips: times(25.4) },
  g: { g: times(1), 'm/s²': times(1 / GRAVITY), 'm/s2': times(1 / GRAVITY) },
  MΩ: {
    MΩ: times(1),
    Mohm: times(1),
    MOhm: times(1),
    kΩ: times(1e-3),
    kohm: times(1e-3),
    kOhm: times(1e-3),
    GΩ: times(1000),
    Gohm: times(1000),
    GOhm: times(1000),
    Ω: times(1e-6),
  },
  '°C': {
    '°C': times(1),
    C: times(1),
    degC: times(1),
    '°F': (value) => (value - 32) / 1.8,
    F: (value) => (value - 32) / 1.8,
    degF: (value) => (value - 32) / 1.8,
    K: (value) => value - 273.15,
  },
  V: { V: times(1), kV: times(1000) },
  kW: { kW: times(1), W: times(1e-3), MW: times(1000), hp: times(0.7457) },
  Hz: { Hz: times(1), '1/min': times(1 / 60), cpm: times(1 / 60) },
  'r/min': { 'r/min': times(1), rpm: times(1), '1/min': times(1), Hz: times(60) },
  dB: { dB: times(1) },
  '%': { '%': times(1), pct: times(1), '1': times(100) },
  '1': { '1': times(1), '': times(1), '%': times(0.01) },
};

/** The units that are understood for one of ours. */
export function unitsFor(unit: string): readonly string[] {
  return Object.keys(CONVERSIONS[unit] ?? { [unit]: true }).filter((name) => name !== '');
}

/** A value brought to our unit; `undefined` when the unit is not understood. */
export function inOurUnit(value: number, written: string, unit: string): number | undefined {
  const own = CONVERSIONS[unit];
  if (own === undefined) return written === unit ? value : undefined;
  return Object.hasOwn(own, written) ? own[written]?.(value) : undefined;
}
