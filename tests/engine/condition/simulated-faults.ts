import type { HypothesisId } from '@/lib/engine';
import type { Motor, Plate, Reading } from '@/lib/engine/motor';
import { Random } from '@/lib/features/demo/random';
import { buildTruth, truePoint } from '@/lib/features/demo/truth';

/**
 * Motors with faults planted in their physics, as a yardstick of the hypotheses: what the meters would show is drawn from what each fault does
 * (sizes by common practice), never from the table of likelihoods under test. Everything is invented.
 */

/** Readings of one sound motor that a fault may change. */
interface Shown {
  load: number;
  voltage: number;
  voltageUnbalance: number;
  /** Current unbalance that the voltages do not cause, per cent. */
  currentUnbalance: number;
  distortion: number;
  resistanceUnbalance: number;
  insulation: number;
  windingTemp: number;
  vibration: number;
  once: number;
  twice: number;
  axial: number;
  twiceLine: number;
  bearingTemp: number;
  envelopeRise: number;
  sideband: number;
  eccentricityFirst: number;
  eccentricityRise: number;
  beltSlip: number;
  powerFactorOfMeter: number;
}

function sound(random: Random): Shown {
  return {
    load: random.between(0.76, 0.92),
    voltage: 1 + 0.012 * random.normal(),
    voltageUnbalance: Math.abs(0.3 * random.normal()),
    currentUnbalance: Math.abs(1.5 * random.normal()),
    distortion: random.between(1, 4),
    resistanceUnbalance: Math.abs(0.5 * random.normal()),
    insulation: 10 ** random.between(2, 3.5),
    windingTemp: 105 + 8 * random.normal(),
    vibration: random.between(0.8, 2.2),
    once: random.between(0.4, 0.7),
    twice: random.between(0.1, 0.3),
    axial: random.between(0.2, 0.42),
    twiceLine: random.between(0.1, 0.3),
    bearingTemp: 60 + 7 * random.normal(),
    envelopeRise: random.between(0.8, 1.4),
    sideband: random.between(55, 66),
    eccentricityFirst: random.between(46, 58),
    eccentricityRise: 1.2 * random.normal(),
    beltSlip: random.between(1, 2),
    powerFactorOfMeter: 1,
  };
}

/** Single readings out of line, each as large as a fault would make it. */
const STRAYS: readonly ((shown: Shown, random: Random) => void)[] = [
  (s, r) => {
    s.voltageUnbalance = r.between(0.9, 2);
  },
  (s, r) => {
    s.currentUnbalance = r.between(8, 16);
  },
  (s, r) => {
    s.resistanceUnbalance = r.between(1.7, 3);
  },
  (s, r) => {
    s.insulation = r.between(3, 6);
  },
  (s, r) => {
    s.windingTemp = r.between(146, 160);
  },
  (s, r) => {
    s.vibration = r.between(2.9, 5);
  },
  (s, r) => {
    s.bearingTemp = r.between(90, 107);
  },
  (s, r) => {
    s.envelopeRise = r.between(1.7, 3);
  },
  (s, r) => {
    s.sideband = r.between(38, 47);
  },
  (s, r) => {
    s.eccentricityRise = r.between(4, 8);
  },
  (s, r) => {
    s.beltSlip = r.between(2.6, 4);
  },
  (s, r) => {
    s.powerFactorOfMeter = r.between(0.7, 0.85);
  },
];

type Plant = (shown: Shown, random: Random) => void;

/** What each fault does to the readings. */
export const FAULTS: Readonly<Record<HypothesisId, Plant>> = {
  supply: (s, r) => {
    const kind = r.next();
    if (kind < 0.5) s.voltageUnbalance = r.between(1.6, 4.5);
    else if (kind < 0.8) s.voltage = 1 + (r.next() < 0.5 ? -1 : 1) * r.between(0.11, 0.15);
    else s.distortion = r.between(9, 14);
    s.twiceLine += 0.1;
  },
  'overload-ventilation': (s, r) => {
    if (r.next() < 0.5) s.load = r.between(1.2, 1.3);
    s.windingTemp = r.between(158, 180);
  },
  'moisture-dirt': (s, r) => {
    s.insulation = 10 ** r.between(-0.5, 0.5);
    s.windingTemp += 5;
  },
  'stator-winding': (s, r) => {
    s.resistanceUnbalance = r.between(2.6, 7);
    s.currentUnbalance = r.between(11, 22);
    s.windingTemp += r.between(5, 25);
  },
  'rotor-cage': (s, r) => {
    s.sideband = r.between(29, 38);
    s.once = Math.min(0.9, s.once + 0.15);
  },
  eccentricity: (s, r) => {
    s.eccentricityRise = r.between(6.5, 14);
    s.twiceLine = r.between(0.4, 0.65);
    s.vibration = r.between(2.2, 4);
  },
  bearing: (s, r) => {
    s.vibration = r.between(3.2, 8);
    s.bearingTemp = r.between(88, 115);
    s.envelopeRise = r.between(2.2, 6);
  },
  'misalignment-soft-foot': (s, r) => {
    s.vibration = r.between(3, 7);
    s.twice = r.between(0.45, 0.7);
    s.axial = r.between(0.48, 0.8);
    s.bearingTemp += r.between(5, 20);
  },
  'belt-drive': (s, r) => {
    s.beltSlip = r.between(4, 9);
    s.vibration += r.between(0.3, 1);
    if (r.next() < 0.4) s.eccentricityRise = r.between(3.5, 8);
  },
  'driven-machine': (s, r) => {
    s.vibration = r.between(3.2, 7.5);
    s.once = r.between(0.83, 0.96);
  },
  'instrument-data': (s, r) => {
    s.powerFactorOfMeter = r.next() < 0.5 ? -1 : r.between(0.35, 0.55);
  },
};

const RATED_KW = 75 * 0.7457;
const BARS = 58;

const PLATE: Plate = {
  ratedPowerKw: RATED_KW,
  ratedPowerUnit: 'hp',
  status: 'running',
  ratedVoltageV: 460,
  ratedCurrentA: 87,
  ratedSpeedRpm: 1775,
  poles: 4,
  nominalEfficiencyPct: 94.1,
  machineKind: 'cage',
  enclosure: 'enclosed',
  designLetter: 'B',
  serviceFactor: 1.15,
  insulationClass: 'F',
  yearBuilt: 2001,
  foundation: 'rigid',
  rotorBars: BARS,
  rotorBarsSource: 'manufacturer',
  coupling: 'v-belt',
  speedRatio: 1.5,
  startsPerHour: 1,
  drivenMachine: 'fan',
};

/** Three values about a mean, the farthest so many per cent away. */
function tilted(mean: number, pct: number): readonly [number, number, number] {
  const d = (mean * pct) / 100;
  return [mean - d, mean + d / 2, mean + d / 2];
}

/**
 * A motor with a full set of readings and the faults given. `stray` is the chance of each of twelve readings to be out of line for a reason
 * that has nothing to do with the faults: a hot day, a loose clamp, another line.
 */
export function simulatedMotor(seed: number, faults: readonly HypothesisId[], stray: number): Motor {
  const random = new Random(seed);
  const shown = sound(random);
  for (const change of STRAYS) if (random.next() < stray) change(shown, random);
  for (const fault of faults) FAULTS[fault](shown, random);
  const cool = buildTruth({
    ratedPowerKw: RATED_KW,
    ratedVoltageV: 460,
    synchronousRpm: 1800,
    efficiency: 0.941,
    slip: 25 / 1800,
    magnetisingShare: 0.32,
    leakage: 0.17,
    shares: { stator: 0.34, core: 0.2, friction: 0.1, stray: 0.14 },
  });
  // Copper and aluminium at the winding's temperature: a sound one stands at about 105 °C.
  const heat = (234.5 + shown.windingTemp) / (234.5 + 105);
  const machine = { ...cool, r1: cool.r1 * heat, r2: cool.r2 * heat };
  const point = truePoint(machine, shown.load, shown.voltage);
  const meter = (value: number, pct: number) => value * (1 + (pct / 100) * random.between(-0.6, 0.6));
  const voltage = 460 * shown.voltage;
  const current = meter(point.currentA, 1);
  const base = { readingsAt: 'motor', readingCondition: 'coupled' } as const;
  const measured: Partial<Reading> = {
    voltageV: voltage,
    currentA: current,
    inputPowerKw: meter(point.inputPowerKw, 1) * shown.powerFactorOfMeter,
    shaftSpeedRpm: point.speedRpm + random.between(-0.5, 0.5),
  };
  const before = truePoint(cool, shown.load, shown.voltage);
  const first: Reading = {
    ...base,
    row: 2,
    takenAt: '2024-05-01',
    // A year before the winding ran as it should.
    ...measured,
    inputPowerKw: (Math.abs(measured.inputPowerKw ?? 0) * before.inputPowerKw) / point.inputPowerKw,
    currentA: (current * before.currentA) / point.currentA,
    shaftSpeedRpm: (measured.shaftSpeedRpm ?? 0) + before.speedRpm - point.speedRpm,
    eccentricitySidebandDb: shown.eccentricityFirst,
    bearingEnvelopeG: 0.8,
  };
  const latest: Reading = {
    ...base,
    row: 3,
    takenAt: '2025-05-01',
    ...measured,
    voltagesV: tilted(voltage, shown.voltageUnbalance),
    currentsA: tilted(current, 8 * shown.voltageUnbalance + shown.currentUnbalance),
    thdVoltagePct: shown.distortion,
    frequencyHz: 60,
    windingTempC: shown.windingTemp,
    windingTempMethod: 'embedded',
    ambientC: 25,
    resistancesOhm: tilted(0.06, shown.resistanceUnbalance),
    resistanceAt: 'motor',
    insulationResistanceMohm: shown.insulation,
    insulationTempC: 30,
    vibrationMmS: shown.vibration,
    vibration1xMmS: shown.vibration * shown.once,
    vibration2xMmS: shown.vibration * shown.twice,
    vibrationAxialMmS: shown.vibration * shown.axial,
    vibration2xlineMmS: shown.vibration * shown.twiceLine,
    bearingTempC: shown.bearingTemp,
    bearingEnvelopeG: 0.8 * shown.envelopeRise,
    rotorSidebandDb: shown.sideband,
    eccentricitySidebandDb: shown.eccentricityFirst - shown.eccentricityRise,
  };
  const drivenSpeedRpm = (point.speedRpm / 1.5) * (1 - shown.beltSlip / 100);
  return {
    site: 'Simulated',
    tag: `${seed}`,
    plate: { ...PLATE, drivenSpeedRpm },
    hoursPerYear: 6000,
    readings: [first, latest],
  };
}
