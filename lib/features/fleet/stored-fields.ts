import type { Plate, Reading } from '@/lib/engine';

/**
 * Which table keeps which fact of a motor. The records name every key, so that a fact added to the engine's motor does not compile
 * until it has a place; columns have the name of the key unless the mapping in `stored-motor.ts` says otherwise.
 */

type PlateHome = 'motor' | 'money' | 'load';

const PLATE_HOME: Record<keyof Plate, PlateHome> = {
  ratedPowerKw: 'motor',
  ratedPowerUnit: 'motor',
  status: 'motor',
  ratedVoltageV: 'motor',
  ratedCurrentA: 'motor',
  ratedSpeedRpm: 'motor',
  ratedFrequencyHz: 'motor',
  poles: 'motor',
  nominalEfficiencyPct: 'motor',
  ratedPowerFactorPct: 'motor',
  efficiencyClass: 'motor',
  machineKind: 'motor',
  enclosure: 'motor',
  designLetter: 'motor',
  codeLetter: 'motor',
  serviceFactor: 'motor',
  insulationClass: 'motor',
  temperatureRiseClass: 'motor',
  winding: 'motor',
  insulationSystem: 'motor',
  mounting: 'motor',
  hazardousLocation: 'motor',
  foundation: 'motor',
  altitudeM: 'motor',
  frame: 'motor',
  yearBuilt: 'motor',
  rotorBars: 'motor',
  statorSlots: 'motor',
  rotorBarsSource: 'motor',
  rewindCount: 'motor',
  lastRewindYear: 'motor',
  statorResistanceOhm: 'motor',
  statorResistanceTempC: 'motor',
  noLoadCurrentA: 'motor',
  noLoadPowerKw: 'motor',
  noLoadVoltageV: 'motor',
  frictionWindageKw: 'motor',
  quotedPrice: 'money',
  quotedRepair: 'money',
  unplannedStopCost: 'money',
  drivenMachine: 'load',
  loadTorqueExponent: 'load',
  loadCurve: 'load',
  flowControl: 'load',
  coupling: 'load',
  driveFed: 'load',
  drivenSpeedRpm: 'load',
  speedRatio: 'load',
  peakLoadKw: 'load',
  loadInertiaKgm2: 'load',
  startsPerHour: 'load',
  schedule: 'load',
  demandCoincidence: 'load',
  standby: 'load',
};

type ReadingHome = 'plain' | 'voltages' | 'currents' | 'resistances' | 'lines' | 'note' | 'duty';

const READING_HOME: Record<Exclude<keyof Reading, 'row'>, ReadingHome> = {
  takenAt: 'plain',
  readingsAt: 'plain',
  readingCondition: 'plain',
  takenBy: 'plain',
  instrument: 'plain',
  voltagesV: 'voltages',
  voltageV: 'plain',
  currentsA: 'currents',
  currentA: 'plain',
  inputPowerKw: 'plain',
  powerFactorPct: 'plain',
  frequencyHz: 'plain',
  shaftSpeedRpm: 'plain',
  ambientC: 'plain',
  windingTempC: 'plain',
  windingTempMethod: 'plain',
  thdVoltagePct: 'plain',
  thdCurrentPct: 'plain',
  voltageAccuracyPct: 'plain',
  currentAccuracyPct: 'plain',
  powerAccuracyPct: 'plain',
  speedAccuracyRpm: 'plain',
  vibrationMmS: 'plain',
  vibrationAxialMmS: 'plain',
  vibration1xMmS: 'plain',
  vibration2xMmS: 'plain',
  vibration2xlineMmS: 'plain',
  bearingEnvelopeG: 'plain',
  insulationResistanceMohm: 'plain',
  insulationTempC: 'plain',
  insulationTestVoltageV: 'plain',
  polarizationIndex: 'plain',
  resistancesOhm: 'resistances',
  resistanceAt: 'plain',
  rotorSidebandDb: 'plain',
  rotorSidebandSides: 'plain',
  eccentricitySidebandDb: 'plain',
  observedLinesHz: 'lines',
  spectrumResolutionHz: 'plain',
  bearingTempC: 'plain',
  note: 'note',
  duty: 'duty',
};

function keysOf<Key extends string, Home extends string>(homes: Record<Key, Home>, home: Home): readonly string[] {
  return Object.entries(homes).flatMap(([key, of]) => (of === home ? [key] : []));
}

/** Facts of the plate kept in table Motor under their own name. */
export const MOTOR_FACTS = keysOf(PLATE_HOME, 'motor');
/** Amounts of the plate kept in table Motor as whole minor units, in a column named `…Minor`. */
export const MOTOR_MONEY = keysOf(PLATE_HOME, 'money');
/** Facts of the plate kept in table DrivenLoad under their own name. */
export const LOAD_FACTS = keysOf(PLATE_HOME, 'load');
/** Facts of a reading kept in table Reading under their own name. */
export const READING_FACTS = keysOf(READING_HOME, 'plain');
/** Every fact of the plate. */
export const PLATE_KEYS: readonly string[] = Object.keys(PLATE_HOME);

/** Every fact of a reading. */
export const READING_KEYS: readonly string[] = Object.keys(READING_HOME);

/** Three phase values of a reading and the columns that keep them. */
export const TRIPLES = [
  { key: 'voltagesV', columns: ['voltageAbV', 'voltageBcV', 'voltageCaV'] },
  { key: 'currentsA', columns: ['currentAA', 'currentBA', 'currentCA'] },
  { key: 'resistancesOhm', columns: ['resistanceAbOhm', 'resistanceBcOhm', 'resistanceCaOhm'] },
] as const;

/** Lengths of the line geometry kept in table DrivenLoad under their own name. */
export const LOAD_LENGTHS = ['beltLengthMm', 'motorSheaveMm', 'drivenSheaveMm'] as const;
