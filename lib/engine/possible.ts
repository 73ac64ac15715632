import { LOAD } from './load/findings';
import type { Motor, Plate, Reading } from './motor';
import { PLATE } from './nameplate/findings';
import type { Finding } from './quantity/finding';

/** Fields of plate or reading that hold a plain number. */
type Numeric<T> = { [K in keyof T]-?: NonNullable<T[K]> extends number ? K : never }[keyof T];

/** What a field can hold in nature: at least `low` (above it where `above`), at most `high`. */
interface Rule<Field> {
  readonly field: Field;
  /** The fleet sheet's column. */
  readonly column: string;
  readonly low: number;
  readonly above?: boolean;
  readonly high?: number;
  /** True where the energy figures rest on it, so that trust is capped without it. */
  readonly bearsOnLoad?: boolean;
}

const positive = { low: 0, above: true } as const;
const notNegative = { low: 0 } as const;
const years = { low: 1880, high: 2200 } as const;
const temperature = { low: -100, high: 400 } as const;

/** Rules are gone through for every motor and reading: objects of one form are read faster. */
function ofOneForm<Field>(rules: readonly Rule<Field>[]): readonly Required<Rule<Field>>[] {
  return rules.map(({ field, column, low, above = false, high = Number.POSITIVE_INFINITY, bearsOnLoad = false }) => ({
    field,
    column,
    low,
    above,
    high,
    bearsOnLoad,
  }));
}

/** Rated values are not here: zero or less rejects the row, and what contradicts the plate has findings of its own. */
const PLATE_RULES = ofOneForm<Numeric<Plate>>([
  { field: 'serviceFactor', column: 'service_factor', ...positive },
  { field: 'statorResistanceOhm', column: 'stator_resistance_ohm', ...positive, bearsOnLoad: true },
  { field: 'statorResistanceTempC', column: 'stator_resistance_temp_c', ...temperature, bearsOnLoad: true },
  { field: 'noLoadCurrentA', column: 'no_load_current_a', ...positive, bearsOnLoad: true },
  { field: 'noLoadPowerKw', column: 'no_load_power_kw', ...positive, bearsOnLoad: true },
  { field: 'noLoadVoltageV', column: 'no_load_voltage_v', ...positive, bearsOnLoad: true },
  { field: 'frictionWindageKw', column: 'friction_windage_kw', ...notNegative, bearsOnLoad: true },
  { field: 'rewindCount', column: 'rewind_count', ...notNegative, bearsOnLoad: true },
  { field: 'yearBuilt', column: 'year_built', ...years, bearsOnLoad: true },
  { field: 'lastRewindYear', column: 'last_rewind_year', ...years },
  { field: 'drivenSpeedRpm', column: 'driven_speed_rpm', ...positive },
  { field: 'speedRatio', column: 'speed_ratio', ...positive },
  { field: 'peakLoadKw', column: 'peak_load_kw', ...notNegative },
  { field: 'loadInertiaKgm2', column: 'load_inertia_kgm2', ...notNegative },
  { field: 'startsPerHour', column: 'starts_per_hour', ...notNegative },
  { field: 'demandCoincidence', column: 'demand_coincidence', low: 0, high: 1 },
  { field: 'quotedPrice', column: 'quoted_price', ...notNegative },
  { field: 'quotedRepair', column: 'quoted_repair', ...notNegative },
  { field: 'unplannedStopCost', column: 'unplanned_stop_cost', ...notNegative },
]);

/** Input power is not here: a value of zero or less disqualifies the reading, with a finding of its own. */
const READING_RULES = ofOneForm<Numeric<Reading>>([
  { field: 'voltageV', column: 'voltage_v', ...positive, bearsOnLoad: true },
  { field: 'currentA', column: 'current_a', ...notNegative, bearsOnLoad: true },
  { field: 'powerFactorPct', column: 'power_factor_pct', low: -100, high: 100, bearsOnLoad: true },
  { field: 'frequencyHz', column: 'frequency_hz', ...positive, bearsOnLoad: true },
  { field: 'shaftSpeedRpm', column: 'shaft_speed_rpm', ...notNegative, bearsOnLoad: true },
  { field: 'ambientC', column: 'ambient_c', low: -60, high: 100, bearsOnLoad: true },
  { field: 'windingTempC', column: 'winding_temp_c', ...temperature, bearsOnLoad: true },
  { field: 'voltageAccuracyPct', column: 'voltage_accuracy_pct', ...notNegative, bearsOnLoad: true },
  { field: 'currentAccuracyPct', column: 'current_accuracy_pct', ...notNegative, bearsOnLoad: true },
  { field: 'powerAccuracyPct', column: 'power_accuracy_pct', ...notNegative, bearsOnLoad: true },
  { field: 'speedAccuracyRpm', column: 'speed_accuracy_rpm', ...notNegative, bearsOnLoad: true },
  { field: 'thdVoltagePct', column: 'thd_voltage_pct', ...notNegative },
  { field: 'thdCurrentPct', column: 'thd_current_pct', ...notNegative },
  { field: 'vibrationMmS', column: 'vibration_mm_s', ...notNegative },
  { field: 'vibrationAxialMmS', column: 'vibration_axial_mm_s', ...notNegative },
  { field: 'vibration1xMmS', column: 'vibration_1x_mm_s', ...notNegative },
  { field: 'vibration2xMmS', column: 'vibration_2x_mm_s', ...notNegative },
  { field: 'vibration2xlineMmS', column: 'vibration_2xline_mm_s', ...notNegative },
  { field: 'bearingEnvelopeG', column: 'bearing_envelope_g', ...notNegative },
  { field: 'insulationResistanceMohm', column: 'insulation_resistance_mohm', ...notNegative },
  { field: 'insulationTempC', column: 'insulation_temp_c', ...temperature },
  { field: 'insulationTestVoltageV', column: 'insulation_test_voltage_v', ...positive },
  { field: 'polarizationIndex', column: 'polarization_index', ...notNegative },
  { field: 'rotorSidebandDb', column: 'rotor_sideband_db', ...notNegative },
  { field: 'eccentricitySidebandDb', column: 'eccentricity_sideband_db', ...notNegative },
  { field: 'bearingTempC', column: 'bearing_temp_c', low: -60, high: 300 },
]);

/** Three values of one test, with the mean that falls away with them. */
const PHASES = [
  { field: 'voltagesV', mean: 'voltageV', columns: ['voltage_ab_v', 'voltage_bc_v', 'voltage_ca_v'], bearsOnLoad: true },
  { field: 'currentsA', mean: 'currentA', columns: ['current_a_a', 'current_b_a', 'current_c_a'], bearsOnLoad: true },
  {
    field: 'resistancesOhm',
    mean: undefined,
    columns: ['resistance_ab_ohm', 'resistance_bc_ohm', 'resistance_ca_ohm'],
    bearsOnLoad: false,
  },
] as const;

/** A motor without the values that nature does not allow, and what was left out. */
interface Possible {
  readonly motor: Motor;
  /** Findings that cap the trust in the energy figures, of the plate and by reading. */
  readonly plate: readonly Finding[];
  readonly readings: readonly (readonly Finding[])[];
  /** Findings about values on which no energy figure rests. */
  readonly others: readonly Finding[];
}

/**
 * Leaves out what cannot be: a negative resistance, a service factor of zero, an absolute zero undercut. Each value left out is a finding,
 * and counts as not known from there on. The same motor comes back where there is none.
 *
 * Units: those of the fields. Source: physical bounds of the fleet sheet's columns.
 */
export function leaveOutImpossible(motor: Motor): Possible {
  const capping: Finding[] = [];
  const others: Finding[] = [];
  const plate = cleaned(motor.plate, PLATE_RULES, (rule, value) => {
    (rule.bearsOnLoad ? capping : others).push(PLATE.make('plate-value-impossible', { column: rule.column, value }));
  });
  const byReading: Finding[][] = [];
  let changed = plate !== motor.plate;
  const readings = motor.readings.map((reading) => {
    const own: Finding[] = [];
    const { row } = reading;
    const say = (column: string, value: number, bearsOnLoad: boolean) => {
      (bearsOnLoad ? own : others).push(LOAD.make('reading-value-impossible', { row, column, value }));
    };
    const possible = cleaned(phasesOf(reading, say), READING_RULES, (rule, value) => say(rule.column, value, rule.bearsOnLoad));
    byReading.push(own);
    if (possible !== reading) changed = true;
    return possible;
  });
  return { motor: changed ? { ...motor, plate, readings } : motor, plate: capping, readings: byReading, others };
}

function cleaned<T extends object, K extends keyof T>(
  whole: T,
  rules: readonly Required<Rule<K>>[],
  say: (rule: Required<Rule<K>>, value: number) => void,
): T {
  let result = whole;
  for (const rule of rules) {
    const value = whole[rule.field];
    if (typeof value !== 'number') continue;
    if ((rule.above ? value > rule.low : value >= rule.low) && value <= rule.high) continue;
    say(rule, value);
    result = { ...result, [rule.field]: undefined };
  }
  return result;
}

/** Three phases of which one is impossible are no test. Zero amperes are possible: a blown fuse. */
function phasesOf(reading: Reading, say: (column: string, value: number, bearsOnLoad: boolean) => void): Reading {
  let result = reading;
  for (const { field, mean, columns, bearsOnLoad } of PHASES) {
    const values = reading[field];
    // Where all are zero the mean says it.
    if (!values || (mean && reading[mean] === 0)) continue;
    const at = values.findIndex((value) => (field === 'currentsA' ? value < 0 : value <= 0));
    if (at < 0) continue;
    say(columns[at] ?? field, values[at] ?? 0, bearsOnLoad);
    result = { ...result, [field]: undefined, ...(mean && { [mean]: undefined }) };
  }
  return result;
}
