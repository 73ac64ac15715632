import type { Motor, Reading } from '@/lib/engine';
import { uncapitalised } from '@/lib/platform/format';
import { motorRows } from '../fleet/write-cells';
import { READING_COLUMNS } from './typed-motor';

/** Columns that the table of readings has of its own, that say how and by whom it was read, or how good the meter is. */
const APART: ReadonlySet<string> = new Set([
  'taken_at',
  'taken_by',
  'instrument',
  'readings_note',
  'voltage_ab_v',
  'voltage_bc_v',
  'voltage_ca_v',
  'voltage_v',
  'current_a_a',
  'current_b_a',
  'current_c_a',
  'current_a',
  'input_power_kw',
  'shaft_speed_rpm',
  'voltage_accuracy_pct',
  'current_accuracy_pct',
  'power_accuracy_pct',
  'speed_accuracy_rpm',
]);

/** What was read beside power, voltage, current and speed: `insulation resistance 296 MΩ`, in the order of the sheet. */
export function alsoRead(motor: Motor, reading: Reading): string[] {
  const [cells] = motorRows({ ...motor, readings: [reading], plateDuty: undefined }, '.');
  return READING_COLUMNS.flatMap(({ name, label, kind }) => {
    const value = cells?.get(name);
    if (APART.has(name) || value === undefined || value === null || value === '') return [];
    // What is so when the cell is empty needs no saying.
    if (value === 'coupled' || (name === 'readings_at' && value === 'motor')) return [];
    const unit = 'unit' in kind && kind.unit !== '1' ? `\u202f${kind.unit}` : '';
    return [`${uncapitalised(label)} ${String(value)}${unit}`];
  });
}

/** Who read it and with what, as far as it was noted. */
export function readBy({ takenBy, instrument, note }: Reading): string {
  return [takenBy, instrument, note].filter(Boolean).join(', ');
}
