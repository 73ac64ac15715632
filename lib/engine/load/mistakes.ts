import type { MotorScope } from '../context';
import { KILOWATTS_PER_HORSEPOWER } from '../formula/constants';
import type { Plate, Reading } from '../motor';

/** A value as it would have been without a mistake. `cost` is what the freedom taken costs in log-odds. */
export interface Proposal {
  readonly plate?: Plate;
  readonly reading: Reading;
  readonly cost: number;
}

/** A usual mistake in taking or writing a reading. */
export interface Mistake {
  readonly code: MistakeCode;
  /** The ways in which the reading may be mended; empty when the mistake is not possible here. */
  readonly propose: (reading: Reading, plate: Plate, scope: MotorScope) => readonly Proposal[];
  /** The reading without what the mistake touches; as it is where the plate is at fault. */
  readonly without: (reading: Reading) => Reading;
}

export type MistakeCode =
  | 'power-sensor-reversed'
  | 'power-sensor-missing'
  | 'power-in-horsepower'
  | 'power-in-watts'
  | 'voltage-not-the-motors'
  | 'current-of-a-winding'
  | 'current-of-half-the-conductors'
  | 'stamped-current-not-the-motors'
  | 'speed-digits-swapped'
  | 'speed-of-another-shaft'
  | 'poles-not-the-motors'
  | 'read-uncoupled'
  | 'plate-of-another-motor';

/** Mistakes that turn the power of a motor into that of another load. Watts for kilowatts do not: no motor takes a thousandth. */
export const POWER_MISTAKES = [
  'power-sensor-reversed',
  'power-sensor-missing',
  'power-in-horsepower',
] as const satisfies MistakeCode[];
export type PowerMistake = (typeof POWER_MISTAKES)[number];

const withoutPower = (reading: Reading): Reading => ({ ...reading, inputPowerKw: undefined, powerFactorPct: undefined });
const withoutSpeed = (reading: Reading): Reading => ({ ...reading, shaftSpeedRpm: undefined });
const withoutCurrent = (reading: Reading): Reading => ({ ...reading, currentA: undefined, currentsA: undefined });
const withoutVoltage = (reading: Reading): Reading => ({ ...reading, voltageV: undefined, voltagesV: undefined });
const asItIs = (reading: Reading): Reading => reading;

const powers = (reading: Reading, ...values: readonly (number | undefined)[]): Proposal[] =>
  values.flatMap((value) =>
    value !== undefined && value > 0
      ? [{ reading: { ...reading, inputPowerKw: value, powerFactorPct: undefined }, cost: Math.log(values.length) }]
      : [],
  );

/** Apparent power, kVA, of a reading with volts and amperes. */
function apparent(reading: Reading): number | undefined {
  const { voltageV, currentA } = reading;
  return voltageV !== undefined && currentA !== undefined ? (Math.sqrt(3) * voltageV * currentA) / 1000 : undefined;
}

const times = <T extends readonly number[]>(values: T | undefined, factor: number): T | undefined =>
  values?.map((value) => value * factor) as unknown as T | undefined;

const scaledCurrent = (reading: Reading, factor: number): Reading => ({
  ...reading,
  currentA: reading.currentA === undefined ? undefined : reading.currentA * factor,
  currentsA: times(reading.currentsA, factor),
});

const scaledVoltage = (reading: Reading, factor: number): Reading => ({
  ...reading,
  voltageV: reading.voltageV === undefined ? undefined : reading.voltageV * factor,
  voltagesV: times(reading.voltagesV, factor),
});

/** Ln of how much wider a free value may lie than a meter reads: a slip known to 0.002 could be anywhere within about one. */
const FREE_VALUE = Math.log(1 / (Math.sqrt(2 * Math.PI) * 0.002));

/** Rating of the motor that stands there over that of the plate, where the plate is another motor’s: the same, or a few steps away. */
const OTHER_RATINGS = [1, 0.5, 2] as const;

/**
 * The usual mistakes of field readings (common practice), each with the value that it would have hidden.
 *
 * Two-element meters: one sensor reversed reads V I sin φ, one missing reads V I cos(30° ± φ). Meters of three elements read a third and two
 * thirds. Source: the two-wattmeter method, any textbook of electrical measurement.
 */
export const MISTAKES: readonly Mistake[] = [
  {
    code: 'power-sensor-reversed',
    without: withoutPower,
    propose: (reading) => {
      const read = reading.inputPowerKw;
      const s = apparent(reading);
      if (read === undefined) return [];
      const squared = s === undefined ? -1 : s * s - 3 * read * read;
      return powers(reading, squared > 0 ? Math.sqrt(squared) : undefined, Math.abs(read) * 3);
    },
  },
  {
    code: 'power-sensor-missing',
    without: withoutPower,
    propose: (reading) => {
      const read = reading.inputPowerKw;
      const s = apparent(reading);
      if (read === undefined || read <= 0) return [];
      const cosine = s === undefined ? 2 : (Math.sqrt(3) * read) / s;
      const angle = cosine <= 1 ? Math.acos(cosine) : undefined;
      const of = (shift: number) => {
        if (angle === undefined || s === undefined) return undefined;
        const phi = angle + shift;
        return phi > 0 && phi < Math.PI / 2 ? s * Math.cos(phi) : undefined;
      };
      return powers(reading, of(Math.PI / 6), of(-Math.PI / 6), read * 1.5);
    },
  },
  {
    code: 'power-in-horsepower',
    without: withoutPower,
    propose: (reading) =>
      reading.inputPowerKw === undefined ? [] : powers(reading, reading.inputPowerKw * KILOWATTS_PER_HORSEPOWER),
  },
  {
    code: 'power-in-watts',
    without: withoutPower,
    propose: (reading) => (reading.inputPowerKw === undefined ? [] : powers(reading, reading.inputPowerKw / 1000)),
  },
  {
    code: 'voltage-not-the-motors',
    without: withoutVoltage,
    propose: (reading) =>
      reading.voltageV === undefined
        ? []
        : [Math.sqrt(3), 1 / Math.sqrt(3), 2, 0.5].map((factor) => ({
            reading: scaledVoltage(reading, factor),
            cost: Math.log(4),
          })),
  },
  {
    code: 'current-of-a-winding',
    without: withoutCurrent,
    propose: (reading) =>
      reading.currentA === undefined
        ? []
        : [Math.sqrt(3), 1 / Math.sqrt(3)].map((factor) => ({ reading: scaledCurrent(reading, factor), cost: Math.log(2) })),
  },
  {
    code: 'current-of-half-the-conductors',
    without: withoutCurrent,
    propose: (reading) => (reading.currentA === undefined ? [] : [{ reading: scaledCurrent(reading, 2), cost: 0 }]),
  },
  {
    code: 'stamped-current-not-the-motors',
    without: asItIs,
    propose: (reading, plate) =>
      plate.ratedCurrentA === undefined
        ? []
        : [2, 0.5, undefined].map((factor) => ({
            reading,
            plate: {
              ...plate,
              ratedCurrentA: factor === undefined ? undefined : (plate.ratedCurrentA as number) * factor,
            },
            cost: factor === undefined ? Math.log(3) + 3 : Math.log(3),
          })),
  },
  {
    code: 'speed-digits-swapped',
    without: withoutSpeed,
    propose: (reading) =>
      swaps(reading.shaftSpeedRpm).map((speed, _, all) => ({
        reading: { ...reading, shaftSpeedRpm: speed },
        cost: Math.log(all.length),
      })),
  },
  {
    code: 'speed-of-another-shaft',
    without: withoutSpeed,
    // Resistance in a wound rotor's circuit slows it as well: there a slow shaft is no sign of another.
    propose: (reading, plate) =>
      reading.shaftSpeedRpm === undefined || plate.machineKind === 'wound-rotor'
        ? []
        : [{ reading: withoutSpeed(reading), cost: FREE_VALUE }],
  },
  {
    code: 'poles-not-the-motors',
    without: asItIs,
    propose: (reading, plate, scope) => {
      const speed = reading.shaftSpeedRpm;
      if (speed === undefined || plate.machineKind === 'synchronous') return [];
      const frequency = reading.frequencyHz ?? plate.ratedFrequencyHz ?? scope.settings.frequencyHz;
      const poles = 2 * Math.floor((60 * frequency) / speed);
      const stated = plate.poles ?? (plate.ratedSpeedRpm ? 2 * Math.floor((60 * frequency) / plate.ratedSpeedRpm) : undefined);
      if (poles < 2 || poles > 16 || stated === undefined || poles === stated) return [];
      return [{ reading, plate: { ...plate, poles, ratedSpeedRpm: undefined }, cost: Math.log(3) }];
    },
  },
  {
    code: 'read-uncoupled',
    without: (reading) => ({ ...reading, readingCondition: 'uncoupled' }),
    propose: (reading) => [{ reading: { ...reading, readingCondition: 'uncoupled' }, cost: 0 }],
  },
  {
    code: 'plate-of-another-motor',
    without: asItIs,
    propose: (reading, plate) => {
      const stamps = [plate.ratedCurrentA, plate.ratedSpeedRpm, plate.ratedPowerFactorPct, plate.nominalEfficiencyPct];
      const count = stamps.filter((stamp) => stamp !== undefined).length;
      if (count < 2) return [];
      const cost = 1.5 * count + Math.log(OTHER_RATINGS.length);
      return OTHER_RATINGS.map((factor) => ({
        reading,
        plate: {
          ...plate,
          ratedPowerKw: plate.ratedPowerKw * factor,
          ratedCurrentA: undefined,
          ratedSpeedRpm: undefined,
          ratedPowerFactorPct: undefined,
          nominalEfficiencyPct: undefined,
        },
        cost,
      }));
    },
  },
];

/** A speed with each pair of neighbouring digits swapped. */
function swaps(speed: number | undefined): number[] {
  if (speed === undefined || speed < 100) return [];
  const text = String(Math.round(speed));
  const found = new Set<number>();
  for (let i = 0; i + 1 < text.length; i++) {
    const swapped = text.slice(0, i) + text.charAt(i + 1) + text.charAt(i) + text.slice(i + 2);
    if (swapped !== text && !swapped.startsWith('0')) found.add(Number(swapped));
  }
  return [...found];
}
