import type { Motor } from '@/lib/engine';
import { mean } from './make-motor';
import { all, latest, type Plant, plate } from './plant';

/** Three values whose largest deviation from their mean is so many per cent. */
function tilted(middle: number, pct: number, digits: number): readonly [number, number, number] {
  const cut = (value: number) => Number(value.toFixed(digits));
  const d = (middle * pct) / 100;
  return [cut(middle - d), cut(middle + d / 2), cut(middle + d / 2)];
}

const volts = (pct: number) =>
  latest((reading) => {
    const voltagesV = tilted(reading.voltageV ?? 460, pct, 1);
    return { voltagesV, voltageV: mean(voltagesV) };
  });

const amps = (pct: number) =>
  latest((reading) => {
    const currentsA = tilted(reading.currentA ?? 50, pct, 1);
    return { currentsA, currentA: mean(currentsA) };
  });

/** A belt drive with its ratio and slip, the driven shaft read to 1 r/min. */
const driven = (speedRatio: number, slipPct: number) => (motor: Motor) => {
  const speed = motor.readings.at(-1)?.shaftSpeedRpm ?? 1780;
  return plate({ speedRatio, drivenSpeedRpm: Math.round((speed / speedRatio) * (1 - slipPct / 100)) })(motor);
};

/** A gear of 12 teeth on as many as bring the wheel closest to the pole-pass frequency of a motor on 60 Hz. */
const slowGear = (motor: Motor): Motor => {
  const shaft = (motor.readings.at(-1)?.shaftSpeedRpm ?? 1780) / 60;
  const polePass = 120 - (motor.plate.poles ?? 4) * shaft;
  return { ...motor, lineGeometry: { ...motor.lineGeometry, gearTeeth: [12, Math.round((12 * shaft) / polePass)] } };
};

/** Faults and doubtful readings of condition. */
export const CONDITION_PLANTS: readonly Plant[] = [
  { tag: 'G-1', story: 'a loose supply fuse', change: volts(6.2) },
  { tag: 'G-2', story: 'single-phase heaters on one phase', change: all(volts(1.7), amps(13)) },
  { tag: 'G-3', story: 'unbalance right at the limit', change: volts(1.0) },
  { tag: 'F-3', story: 'voltages read before the drive', change: volts(2.1) },
  { tag: 'D-4', story: 'a burnt contact in one phase', change: amps(21) },
  {
    tag: 'D-5',
    story: 'currents read without voltages',
    change: all(
      amps(5),
      latest(() => ({ voltagesV: undefined })),
    ),
  },
  { tag: 'R-1', story: 'currents at light load', change: amps(9) },
  {
    tag: 'D-6',
    story: 'a turn fault seen in the resistances',
    change: latest(() => ({ resistancesOhm: tilted(0.31, 4.4, 4), resistanceAt: 'motor' })),
  },
  {
    tag: 'D-7',
    story: 'resistances through cable and starter',
    change: latest(() => ({ resistancesOhm: tilted(0.42, 2.6, 4), resistanceAt: 'starter' })),
  },
  {
    tag: 'D-8',
    story: 'nobody noted where the meter was connected',
    change: latest(() => ({ resistancesOhm: tilted(0.4, 1, 4), resistanceAt: undefined })),
  },
  {
    tag: 'Q-1',
    story: 'water in the terminal box',
    change: latest(() => ({ insulationResistanceMohm: 1.6, insulationTempC: 31, insulationTestVoltageV: 500 })),
  },
  {
    tag: 'Q-2',
    story: 'no temperature at the insulation test',
    change: latest(() => ({ insulationResistanceMohm: 240, insulationTempC: undefined })),
  },
  {
    tag: 'S-3',
    story: 'an old winding of unknown make',
    change: all(
      plate({ yearBuilt: 1959, lastRewindYear: undefined }),
      latest(() => ({ insulationResistanceMohm: 45, insulationTempC: 22 })),
    ),
  },
  {
    tag: 'Q-3',
    story: 'tested on a winter morning',
    change: latest(() => ({ insulationResistanceMohm: 900, insulationTempC: 4 })),
  },
  {
    tag: 'U-2',
    story: 'form-wound and drying out',
    change: latest(() => ({ insulationResistanceMohm: 310, insulationTempC: 28, polarizationIndex: 1.6 })),
  },
  {
    tag: 'U-3',
    story: 'insulation too good for the index',
    change: latest(() => ({ insulationResistanceMohm: 9800, insulationTempC: 35, polarizationIndex: 1.3 })),
  },
  {
    tag: 'U-1',
    story: 'an index without the class',
    change: all(
      plate({ insulationClass: undefined }),
      latest(() => ({ polarizationIndex: 2.4 })),
    ),
  },
  { tag: 'Q-4', story: 'an index on a random-wound motor', change: latest(() => ({ polarizationIndex: 1.2 })) },
  { tag: 'E-5', story: 'a worn fan bearing', change: latest(() => ({ vibrationMmS: 6.8, bearingTempC: 108 })) },
  { tag: 'E-6', story: 'an unbalanced fan', change: latest(() => ({ vibrationMmS: 3.6, bearingTempC: 93 })) },
  {
    tag: 'E-7',
    story: 'vibration on a foundation nobody described',
    change: all(
      plate({ foundation: undefined }),
      latest(() => ({ vibrationMmS: 2.2 })),
    ),
  },
  { tag: 'H-2', story: 'vibration of a small motor', change: latest(() => ({ vibrationMmS: 2.9 })) },
  {
    tag: 'J-1',
    story: 'a cracked cage with counted bars',
    change: all(
      plate({ rotorBars: 44, rotorBarsSource: 'counted' }),
      latest(() => ({ rotorSidebandDb: 37.5 })),
    ),
  },
  {
    tag: 'N-2',
    story: 'a healthy cage, no bar count',
    change: latest(() => ({ rotorSidebandDb: 61, eccentricitySidebandDb: 52 })),
  },
  {
    tag: 'N-3',
    story: 'an estimated bar count',
    change: all(
      plate({ rotorBars: 52, rotorBarsSource: 'estimated' }),
      latest(() => ({ rotorSidebandDb: 39 })),
    ),
  },
  {
    tag: 'N-4',
    story: 'only one sideband seen',
    change: all(
      plate({ rotorBars: 48, rotorBarsSource: 'manufacturer' }),
      latest(() => ({ rotorSidebandDb: 38, rotorSidebandSides: 'one' })),
    ),
  },
  {
    tag: 'T-1',
    story: 'a signature read nearly idle',
    change: (motor) =>
      latest(() => ({
        inputPowerKw: Number((motor.plate.ratedPowerKw * 0.38).toFixed(2)),
        currentsA: undefined,
        currentA: undefined,
        shaftSpeedRpm: undefined,
        rotorSidebandDb: 44,
      }))(motor),
  },
  { tag: 'K-2', story: 'a signature without any load reading', change: latest(() => ({ rotorSidebandDb: 50 })) },
  {
    tag: 'E-8',
    story: 'a slipping belt that was tightened until it bent the shaft',
    change: all(
      driven(1.5, 5.2),
      latest(() => ({ eccentricitySidebandDb: 37, bearingTempC: 92 })),
    ),
  },
  { tag: 'E-11', story: 'a speed ratio noted the wrong way about', change: driven(1.4, -8) },
  {
    tag: 'G-8',
    story: 'a gear whose slow shaft turns at the pole-pass frequency',
    change: all(
      plate({ rotorBars: 44, rotorBarsSource: 'manufacturer' }),
      slowGear,
      latest(() => ({ rotorSidebandDb: 36, spectrumResolutionHz: 0.1 })),
    ),
  },
  { tag: 'G-7', story: 'a distorted supply beside rectifiers', change: latest(() => ({ thdVoltagePct: 7.2 })) },
  { tag: 'C-5', story: 'a mixer started too often', change: plate({ startsPerHour: 18 }) },
  { tag: 'D-3', story: 'starts of a slow motor that no table holds', change: plate({ startsPerHour: 2 }) },
  {
    tag: 'G-9',
    story: 'a coupling out of line',
    change: all(
      plate({ foundation: 'rigid' }),
      latest(() => ({ vibrationMmS: 5.1, vibration2xMmS: 3.2, vibrationAxialMmS: 3.4, vibration1xMmS: 2, bearingTempC: 84 })),
    ),
  },
  { tag: 'M-5', story: 'hot by its detectors', change: latest(() => ({ windingTempC: 158, windingTempMethod: 'embedded' })) },
  { tag: 'M-6', story: 'a warm frame', change: latest(() => ({ windingTempC: 68, windingTempMethod: 'surface' })) },
  {
    tag: 'M-7',
    story: 'a temperature by an unknown method',
    change: latest(() => ({ windingTempC: 112, windingTempMethod: undefined })),
  },
];
