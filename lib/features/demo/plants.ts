import type { Reading } from '@/lib/engine';
import { mean } from './make-motor';
import { all, latest, type Plant, plate } from './plant';

const without = (...names: readonly (keyof Reading)[]) =>
  latest(() => Object.fromEntries(names.map((name) => [name, undefined])) as Partial<Reading>);

const volts =
  (factor: number) =>
  (reading: Reading): Partial<Reading> => {
    const scaled = (reading.voltagesV ?? [460, 460, 460]).map((value) => Math.round(value * factor * 10) / 10) as [
      number,
      number,
      number,
    ];
    return { voltagesV: scaled, voltageV: mean(scaled) };
  };

const power = (change: (kw: number) => number) =>
  latest((reading) => ({ inputPowerKw: Math.round(change(reading.inputPowerKw ?? 10) * 100) / 100 }));

const aged = (years: number) =>
  latest((reading) => {
    const [year = '2020', month = '01'] = (reading.takenAt ?? '').split('-');
    // The first of a month exists in every year.
    return { takenAt: `${Number(year) - years}-${month}-01T10:00` };
  });

const negativeCurrents = latest((reading) => ({
  currentsA: undefined,
  currentA: -(reading.currentA ?? 30),
}));

/** Mistakes on plates and in readings. */
export const DATA_PLANTS: readonly Plant[] = [
  { tag: 'A-1', story: 'efficiency typed as a fraction', change: plate({ nominalEfficiencyPct: 0.917 }) },
  { tag: 'A-2', story: 'the frame number written for the efficiency', change: plate({ nominalEfficiencyPct: 32.6 }) },
  { tag: 'H-19', story: 'the class word of the motor beside it', change: plate({ efficiencyClass: 'premium' }) },
  { tag: 'A-3', story: 'power factor typed as a fraction', change: plate({ ratedPowerFactorPct: 0.84 }) },
  { tag: 'A-4', story: 'a leading power factor on a cage motor', change: plate({ ratedPowerFactorPct: -84 }) },
  { tag: 'A-5', story: 'pole pairs written for poles', change: (motor) => plate({ poles: (motor.plate.poles ?? 4) * 2 })(motor) },
  {
    tag: 'H-1',
    story: 'neither poles nor speed on a painted-over plate',
    change: all(plate({ poles: undefined, ratedSpeedRpm: undefined }), without('shaftSpeedRpm')),
  },
  {
    tag: 'A-6',
    story: 'synchronous speed written for rated speed',
    change: (motor) => plate({ ratedSpeedRpm: 7200 / (motor.plate.poles ?? 4) })(motor),
  },
  {
    tag: 'A-7',
    story: 'rated speed of another motor',
    change: (motor) => plate({ ratedSpeedRpm: (7200 / (motor.plate.poles ?? 4)) * 0.93 })(motor),
  },
  {
    tag: 'A-8',
    story: 'amperes of the 230 V connection',
    change: (motor) => plate({ ratedCurrentA: (motor.plate.ratedCurrentA ?? 50) * 2 })(motor),
  },
  {
    tag: 'A-9',
    story: 'a misread current',
    change: (motor) => plate({ ratedCurrentA: Math.round((motor.plate.ratedCurrentA ?? 50) * 1.48) })(motor),
  },
  {
    tag: 'A-10',
    story: 'resistance measured through the whole cable',
    change: plate({ statorResistanceOhm: 6.2, statorResistanceTempC: 24 }),
  },
  {
    tag: 'A-11',
    story: 'a no-load test with the coupling still on',
    change: (motor) =>
      plate({
        noLoadPowerKw: motor.plate.ratedPowerKw * 0.2,
        noLoadCurrentA: (motor.plate.ratedCurrentA ?? 50) * 0.4,
        noLoadVoltageV: 460,
      })(motor),
  },
  { tag: 'A-12', story: 'a minus before the friction of a test', change: plate({ frictionWindageKw: -0.4 }) },
  { tag: 'A-13', story: 'clamps the wrong way round, noted as a negative current', change: negativeCurrents },
  { tag: 'A-14', story: 'the tenths of a frequency without their point', change: latest(() => ({ frequencyHz: 599 })) },
  {
    tag: 'U-1',
    story: 'a synchronous motor among the refiners',
    change: plate({ machineKind: 'synchronous', ratedPowerFactorPct: -80, poles: 4, ratedSpeedRpm: 1800 }),
  },
  { tag: 'M-1', story: 'rewound twice', change: plate({ rewindCount: 2, lastRewindYear: 2009 }) },
  { tag: 'B-1', story: 'a reversed current transformer', change: power((kw) => -kw * 0.3) },
  {
    tag: 'B-2',
    story: 'power noted in horsepower',
    change: all(
      power((kw) => kw * 5),
      without('currentsA', 'currentA'),
    ),
  },
  {
    tag: 'C-1',
    story: 'one of two conductors clamped',
    change: latest((reading) => ({ currentsA: undefined, currentA: (reading.currentA ?? 20) / 2.4 })),
  },
  {
    tag: 'C-2',
    story: 'one current sensor off',
    change: all(
      power((kw) => kw * 0.03),
      without('currentsA', 'currentA'),
    ),
  },
  { tag: 'C-3', story: 'a power factor from another moment', change: latest(() => ({ powerFactorPct: 97 })) },
  { tag: 'C-4', story: 'power factor read as a fraction', change: latest(() => ({ powerFactorPct: 0.71 })) },
  { tag: 'D-1', story: 'voltage read to neutral', change: latest(volts(1 / Math.sqrt(3))) },
  { tag: 'D-2', story: 'voltage of another board', change: latest(volts(1.25)) },
  { tag: 'D-3', story: 'voltage not read', change: without('voltagesV', 'voltageV') },
  {
    tag: 'E-1',
    story: 'swapped digits in the speed',
    change: latest((_, motor) => ({ shaftSpeedRpm: Math.round((7200 / (motor.plate.poles ?? 4)) * 1.04) })),
  },
  {
    tag: 'E-2',
    story: 'the fan’s speed behind the belt',
    change: latest((_, motor) => ({ shaftSpeedRpm: Math.round((7200 / (motor.plate.poles ?? 4)) * 0.62) })),
  },
  {
    tag: 'S-1',
    story: 'a lathe running free',
    change: all(
      power((kw) => kw * 0.45),
      latest((reading) => ({ currentsA: undefined, currentA: (reading.currentA ?? 6) * 0.55, shaftSpeedRpm: undefined })),
    ),
  },
  {
    tag: 'E-3',
    story: 'amperes far above what the motor could carry',
    change: latest((_, motor) => ({
      inputPowerKw: undefined,
      currentsA: undefined,
      currentA: (motor.plate.ratedCurrentA ?? 60) * 1.9,
    })),
  },
  {
    tag: 'E-4',
    story: 'a strobe locked near synchronous speed',
    change: latest((_, motor) => ({ shaftSpeedRpm: Math.round((7200 / (motor.plate.poles ?? 4)) * 0.9985) })),
  },
  {
    tag: 'F-1',
    story: 'read behind the drive, with its frequency',
    change: latest(() => ({ readingsAt: 'drive-output' as const, frequencyHz: 54 })),
  },
  { tag: 'K-1', story: 'read with the coupling off', change: latest(() => ({ readingCondition: 'uncoupled' as const })) },
  {
    tag: 'K-2',
    story: 'only vibration was read',
    change: all(
      without('voltagesV', 'voltageV', 'currentsA', 'currentA', 'inputPowerKw', 'shaftSpeedRpm', 'frequencyHz'),
      latest(() => ({ vibrationMmS: 1.9 })),
    ),
  },
  { tag: 'K-3', story: 'never measured', change: (motor) => ({ ...motor, readings: [] }) },
  {
    tag: 'L-1',
    story: 'the latest reading impossible, an older one good',
    change: (motor) => ({
      ...motor,
      readings: motor.readings.flatMap((reading) => [
        { ...reading, takenAt: '2024-03-05T09:10' },
        {
          ...reading,
          row: reading.row + 5000,
          inputPowerKw: -3.2,
          currentsA: undefined,
          currentA: undefined,
          shaftSpeedRpm: undefined,
        },
      ]),
    }),
  },
  { tag: 'L-2', story: 'last read nine years ago', change: aged(9) },
  { tag: 'M-2', story: 'no date on the slip of paper', change: without('takenAt') },
  { tag: 'M-3', story: 'a date in the future', change: aged(-3) },
  { tag: 'M-4', story: 'only power was read', change: without('currentsA', 'currentA', 'shaftSpeedRpm') },
  {
    tag: 'S-2',
    story: 'lightly loaded, current alone beside power',
    change: all(
      power((kw) => kw * 0.6),
      without('shaftSpeedRpm'),
    ),
  },
  {
    tag: 'N-1',
    story: 'overloaded by a leaking valve',
    change: (motor) =>
      latest(() => ({
        inputPowerKw: Math.round(((motor.plate.ratedPowerKw * 1.12) / 0.93) * 100) / 100,
        currentsA: undefined,
        currentA: undefined,
        shaftSpeedRpm: undefined,
      }))(motor),
  },
];
