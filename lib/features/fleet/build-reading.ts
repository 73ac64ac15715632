import type { Reading } from '@/lib/engine';
import type { CellValue } from './column';
import { COLUMNS } from './columns';
import { issue, type RowIssue } from './issue-codes';
import { indexOf, type ParsedRow } from './parse-row';
import { setField } from './set-field';

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
  phase('voltagesV', ['voltage_ab_v', 'voltage_bc_v', 'voltage_ca_v'], 'voltageV', 'voltage_v'),
  phase('currentsA', ['current_a_a', 'current_b_a', 'current_c_a'], 'currentA', 'current_a'),
  phase('resistancesOhm', ['resistance_ab_ohm', 'resistance_bc_ohm', 'resistance_ca_ohm']),
];

function phase(triple: keyof Reading, names: readonly [string, string, string], mean?: keyof Reading, meanName?: string) {
  const indexes = [indexOf(names[0]), indexOf(names[1]), indexOf(names[2])] as const;
  return { triple, names, indexes, mean, meanName, meanIndex: indexOf(meanName ?? '') };
}

interface BuiltReading {
  /** Absent when the row has no cell of a reading. */
  readonly reading?: Reading;
  readonly warnings: readonly RowIssue[];
  readonly notes: readonly (readonly [name: string, text: string])[];
}

/** Mean of three phase values. */
export function meanOfThree([a, b, c]: readonly [number, number, number]): number {
  return (a + b + c) / 3;
}

const NOTHING: BuiltReading = { warnings: [], notes: [] };

/** Puts a row's reading together. A row in which nothing was read has none; its duty then refers to rated power. */
export function buildReading({ row, values }: ParsedRow): BuiltReading {
  if (!SCOPED.some((index) => values[index] !== undefined)) return NOTHING;
  const reading: Reading = { row, ...EMPTY };
  const warnings: RowIssue[] = [];
  const notes: (readonly [string, string])[] = [];
  for (const { index, key } of FIELDS) if (values[index] !== undefined) setField(reading, key, values[index]);
  for (const phase of PHASES) {
    const built = buildPhases(row, values, phase);
    if (built === undefined) continue;
    if (built.triple !== undefined) setField(reading, phase.triple, built.triple);
    if (built.mean !== undefined && phase.mean !== undefined) setField(reading, phase.mean, built.mean);
    warnings.push(...built.warnings);
    notes.push(...built.notes);
  }
  if (values[DUTY] !== undefined) setField(reading, 'duty', values[DUTY]);
  return { reading, warnings, notes };
}

interface BuiltPhases extends Omit<BuiltReading, 'reading'> {
  readonly triple?: readonly [number, number, number];
  readonly mean?: number;
}

function numberAt(values: readonly (CellValue | undefined)[], index: number): number | undefined {
  const value = values[index];
  return typeof value === 'number' ? value : undefined;
}

function buildPhases(
  row: number,
  values: readonly (CellValue | undefined)[],
  { names, indexes, mean, meanName, meanIndex }: (typeof PHASES)[number],
): BuiltPhases | undefined {
  const a = numberAt(values, indexes[0]);
  const b = numberAt(values, indexes[1]);
  const c = numberAt(values, indexes[2]);
  const typed = numberAt(values, meanIndex);
  if (a !== undefined && b !== undefined && c !== undefined) return withMean(row, [a, b, c], typed, meanName);
  const own = typed === undefined ? {} : { mean: typed };
  const some = names.filter((_, at) => [a, b, c][at] !== undefined);
  if (some.length === 0) return typed === undefined ? undefined : { ...own, warnings: [], notes: [] };
  const present = [a, b, c].filter((value) => value !== undefined);
  const asMean = mean !== undefined && typed === undefined;
  const other = asMean ? ', and their mean stands for all three' : '';
  return {
    ...(asMean ? { mean: present.reduce((sum, value) => sum + value, 0) / present.length } : own),
    warnings: [issue('incomplete-phases', row, some[0] ?? '', { words: some.join(' and '), other })],
    notes: some.map((name) => kept(name, numberAt(values, indexOf(name)), row)),
  };
}

/** All three phases: their mean counts; a mean typed beside them is questioned if it is another, and kept as a note. */
function withMean(
  row: number,
  triple: readonly [number, number, number],
  typed: number | undefined,
  meanName: string | undefined,
): BuiltPhases {
  const mean = meanOfThree(triple);
  if (typed === undefined || typed === mean || meanName === undefined) return { triple, mean, warnings: [], notes: [] };
  const apart = Math.abs(typed - mean) > MEAN_TOLERANCE * Math.abs(mean);
  const other = String(Number(mean.toPrecision(6)));
  const warnings = apart ? [issue('phases-against-mean', row, meanName, { value: String(typed), other })] : [];
  return { triple, mean, warnings, notes: [kept(meanName, typed, row)] };
}

/** A note of a value that has no place of its own in a reading. */
function kept(name: string, value: number | undefined, row: number): readonly [name: string, text: string] {
  return [`${KEPT}${name}`, `${value} (row ${row})`];
}
