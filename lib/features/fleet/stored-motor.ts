import type { DutyStep, Motor, Plate, Reading } from '@/lib/engine';
import type { Prisma } from '@/lib/platform/db';
import { contentHash } from '@/lib/platform/hash';
import { fromMinor, toMinor } from '@/lib/platform/money';
import { naturalKey } from '@/lib/platform/natural-key';
import type { BearingGeometry, LineGeometry } from './column';
import { readBearing, readDuty, readNumberList, readTeeth } from './parse-compound';
import {
  LOAD_FACTS,
  LOAD_LENGTHS,
  MOTOR_FACTS,
  MOTOR_MONEY,
  PLATE_KEYS,
  READING_FACTS,
  READING_KEYS,
  TRIPLES,
} from './stored-fields';

/**
 * The one mapping between the engine's motor and the rows that keep it. Both ways without loss, but for three things that the engine
 * does not look at: money is rounded to minor units, an empty line geometry is none, and rows are numbered as said at
 * {@link readingRows} and {@link motorOfRows}.
 */

/** What a column may hold. */
type StoredValue = string | number | boolean | bigint | null;
/** Facts by column name, without ids and times. */
type Columns = Readonly<Record<string, StoredValue>>;

export type MotorRow = Prisma.MotorGetPayload<object>;
export type DrivenLoadRow = Prisma.DrivenLoadGetPayload<object>;
export type ReadingRow = Prisma.ReadingGetPayload<object>;

const POINT = { decimal: '.' } as const;

// Every key from the start, so that all plates and all readings share one shape, which the engine's inner loops run faster on.
const EMPTY_PLATE: Plate = {
  ...Object.fromEntries(PLATE_KEYS.map((key) => [key, undefined])),
  ratedPowerKw: 0,
  ratedPowerUnit: 'kW',
  status: 'running',
  ratedVoltageV: 0,
  machineKind: 'cage',
};
const EMPTY_READING: Omit<Reading, 'row'> = {
  ...Object.fromEntries(READING_KEYS.map((key) => [key, undefined])),
  readingsAt: 'motor',
  readingCondition: 'coupled',
};

/** The facts of a motor as columns of table Motor; ids, notes, version and times are the caller's. */
export function motorColumns(motor: Motor, currency: string): Columns {
  const columns: Record<string, StoredValue> = {
    siteName: motor.site,
    tag: motor.tag,
    naturalKey: naturalKey(motor.site, motor.tag),
    description: motor.description ?? null,
  };
  for (const key of MOTOR_FACTS) columns[key] = plain(Reflect.get(motor.plate, key));
  for (const key of MOTOR_MONEY) {
    const amount: unknown = Reflect.get(motor.plate, key);
    columns[`${key}Minor`] = typeof amount === 'number' ? toMinor(amount, currency) : null;
  }
  columns.bearingDe = bearingText(motor.lineGeometry?.bearingDe);
  columns.bearingNde = bearingText(motor.lineGeometry?.bearingNde);
  return columns;
}

/** The driven load, the hours and the duty of a motor as columns of table DrivenLoad. */
export function drivenLoadColumns(motor: Motor): Columns {
  const columns: Record<string, StoredValue> = {};
  for (const key of LOAD_FACTS) columns[key] = plain(Reflect.get(motor.plate, key));
  for (const key of LOAD_LENGTHS) columns[key] = motor.lineGeometry?.[key] ?? null;
  columns.gearTeeth = motor.lineGeometry?.gearTeeth?.join(';') ?? null;
  columns.hoursPerYear = motor.hoursPerYear ?? null;
  const { plateDuty } = motor;
  const duty = plateDuty === undefined ? undefined : { steps: plateDuty.steps, afterReadings: dutyAfterReadings(motor) };
  return { ...columns, ...dutyColumns(duty) };
}

/** A motor's own duty as columns of table DrivenLoad. */
export function dutyColumns(
  duty: { readonly steps: readonly DutyStep[]; readonly afterReadings: boolean } | undefined,
): Pick<Columns, 'dutyProfile' | 'dutyAfterReadings'> {
  return { dutyProfile: dutyText(duty?.steps), dutyAfterReadings: duty?.afterReadings ?? false };
}

/**
 * Whether the motor's own duty stands after the last reading that carries one, and so replaces it. Whoever adds a reading with a duty later
 * on sets this to false, since the latest duty is in force.
 */
export function dutyAfterReadings({ plateDuty, readings }: Pick<Motor, 'plateDuty' | 'readings'>): boolean {
  const carrying = readings.filter(({ duty }) => duty !== undefined);
  return plateDuty !== undefined && carrying.length > 0 && carrying.every(({ row }) => row < plateDuty.row);
}

/** A reading as columns of table Reading, its content hash among them. */
export function readingColumns(reading: Reading): Columns {
  const columns: Record<string, StoredValue> = { contentHash: readingHash(reading) };
  for (const key of READING_FACTS) columns[key] = plain(Reflect.get(reading, key));
  for (const { key, columns: names } of TRIPLES) {
    for (const [at, name] of names.entries()) columns[name] = reading[key]?.[at] ?? null;
  }
  columns.observedLinesHz = reading.observedLinesHz?.join(';') ?? null;
  columns.readingsNote = reading.note ?? null;
  columns.dutyProfile = dutyText(reading.duty);
  return columns;
}

/** Hash over the time and all values of a reading, but not its row: the same reading of two sheets has the same hash. */
export function readingHash(reading: Reading): string {
  return contentHash({ ...reading, row: undefined });
}

/**
 * Numbers for stored readings, stable as readings are added: the row of the sheet where that rises in the order of storing, else one
 * more than the reading stored before. Rows come in the order of storing.
 */
export function readingRows(rows: readonly Pick<ReadingRow, 'sheetRow'>[]): number[] {
  let last = 1;
  return rows.map(({ sheetRow }) => {
    last = Math.max(sheetRow ?? 0, last + 1);
    return last;
  });
}

/** A reading from its row, under the number given. */
export function readingOfRow(row: ReadingRow, number: number): Reading {
  const reading: Reading = { row: number, ...EMPTY_READING };
  for (const key of READING_FACTS) {
    const value: unknown = Reflect.get(row, key);
    if (value !== null) Reflect.set(reading, key, value);
  }
  for (const { key, columns } of TRIPLES) {
    const [a, b, c] = [row[columns[0]], row[columns[1]], row[columns[2]]];
    if (a !== null && b !== null && c !== null) Reflect.set(reading, key, [a, b, c]);
  }
  if (row.observedLinesHz !== null) Reflect.set(reading, 'observedLinesHz', readNumberList(row.observedLinesHz, POINT));
  if (row.readingsNote !== null) Reflect.set(reading, 'note', row.readingsNote);
  if (row.dutyProfile !== null) Reflect.set(reading, 'duty', readDuty(row.dutyProfile, POINT));
  return reading;
}

/**
 * A motor from its rows. Its own duty is numbered 1, or one more than the last of all readings when it stands after them.
 * @param readings those in use, in the order in which the engine wants them.
 * @param lastRow highest number of any reading, excluded ones too.
 */
export function motorOfRows(
  row: MotorRow,
  load: DrivenLoadRow | undefined,
  readings: readonly Reading[],
  about: { readonly area: string | undefined; readonly currency: string; readonly lastRow: number },
): Motor {
  const plate: Plate = { ...EMPTY_PLATE, ratedPowerKw: row.ratedPowerKw, ratedVoltageV: row.ratedVoltageV };
  take(plate, row, MOTOR_FACTS);
  for (const key of MOTOR_MONEY) {
    const minor: unknown = Reflect.get(row, `${key}Minor`);
    if (typeof minor === 'bigint') Reflect.set(plate, key, fromMinor(minor, about.currency));
  }
  if (load !== undefined) take(plate, load, LOAD_FACTS);
  const steps = load?.dutyProfile == null ? undefined : readDuty(load.dutyProfile, POINT);
  const after = load?.dutyAfterReadings === true;
  return {
    site: row.siteName,
    tag: row.tag,
    area: about.area,
    description: row.description ?? undefined,
    plate,
    hoursPerYear: load?.hoursPerYear ?? undefined,
    plateDuty: steps === undefined ? undefined : { row: after ? about.lastRow + 1 : 1, steps },
    lineGeometry: lineGeometry(row, load),
    readings,
  };
}

/** Copies facts that are known; an absent one stays `undefined`. */
function take(plate: Plate, row: MotorRow | DrivenLoadRow, keys: readonly string[]): void {
  for (const key of keys) {
    const value: unknown = Reflect.get(row, key);
    if (value !== null) Reflect.set(plate, key, value);
  }
}

function lineGeometry(row: MotorRow, load: DrivenLoadRow | undefined): LineGeometry | undefined {
  const geometry: LineGeometry = {
    beltLengthMm: load?.beltLengthMm ?? undefined,
    motorSheaveMm: load?.motorSheaveMm ?? undefined,
    drivenSheaveMm: load?.drivenSheaveMm ?? undefined,
    gearTeeth: load?.gearTeeth == null ? undefined : readTeeth(load.gearTeeth, POINT),
    bearingDe: row.bearingDe === null ? undefined : readBearing(row.bearingDe, POINT),
    bearingNde: row.bearingNde === null ? undefined : readBearing(row.bearingNde, POINT),
  };
  return Object.values(geometry).some((value) => value !== undefined) ? geometry : undefined;
}

function plain(value: unknown): StoredValue {
  return typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean' ? value : null;
}

function dutyText(steps: readonly DutyStep[] | undefined): string | null {
  return steps?.map(({ fraction, hoursPerYear }) => `${fraction}@${hoursPerYear}`).join(';') ?? null;
}

function bearingText(geometry: BearingGeometry | undefined): string | null {
  if (geometry === undefined) return null;
  const { balls, ballMm, pitchMm, angleDeg } = geometry;
  return `${balls}/${ballMm}/${pitchMm}/${angleDeg}`;
}
