import type { Reading } from '@/lib/engine';
import type { CellValue } from './column';
import { COLUMNS } from './columns';
import { issue, type RowIssue } from './issue-codes';
import { indexOf, type ParsedRow } from './parse-row';

/** Values typed beside the mean of three phases that do not belong together further apart than this. */
const MEAN_TOLERANCE = 0.02;

/** Prefix of notes that hold cells of known columns, so that they are not taken for these when written out. */
export const KEPT = 'kept: ';

/** Every field, so that all readings share one shape. */
const EMPTY: Omit<Reading, 'row'> = {
  readingsAt: 'motor',
  readingCondition: 'coupled',
  ...Object.fromEntries(
    COLUMNS.flatMap(({ target }) =>
      target.of === 'reading' && target.key !== 'readingsAt' && target.key !== 'readingCondition'
        ? [[target.key, undefined]]
        : [],
    ),
  ),
  voltagesV: undefined,
  voltageV: undefined,
  currentsA: undefined,
  currentA: undefined,
  resistancesOhm: undefined,
  duty: undefined,
};

const FIELDS = COLUMNS.flatMap(({ target }, index) => (target.of === 'reading' ? [{ index, key: target.key }] : []));
const SCOPED = COLUMNS.flatMap(({ scope }, index) => (scope === 'reading' ? [index] : []));
const DUTY = indexOf('duty_profile');
const PHASES = [
  { triple: 'voltagesV', mean: 'voltageV', names: ['voltage_ab_v', 'voltage_bc_v', 'voltage_ca_v'], meanName: 'voltage_v' },
  { triple: 'currentsA', mean: 'currentA', names: ['current_a_a', 'current_b_a', 'current_c_a'], meanName: 'current_a' },
  {
    triple: 'resistancesOhm',
    mean: undefined,
    names: ['resistance_ab_ohm', 'resistance_bc_ohm', 'resistance_ca_ohm'],
    meanName: undefined,
  },
] as const;

export interface BuiltReading {
  /** Absent when the row has no cell of a reading. */
  readonly reading?: Reading;
  readonly warnings: readonly RowIssue[];
  readonly notes: readonly (readonly [name: string, text: string])[];
}

/** Mean of three phase values. */
export function meanOfThree([a, b, c]: readonly [number, number, number]): number {
  return (a + b + c) / 3;
}

/** Puts a row's reading together. A row in which nothing was read has none; its duty then refers to rated power. */
export function buildReading({ row, values }: ParsedRow): BuiltReading {
  if (!SCOPED.some((index) => values[index] !== undefined)) return { warnings: [], notes: [] };
  const reading: Reading = { row, ...EMPTY };
  const warnings: RowIssue[] = [];
  const notes: (readonly [string, string])[] = [];
  for (const { index, key } of FIELDS) if (values[index] !== undefined) Reflect.set(reading, key, values[index]);
  for (const phase of PHASES) {
    const built = buildPhases(row, values, phase);
    if (built.triple !== undefined) Reflect.set(reading, phase.triple, built.triple);
    if (built.mean !== undefined && phase.mean !== undefined) Reflect.set(reading, phase.mean, built.mean);
    warnings.push(...built.warnings);
    notes.push(...built.notes);
  }
  if (values[DUTY] !== undefined) Reflect.set(reading, 'duty', values[DUTY]);
  return { reading, warnings, notes };
}

interface BuiltPhases extends Omit<BuiltReading, 'reading'> {
  readonly triple?: readonly [number, number, number];
  readonly mean?: number;
}

function buildPhases(row: number, values: readonly (CellValue | undefined)[], phase: (typeof PHASES)[number]): BuiltPhases {
  const numberOf = (name: string): number | undefined => {
    const value = values[indexOf(name)];
    return typeof value === 'number' ? value : undefined;
  };
  const [a, b, c] = phase.names.map(numberOf);
  const typed = phase.meanName === undefined ? undefined : numberOf(phase.meanName);
  if (a !== undefined && b !== undefined && c !== undefined) {
    const triple = [a, b, c] as const;
    const mean = meanOfThree(triple);
    if (typed === undefined || typed === mean || phase.meanName === undefined) return { triple, mean, warnings: [], notes: [] };
    const apart = Math.abs(typed - mean) > MEAN_TOLERANCE * Math.abs(mean);
    const other = String(Number(mean.toPrecision(6)));
    const warnings = apart ? [issue('phases-against-mean', row, phase.meanName, { value: String(typed), other })] : [];
    return { triple, mean, warnings, notes: [kept(phase.meanName, typed, row)] };
  }
  const some = phase.names.filter((name) => numberOf(name) !== undefined);
  const present = [a, b, c].filter((value) => value !== undefined);
  const own = typed === undefined ? {} : { mean: typed };
  if (present.length === 0) return { ...own, warnings: [], notes: [] };
  const asMean = phase.mean !== undefined && typed === undefined;
  const other = asMean ? ', and their mean stands for all three' : '';
  return {
    ...(asMean ? { mean: present.reduce((sum, value) => sum + value, 0) / present.length } : own),
    warnings: [issue('incomplete-phases', row, some[0] ?? '', { words: some.join(' and '), other })],
    notes: some.map((name) => kept(name, numberOf(name), row)),
  };
}

/** A note of a value that has no place of its own in a reading. */
function kept(name: string, value: number | undefined, row: number): readonly [name: string, text: string] {
  return [`${KEPT}${name}`, `${value} (row ${row})`];
}
