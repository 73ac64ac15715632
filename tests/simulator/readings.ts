import type { World } from './beliefs';
import type { AtWork, Supply } from './operate';
import { type Cells, text } from './plate';
import type { Chance } from './random';

/** What was read together. */
export const READING_SETS = ['all', 'power-volts-amps', 'speed-volts', 'amps-volts', 'power-only'] as const;
export type ReadingSet = (typeof READING_SETS)[number];

/** Greatest permissible errors of the instruments at hand: per cent of the reading, r/min for speed. */
export interface Accuracy {
  readonly volts: number;
  readonly amps: number;
  readonly power: number;
  readonly rpm: number;
}

/** The study's own, which hold where a sheet says nothing. */
export const STUDY_ACCURACY: Accuracy = { volts: 0.5, amps: 1, power: 1, rpm: 1 };

/** One motor's instruments: their classes and the errors they really have, the same for every reading of the motor. */
export interface Instruments {
  readonly accuracy: Accuracy;
  readonly stated: boolean;
  readonly gain: { readonly volts: number; readonly amps: number; readonly power: number };
  readonly rpmOffset: number;
}

/** Classes as hand-held meters come (common practice), errors even within them. */
export function drawInstruments(chance: Chance, world: World): Instruments {
  const stated = chance.happens(world.instruments.stated);
  const accuracy = stated
    ? {
        volts: chance.pick([0.5, 1]),
        amps: chance.pick([1, 1.5, 2]),
        power: chance.pick(world.instruments.power),
        rpm: chance.pick([1, 1, 2]),
      }
    : STUDY_ACCURACY;
  const within = (percent: number) => 1 + chance.between(-percent, percent) / 100;
  return {
    accuracy,
    stated,
    gain: { volts: within(accuracy.volts), amps: within(accuracy.amps), power: within(accuracy.power) },
    rpmOffset: chance.between(-accuracy.rpm, accuracy.rpm),
  };
}

/** Repeatability at a steady load: the process breathes while the technician reads (common practice). */
const BREATH = { volts: 0.0008, amps: 0.0025, power: 0.0025, rpm: 0.2 };

/** The readings of a motor at work, by its instruments, rounded as displays show them. */
export function read(
  chance: Chance,
  set: ReadingSet,
  at: AtWork,
  supply: Supply,
  instruments: Instruments,
  breath: number,
): Cells {
  const { gain, accuracy } = instruments;
  const has = (...sets: readonly ReadingSet[]) => sets.includes(set);
  const volts = at.lineVolts.map((value) => value * gain.volts * (1 + chance.normal(0, breath * BREATH.volts)));
  const amps = at.amps.map((value) => value * gain.amps * (1 + chance.normal(0, breath * BREATH.amps)));
  const kilowatts = (at.input / 1000) * gain.power * (1 + chance.normal(0, breath * BREATH.power));
  const rpm = at.rpm + instruments.rpmOffset + chance.normal(0, breath * BREATH.rpm);
  const three = chance.happens(0.7);
  const voltDecimals = at.lineVolts[0] < 1000 && chance.happens(0.4) ? 1 : 0;
  const ampDecimals = at.amps[0] < 10 ? 2 : at.amps[0] < 200 ? 1 : 0;
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const withVolts = has('all', 'power-volts-amps', 'speed-volts', 'amps-volts');
  const withAmps = has('all', 'power-volts-amps', 'amps-volts');
  const withPower = has('all', 'power-volts-amps', 'power-only');
  const withSpeed = has('all', 'speed-volts');
  const phased = (prefix: string, suffix: string, names: readonly string[], values: readonly number[], decimals: number): Cells =>
    Object.fromEntries(values.map((value, i) => [`${prefix}_${names[i]}_${suffix}`, text(value, decimals)]));
  return {
    ...(withVolts &&
      (three ? phased('voltage', 'v', ['ab', 'bc', 'ca'], volts, voltDecimals) : { voltage_v: text(mean(volts), voltDecimals) })),
    ...(withAmps &&
      (three ? phased('current', 'a', ['a', 'b', 'c'], amps, ampDecimals) : { current_a: text(mean(amps), ampDecimals) })),
    ...(withPower && { input_power_kw: text(kilowatts, kilowatts < 10 ? 2 : kilowatts < 200 ? 1 : 0) }),
    ...(withSpeed && { shaft_speed_rpm: text(rpm, chance.happens(0.3) ? 1 : 0) }),
    ...(has('all') && chance.happens(0.3) && { frequency_hz: text(supply.frequency + chance.between(-0.005, 0.005), 2) }),
    ...(instruments.stated && {
      ...(withVolts && { voltage_accuracy_pct: text(accuracy.volts, 1) }),
      ...(withAmps && { current_accuracy_pct: text(accuracy.amps, 1) }),
      ...(withPower && { power_accuracy_pct: text(accuracy.power, 1) }),
      ...(withSpeed && { speed_accuracy_rpm: text(accuracy.rpm, 0) }),
    }),
  };
}
