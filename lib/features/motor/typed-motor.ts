import type { Motor, Reading } from '@/lib/engine';
import { COLUMNS } from '../fleet/columns';
import { csvRow } from '../fleet/csv-cell';
import { parseFleet } from '../fleet/parse';
import { inLabels } from '../fleet/screen-words';
import { motorRows } from '../fleet/write-cells';

/** Columns of the plate and the driven load, as the form shows them; site and tag name the motor and stay. */
export const PLATE_COLUMNS = COLUMNS.filter(
  (column) => column.scope === 'motor' && column.name !== 'tag' && column.name !== 'site',
);

/** Columns of a reading, as the form shows them. */
export const READING_COLUMNS = COLUMNS.filter((column) => column.scope === 'reading');

/** What became of typed cells: a motor, or what is wrong with which cell. */
export type TypedOutcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly refused: Readonly<Record<string, string>> };

/** The plate's cells as text, by column: what the form begins with, and what the history compares. */
export function plateCells(motor: Motor): Map<string, string> {
  const [row] = motorRows({ ...motor, readings: [], plateDuty: undefined }, '.');
  return new Map(PLATE_COLUMNS.map(({ name }) => [name, textOf(row?.get(name))]));
}

function textOf(value: unknown): string {
  if (value === undefined || value === null) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return String(value);
}

/**
 * Understands a plate as typed, by the very parser of the fleet sheet: a form is a sheet of one row. The readings stay.
 * `cells` hold every column of the form; an empty one means "not known".
 */
export async function typedPlate(motor: Motor, cells: ReadonlyMap<string, string>): Promise<TypedOutcome<Motor>> {
  const read = await oneRow(
    motor,
    PLATE_COLUMNS.map(({ name }) => [name, cells.get(name) ?? '']),
  );
  if (!read.ok) return read;
  return { ok: true, value: { ...read.value, readings: motor.readings, plateDuty: motor.plateDuty } };
}

/** Understands a reading as typed; the plate is the motor's own. */
export async function typedReading(motor: Motor, cells: ReadonlyMap<string, string>): Promise<TypedOutcome<Reading>> {
  const plate = [...plateCells(motor)].filter(([, text]) => text !== '');
  const given = READING_COLUMNS.map(({ name }): [string, string] => [name, cells.get(name) ?? '']).filter(
    ([, text]) => text.trim() !== '',
  );
  if (
    given.every(([name]) =>
      ['taken_by', 'instrument', 'readings_at', 'reading_condition', 'taken_at', 'readings_note'].includes(name),
    )
  ) {
    return { ok: false, refused: { '': 'Nothing was measured: write at least one reading.' } };
  }
  const read = await oneRow(motor, [...plate, ...given]);
  if (!read.ok) return read;
  const reading = read.value.readings[0];
  return reading
    ? { ok: true, value: reading }
    : { ok: false, refused: { '': 'Nothing was measured: write at least one reading.' } };
}

async function oneRow(motor: Motor, cells: readonly (readonly [string, string])[]): Promise<TypedOutcome<Motor>> {
  const all: (readonly [string, string])[] = [['tag', motor.tag], ['site', motor.site], ...cells];
  const text = csvRow(all.map(([name]) => name)) + csvRow(all.map(([, value]) => value));
  const outcome = await parseFleet({ name: 'form', text });
  if (!outcome.ok) return { ok: false, refused: { '': `${outcome.problem.text} ${outcome.problem.remedy}` } };
  const rejected = outcome.rejected.flatMap((row) => row.issues);
  if (rejected.length > 0)
    return {
      ok: false,
      refused: Object.fromEntries(rejected.map((issue) => [issue.column, inLabels(`${issue.text} ${issue.remedy}`)])),
    };
  const found = outcome.motors[0];
  return found ? { ok: true, value: found.motor } : { ok: false, refused: { '': 'The form is empty.' } };
}
