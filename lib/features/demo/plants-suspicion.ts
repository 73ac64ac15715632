import { KILOWATTS_PER_HORSEPOWER, type Reading } from '@/lib/engine';
import { all, latest, type Plant, plate } from './plant';

const rounded = (value: number): number => Math.round(value * 100) / 100;
const power = (change: (kw: number, reading: Reading) => number) =>
  latest((reading) => ({ inputPowerKw: rounded(change(reading.inputPowerKw ?? 10, reading)) }));
const NO_CURRENT = { currentsA: undefined, currentA: undefined } as const;

/** Apparent power of three phases, kVA. */
const apparentPower = ({ voltageV = 460, currentA = 30 }: Reading): number => (Math.sqrt(3) * voltageV * currentA) / 1000;

/** What a two-element meter shows of kW with one sensor absent: V I cos(30° + φ). */
function withoutOneSensor(kw: number, reading: Reading): number {
  const kva = apparentPower(reading);
  return (kva * Math.cos(Math.acos(Math.min(1, kw / kva)) + Math.PI / 6)) / Math.sqrt(3);
}

/** What a two-element meter shows with one sensor turned round: V I sin φ. */
function withOneTurned(kw: number, reading: Reading): number {
  const kva = apparentPower(reading);
  return (kva * Math.sin(Math.acos(Math.min(1, kw / kva)))) / Math.sqrt(3);
}

/** A number as it reads with its first two digits exchanged. */
const firstDigitsSwapped = (value: number): number => {
  const text = String(Math.round(value));
  return Number(`${text.charAt(1)}${text.charAt(0)}${text.slice(2)}`);
};

/** Usual mistakes that the leftover disagreement gives away, and values that stay impossible whatever is supposed. */
export const SUSPICION_PLANTS: readonly Plant[] = [
  { tag: 'A-17', story: 'one sensor of a two-element meter missing', change: power(withoutOneSensor) },
  {
    tag: 'H-17',
    story: 'one sensor of a two-element meter turned round, and no tachometer at hand to give it away',
    change: all(
      power(withOneTurned),
      latest(() => ({ shaftSpeedRpm: undefined })),
    ),
  },
  { tag: 'A-19', story: 'a meter set to horsepower', change: power((kw) => kw / KILOWATTS_PER_HORSEPOWER) },
  { tag: 'G-8', story: 'watts written for kilowatts', change: power((kw) => kw * 1000) },
  {
    tag: 'G-6',
    story: 'amperes multiplied by √3 on paper',
    change: latest(({ currentA = 40 }) => ({ currentsA: undefined, currentA: rounded(currentA * Math.sqrt(3)) })),
  },
  {
    tag: 'E-14',
    story: 'amperes of the 575 V connection, no power factor on the plate',
    change: plate((own) => ({ ratedPowerFactorPct: undefined, ratedCurrentA: rounded((own.ratedCurrentA ?? 50) * 0.77) })),
  },
  {
    tag: 'G-10',
    story: 'two digits of the speed exchanged',
    change: latest(({ shaftSpeedRpm = 1780 }) => ({ shaftSpeedRpm: firstDigitsSwapped(shaftSpeedRpm) })),
  },
  {
    tag: 'W-3',
    story: 'poles and speed of another plate',
    change: plate(({ poles = 4 }) => ({ poles: poles + 2, ratedSpeedRpm: Math.round((7200 / (poles + 2)) * 0.985) })),
  },
  {
    tag: 'J-8',
    story: 'the plate of a much better motor, copied from the next row',
    change: plate((own) => ({
      nominalEfficiencyPct: 96.2,
      ratedPowerFactorPct: 92,
      ratedCurrentA: rounded((own.ratedPowerKw * 1000) / (Math.sqrt(3) * own.ratedVoltageV * 0.962 * 0.92)),
      ratedSpeedRpm: Math.round((7200 / (own.poles ?? 4)) * 0.9945),
    })),
  },
  {
    tag: 'K-5',
    story: 'all current sensors the wrong way round',
    change: power((kw) => -kw),
  },
  {
    tag: 'N-7',
    story: 'power of one moment, amperes of another',
    change: latest(({ currentA = 60 }) => ({
      currentsA: undefined,
      currentA: rounded(currentA * 0.4),
      shaftSpeedRpm: undefined,
    })),
  },
  {
    tag: 'C-8',
    story: 'read with the belt off, and written down as an ordinary reading',
    change: (motor) =>
      latest(() => ({
        ...NO_CURRENT,
        inputPowerKw: rounded(0.3 * motor.plate.ratedPowerKw * (100 / (motor.plate.nominalEfficiencyPct ?? 92) - 1)),
        shaftSpeedRpm: 7200 / (motor.plate.poles ?? 4) - 1,
      }))(motor),
  },
  {
    tag: 'R-8',
    story: 'a meter on its lowest range',
    change: (motor) =>
      latest(() => ({ ...NO_CURRENT, shaftSpeedRpm: undefined, inputPowerKw: rounded(motor.plate.ratedPowerKw * 0.021) }))(motor),
  },
  {
    tag: 'T-3',
    story: 'the speed of a high-slip crusher motor beside the efficiency of an ordinary one',
    change: plate(({ poles = 6 }) => ({ designLetter: 'D', ratedSpeedRpm: Math.round((7200 / poles) * 0.83) })),
  },
  {
    tag: 'H-15',
    story: 'short peaks near what the motor can pull at all',
    change: all(
      plate(() => ({ codeLetter: 'R' })),
      latest(() => ({
        duty: [
          { fraction: 1, hoursPerYear: 3000 },
          { fraction: 4.4, hoursPerYear: 20 },
        ],
      })),
    ),
  },
  {
    tag: 'H-12',
    story: 'per cent written for the fractions of a duty',
    change: latest(() => ({
      duty: [
        { fraction: 100, hoursPerYear: 3000 },
        { fraction: 60, hoursPerYear: 1500 },
      ],
    })),
  },
];
