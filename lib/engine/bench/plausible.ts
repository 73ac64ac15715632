import * as B from '../generated/bench';
import type { Finding } from '../quantity/finding';
import { BENCH } from './findings';
import type { BenchPlate, BenchPoint, BenchSections } from './test';
import { BENCH_COLUMN } from './usable-points';

type Field = Exclude<keyof BenchPoint, 'row'>;
type Section = keyof BenchSections;
/** Least and largest share of a base at which nobody wonders. */
type Range = readonly [low: number, high: number];

/** Efficiency times power factor of motors between these makes the rated current where none is stamped (own judgement). */
const EFFICIENCY_TIMES_FACTOR: Range = [0.3, 0.95];

/** Shares of rated voltage, current and output by section (own judgement: wide enough for any sound test of a cage motor). */
const SHARES: Readonly<Partial<Record<Section, Readonly<Partial<Record<Field, Range>>>>>> = {
  'rated-load': { voltageV: [0.85, 1.15], currentA: [0.6, 1.5], inputPowerKw: [0.7, 2.5] },
  load: { voltageV: [0.85, 1.15], currentA: [0.1, 2.5], inputPowerKw: [0.1, 3] },
  dynamometer: { voltageV: [0.85, 1.15], currentA: [0.05, 1.1], inputPowerKw: [0, 1] },
  'no-load': { voltageV: [0.05, 1.4], currentA: [0.01, 1.5], inputPowerKw: [0, 0.8] },
  'locked-rotor': { voltageV: [0.01, 1.1], currentA: [0.1, 10], inputPowerKw: [0, 15] },
  'rotor-removed': { voltageV: [0.01, 1.1], currentA: [0, 3] },
  'reverse-rotation': { voltageV: [0.01, 1.1], currentA: [0, 3] },
};

/** Limits in the reading's own unit, °C. */
const TEMPERATURES: Readonly<Partial<Record<Field, Range>>> = { windingTempC: [-30, 200], ambientC: [-30, 60] };
/** Stator loss at rated current over rated output by which a resistance is judged. */
const STATOR_SHARE: Range = [0.001, 0.35];
const FREQUENCY_SHARE: Range = [0.9, 1.1];
/** Room for the classes of three meters. */
const METERS = 1.03;
/** Temperature noted and by resistance may differ by this, K. */
const TEMPERATURE_ROOM = 15;

/**
 * Readings of a test that make one wonder, point by point: they need nothing but the plate, so that they can be named while the test is typed.
 *
 * Units: as in the bench test sheet. Valid for: low- and medium-voltage induction motors. What is impossible is refused where it is used;
 * nothing is left out here. Evidence holds row and column of each cell. Source: limits by own judgement; power against volt-amperes by definition.
 */
export function doubtfulReadings(sections: BenchSections, plate: BenchPlate, frequencyHz: number, copper: number): Finding[] {
  const cold = [...sections.cold, ...sections['rated-load']].find(
    (p) => p.resistanceOhm !== undefined && p.windingTempC !== undefined,
  );
  return (Object.keys(sections) as Section[]).flatMap((section) =>
    sections[section].flatMap((point) => [
      ...outOfRange(section, point, plate, frequencyHz),
      ...moreThanApparent(section, point),
      ...disagreeing(section, point, cold, copper),
    ]),
  );
}

function outOfRange(section: Section, point: BenchPoint, plate: BenchPlate, frequencyHz: number): Finding[] {
  const current = ratedCurrents(plate);
  const of = ([low, high]: Range, [least, most]: Range): Range => [low * least, high * most];
  const one = (value: number): Range => [value, value];
  const shares = SHARES[section] ?? {};
  const resistance = (share: number, amperes: number) => (1000 * share * plate.ratedPowerKw) / (1.5 * amperes ** 2);
  const limits: Partial<Record<Field, Range>> = {
    ...TEMPERATURES,
    ...(shares.voltageV && { voltageV: of(shares.voltageV, one(plate.ratedVoltageV)) }),
    ...(shares.currentA && { currentA: of(shares.currentA, current) }),
    ...(shares.inputPowerKw && { inputPowerKw: of(shares.inputPowerKw, one(plate.ratedPowerKw)) }),
    ...(section !== 'locked-rotor' && { frequencyHz: of(FREQUENCY_SHARE, one(frequencyHz)) }),
    resistanceOhm: [resistance(STATOR_SHARE[0], current[1]), resistance(STATOR_SHARE[1], current[0])],
  };
  return (Object.keys(limits) as Field[]).flatMap((field) => {
    const value = point[field];
    const limit = limits[field];
    if (value === undefined || limit === undefined || (value >= limit[0] && value <= limit[1])) return [];
    const evidence = { row: point.row, section, column: BENCH_COLUMN[field], value, low: limit[0], high: limit[1] };
    return [BENCH.make('bench-value-doubtful', evidence)];
  });
}

/** Least and largest rated current: the stamped one, else what output and voltage allow. */
function ratedCurrents({ ratedCurrentA, ratedPowerKw, ratedVoltageV }: BenchPlate): Range {
  if (ratedCurrentA !== undefined && ratedCurrentA > 0) return [ratedCurrentA, ratedCurrentA];
  const amperes = (product: number) => (1000 * ratedPowerKw) / (Math.sqrt(3) * ratedVoltageV * product);
  return [amperes(EFFICIENCY_TIMES_FACTOR[1]), amperes(EFFICIENCY_TIMES_FACTOR[0])];
}

function moreThanApparent(section: Section, { row, voltageV, currentA, inputPowerKw }: BenchPoint): Finding[] {
  if (voltageV === undefined || currentA === undefined || inputPowerKw === undefined) return [];
  if (!(voltageV > 0 && currentA > 0) || inputPowerKw <= 0) return [];
  if (B.bench_power_factor.f(inputPowerKw, voltageV, currentA) <= METERS) return [];
  const apparent = (Math.sqrt(3) * voltageV * currentA) / 1000;
  const column = BENCH_COLUMN.inputPowerKw;
  return [BENCH.make('bench-power-above-volt-amperes', { row, section, column, power: inputPowerKw, apparent })];
}

function disagreeing(section: Section, point: BenchPoint, cold: BenchPoint | undefined, copper: number): Finding[] {
  const { row, resistanceOhm: hot, windingTempC: noted } = point;
  const { resistanceOhm, windingTempC } = cold ?? {};
  if (cold?.row === row || hot === undefined || noted === undefined) return [];
  if (resistanceOhm === undefined || windingTempC === undefined || !(resistanceOhm > 0 && hot > 0)) return [];
  const by_resistance = B.temperature_by_resistance.f(hot, resistanceOhm, windingTempC, copper);
  if (Math.abs(by_resistance - noted) <= TEMPERATURE_ROOM) return [];
  const column = BENCH_COLUMN.windingTempC;
  return [BENCH.make('bench-temperatures-disagree', { row, section, column, noted, by_resistance })];
}
