import type { MotorScope } from '../../context';
import type { Plate, Reading, ThermalClass } from '../../motor';
import type { Finding } from '../../quantity/finding';
import type { Quantity } from '../../quantity/quantity';
import { CONDITION } from '../findings';
import { type Indicator, judgement } from '../indicator';
import { bandAt, exceeds, inForce } from '../limit';
import type { Limit } from '../limit-model';
import { INSTRUMENT, read, words } from './shared';

/** Ambient to which the rises of the classes belong, in °C (NEMA MG 1 12.43). */
const STANDARD_AMBIENT_C = 40;

/** A winding may sit close to its limit for decades: `near` begins this many kelvins below it, the step that halves life (common practice). */
const NEAR_K = 10;

/** A detector in the slot reads about this much above the mean by resistance (5 to 10 K; NEMA MG 1 20.8, from memory). */
const DETECTOR_K = 10;

const CLASSES: readonly ThermalClass[] = ['A', 'B', 'F', 'H'];

/**
 * Winding temperature against its insulation class: by embedded detector the class limit, by resistance 40 °C and the rise of the class.
 * Where a rise class is stamped and the ambient was read, a rise above that class is `near` at least, since the winding is hotter than
 * it was built to be though its insulation stands; it judges alone where the insulation class is not known. A surface reading never judges.
 * Source: NEMA MG 1 12.43 (read in a secondary text).
 */
export const windingTemperature: Indicator = {
  id: 'winding-temperature',
  title: 'Winding temperature',
  needs: ['winding_temp_c', 'winding_temp_method', 'insulation_class'],
  limits: [
    ...CLASSES.map((name) => `winding-class-${name}`),
    ...CLASSES.map((name) => `winding-resistance-${name}`),
    ...CLASSES.map((name) => `winding-rise-${name}`),
  ],
  present: ({ reading }) => reading.windingTempC !== undefined,
  judge(scope, { reading, motor }) {
    if (reading.windingTempC === undefined) return { value: undefined, findings: [] };
    const value = read(scope, {
      value: reading.windingTempC,
      unit: '°C',
      label: 'winding temperature',
      row: reading.row,
      error: INSTRUMENT.temperatureK,
      id: 'winding-temperature',
    });
    const unjudged = (limit: string, why: Finding) =>
      judgement({ value, limit, source: sourceOf(scope), status: 'read-secondary' }, { findings: [why] });
    const method = reading.windingTempMethod;
    if (method === 'surface')
      return unjudged('not judged from the surface', CONDITION.make('temperature-surface', { temperature: value.value }));
    const total = method && classLimit(scope, motor.plate, method);
    const rise = method && riseLimit(scope, motor.plate, reading, method);
    const ruling = total ?? rise;
    if (!ruling) return unjudged('depends on class and method', CONDITION.make('temperature-class-unknown', {}));
    const judged = bandAt(value, ruling.limit, 'winding temperature', {
      beyond: exceeds(value.value, ruling.limit.value),
      near: isNear(value, ruling.limit) || (rise !== undefined && exceeds(value.value, rise.limit.value)),
    });
    const held = {
      value,
      limit: total && rise ? `${total.words}; ${rise.words}` : ruling.words,
      source: ruling.limit.source,
      status: ruling.limit.status,
    };
    return judgement(held, judged);
  },
};

function isNear(value: Quantity<'°C'>, limit: Limit): boolean {
  return !exceeds(limit.value - NEAR_K, value.value);
}

type Method = 'resistance' | 'embedded';
interface Ruling {
  readonly limit: Limit;
  readonly words: string;
}

/** The highest temperature of the insulation class, as the method reads it. */
function classLimit(scope: MotorScope, plate: Plate, method: Method): Ruling | undefined {
  const row = rowOf(scope, plate.insulationClass);
  if (!row) return undefined;
  const embedded = method === 'embedded';
  const limit = inForce(scope, {
    id: `winding-${embedded ? 'class' : 'resistance'}-${row.thermalClass}`,
    value: embedded ? row.maxTempC : STANDARD_AMBIENT_C + row.riseK,
    unit: '°C',
    source: sourceOf(scope),
    status: row.status,
  });
  return { limit, words: `at most ${words(limit.value)} °C (class ${row.thermalClass}, by ${methodWords(method)})` };
}

/** The temperature at which the rise of the stamped rise class is reached at the ambient that was read. */
function riseLimit(scope: MotorScope, plate: Plate, reading: Reading, method: Method): Ruling | undefined {
  const row = rowOf(scope, plate.temperatureRiseClass);
  if (!row || reading.ambientC === undefined) return undefined;
  const rise = inForce(scope, {
    id: `winding-rise-${row.thermalClass}`,
    value: row.riseK,
    unit: 'K',
    source: sourceOf(scope),
    status: row.status,
  });
  const allowed = reading.ambientC + rise.value + (method === 'embedded' ? DETECTOR_K : 0);
  return {
    limit: { ...rise, value: allowed, unit: '°C' },
    words: `rise of class ${row.thermalClass} at ${words(reading.ambientC)} °C ambient: ${words(allowed)} °C by ${methodWords(method)}`,
  };
}

function rowOf(scope: MotorScope, name: ThermalClass | undefined) {
  return scope.tables.classTemperatures.rows.find((entry) => entry.thermalClass === name);
}

function sourceOf(scope: MotorScope): string {
  const table = scope.tables.classTemperatures;
  return `${table.title} (${table.edition})`;
}

function methodWords(method: Method): string {
  return method === 'embedded' ? 'embedded detector' : 'resistance';
}
