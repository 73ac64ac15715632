import { type DutyStep, KILOWATTS_PER_HORSEPOWER, type Motor, type Reading } from '@/lib/engine';
import { meanOfThree } from './build-reading';
import type { CellValue } from './column';
import { COLUMNS } from './columns';
import type { Writable } from './csv-cell';
import type { DecimalSign } from './number';
import { kilowattsOf } from './rated-power';

/** One row of a motor as it is written: cells by column name. */
type WrittenRow = ReadonlyMap<string, Writable>;

/**
 * The rows of a motor in the order of its readings' rows: the first carries its plate, each further one a reading,
 * or the duty that refers to rated power. Reading the rows gives the motor back.
 */
export function motorRows(motor: Motor, decimal: DecimalSign): WrittenRow[] {
  const items: { readonly row: number; readonly cells: Map<string, Writable> }[] = motor.readings.map((reading) => ({
    row: reading.row,
    cells: readingCells(reading, decimal),
  }));
  const { plateDuty } = motor;
  if (plateDuty) items.push({ row: plateDuty.row, cells: new Map([['duty_profile', dutyText(plateDuty.steps, decimal)]]) });
  items.sort((a, b) => a.row - b.row);
  if (items.length === 0) items.push({ row: 0, cells: new Map() });
  return items.map(({ cells }, at) => new Map([...(at === 0 ? motorCells(motor, decimal) : keyCells(motor)), ...cells]));
}

function keyCells(motor: Motor): Map<string, Writable> {
  return new Map([
    ['tag', motor.tag],
    ['site', motor.site === '' ? undefined : motor.site],
  ]);
}

function motorCells(motor: Motor, decimal: DecimalSign): Map<string, Writable> {
  const cells = keyCells(motor);
  const { plate, lineGeometry = {} } = motor;
  if (plate.ratedPowerUnit === 'hp') cells.set('rated_power_hp', horsepowerOf(plate.ratedPowerKw));
  else cells.set('rated_power_kw', plate.ratedPowerKw);
  for (const { name, target } of COLUMNS) {
    if (target.of === 'plate') cells.set(name, written(plate[target.key], decimal));
    else if (target.of === 'geometry') cells.set(name, written(lineGeometry[target.key], decimal));
    else if (target.of === 'motor' && !cells.has(name)) cells.set(name, written(motor[target.key], decimal));
  }
  return cells;
}

function readingCells(reading: Reading, decimal: DecimalSign): Map<string, Writable> {
  const cells = new Map<string, Writable>();
  for (const { name, target } of COLUMNS) if (target.of === 'reading') cells.set(name, fieldOf(reading, target.key, decimal));
  phases(cells, ['voltage_ab_v', 'voltage_bc_v', 'voltage_ca_v'], reading.voltagesV, 'voltage_v', reading.voltageV);
  phases(cells, ['current_a_a', 'current_b_a', 'current_c_a'], reading.currentsA, 'current_a', reading.currentA);
  phases(cells, ['resistance_ab_ohm', 'resistance_bc_ohm', 'resistance_ca_ohm'], reading.resistancesOhm);
  if (reading.duty) cells.set('duty_profile', dutyText(reading.duty, decimal));
  return cells;
}

function phases(
  cells: Map<string, Writable>,
  names: readonly string[],
  triple: readonly [number, number, number] | undefined,
  meanName?: string,
  mean?: number | undefined,
): void {
  for (const [at, name] of names.entries()) cells.set(name, triple?.[at]);
  if (meanName === undefined) return;
  cells.set(meanName, triple !== undefined && mean === meanOfThree(triple) ? undefined : mean);
}

function fieldOf(reading: Reading, key: keyof Reading, decimal: DecimalSign): Writable {
  const value = reading[key];
  return typeof value === 'object' ? written(numbersOnly(value), decimal) : value;
}

function numbersOnly(values: readonly unknown[]): number[] {
  return values.filter((value) => typeof value === 'number');
}

function written(value: CellValue | undefined, decimal: DecimalSign): Writable {
  if (typeof value !== 'object') return value;
  if (!('balls' in value))
    return isDuty(value) ? dutyText(value, decimal) : value.map((part) => numberText(part, decimal)).join(';');
  const { balls, ballMm, pitchMm, angleDeg } = value;
  return [balls, ballMm, pitchMm, angleDeg].map((part) => numberText(part, decimal)).join('/');
}

function isDuty(value: readonly number[] | readonly DutyStep[]): value is readonly DutyStep[] {
  return typeof value[0] === 'object';
}

function dutyText(steps: readonly DutyStep[], decimal: DecimalSign): string {
  return steps
    .map(({ fraction, hoursPerYear }) => `${numberText(fraction, decimal)}@${numberText(hoursPerYear, decimal)}`)
    .join(';');
}

function numberText(value: number, decimal: DecimalSign): string {
  return decimal === ',' ? String(value).replace('.', ',') : String(value);
}

/** The shortest number of horsepower that makes exactly these kilowatts again. */
export function horsepowerOf(kw: number): number {
  const exact = kw / KILOWATTS_PER_HORSEPOWER;
  for (let digits = 1; digits <= 17; digits++) {
    const candidate = Number(exact.toPrecision(digits));
    if (kilowattsOf(candidate) === kw) return candidate;
  }
  return exact;
}
