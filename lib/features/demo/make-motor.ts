import type { Enclosure, Motor, Plate, Reading } from '@/lib/engine';
import { kilowattsOf } from '../fleet/rated-power';
import type { Random } from './random';
import { DEMO_SITE, type MotorGroup } from './scenario';
import { buildTruth, type TrueMachine, truePoint } from './truth';

/** A demo motor with what nobody on site knows: its true machine and load. */
export interface DemoMotor {
  readonly motor: Motor;
  readonly truth: {
    readonly machine: TrueMachine;
    readonly loadFraction: number;
    readonly shaftPowerKw: number;
    readonly efficiency: number;
  };
}

/** Everything drawn for one motor before its plate and readings are written. */
interface Draft {
  readonly group: MotorGroup;
  readonly tag: string;
  readonly year: number;
  readonly poles: number;
  readonly machine: TrueMachine;
  readonly loadFraction: number;
  readonly voltageRatio: number;
  readonly enclosure: Enclosure;
  readonly takenAt: string;
}

/** Draws the machine: efficiency by size and year with a spread of the loss, slip, magnetising share and loss shares within published ranges. */
export function draft(random: Random, group: MotorGroup, index: number, takenAt: string): Draft {
  const hp = random.pick(group.horsepower);
  const poles = random.pick(group.poles);
  const year = Math.round(random.between(group.years[0], group.years[1]));
  const ratedPowerKw = kilowattsOf(hp);
  const premium = 1 - 0.14 * ratedPowerKw ** -0.26 - (poles > 4 ? 0.006 : 0);
  const behind = year < 1984 ? 1.5 : year < 1998 ? 1.33 : year < 2011 ? 1.17 : 1;
  const efficiency = 1 - (1 - premium) * behind * (1 + 0.07 * random.normal());
  const weights = {
    stator: random.between(0.28, 0.4),
    core: random.between(0.16, 0.24),
    friction: random.between(0.05, 0.13),
    stray: random.between(0.09, 0.17),
  };
  const rotorShare = random.between(0.16, 0.24);
  const scale = (1 - rotorShare) / (weights.stator + weights.core + weights.friction + weights.stray);
  const machine = buildTruth({
    ratedPowerKw,
    ratedVoltageV: group.voltage,
    synchronousRpm: 7200 / poles,
    efficiency,
    slip: rotorShare * (1 / efficiency - 1) * random.between(0.92, 1.08),
    magnetisingShare: random.between(0.26, 0.36) + (poles - 2) * 0.025 + (hp < 10 ? 0.06 : 0),
    leakage: random.between(0.14, 0.2),
    shares: {
      stator: weights.stator * scale,
      core: weights.core * scale,
      friction: weights.friction * scale,
      stray: weights.stray * scale,
    },
  });
  return {
    group,
    tag: `${group.letter}-${index + 1}`,
    year,
    poles,
    machine,
    loadFraction: random.between(group.load[0], group.load[1]),
    voltageRatio: 1 + 0.015 * random.normal(),
    enclosure: group.area === 'Workshop' || random.next() < 0.25 ? 'open' : 'enclosed',
    takenAt,
  };
}

/** The steps on which US plates stamp efficiency, from about 82 to 96.5 % (NEMA MG 1 table 12-10). */
const STEPS = [
  82.5, 84, 85.5, 86.5, 87.5, 88.5, 89.5, 90.2, 91, 91.7, 92.4, 93, 93.6, 94.1, 94.5, 95, 95.4, 95.8, 96.2, 96.5,
] as const;

/** The plate as its maker stamped it: rounded, on the ladder of efficiencies, with the tolerance that makers use. */
export function plateOf(random: Random, draw: Draft): Plate {
  const rated = truePoint(draw.machine, 1, 1);
  const believed = rated.efficiency + (1 - rated.efficiency) * 0.05 * random.normal();
  const stamped = STEPS.reduce(
    (best, step) => (Math.abs(step / 100 - believed) < Math.abs(best / 100 - believed) ? step : best),
    STEPS[0] as number,
  );
  const old = draw.year < 1984;
  const slipRpm = draw.machine.synchronousRpm - rated.speedRpm;
  const speed = Math.round((draw.machine.synchronousRpm - slipRpm * (1 + 0.06 * random.normal())) / 5) * 5;
  return {
    ratedPowerKw: draw.machine.ratedPowerKw,
    ratedPowerUnit: 'hp',
    status: 'running',
    ratedVoltageV: draw.group.voltage,
    ratedCurrentA: Number((rated.currentA * (1 + 0.02 * random.normal())).toPrecision(3)),
    ratedSpeedRpm: Math.min(speed, draw.machine.synchronousRpm - 5),
    poles: draw.poles,
    machineKind: draw.group.kind ?? 'cage',
    enclosure: draw.enclosure,
    designLetter: 'B',
    insulationClass: old ? 'B' : 'F',
    temperatureRiseClass: 'B',
    serviceFactor: 1.15,
    yearBuilt: draw.year,
    mounting: 'foot',
    foundation: 'rigid',
    ...(old && random.next() < 0.6 ? {} : { nominalEfficiencyPct: stamped }),
    ...(random.next() < 0.5 ? { ratedPowerFactorPct: Math.round(rated.powerFactor * 1000) / 10 } : {}),
    ...(draw.year < 1964 ? { frame: '286U' } : {}),
    drivenMachine: draw.group.machine,
    flowControl: draw.group.flow,
    coupling: draw.group.coupling,
    ...(draw.group.driveFed ? { driveFed: true } : {}),
    ...(draw.group.stopCost === undefined ? {} : { unplannedStopCost: draw.group.stopCost }),
    ...(draw.group.standby ? { standby: true } : {}),
  };
}

/** A round's reading: what the meters of one analyser and one tachometer show at the true load, with their errors and rounding. */
export function readingOf(random: Random, draw: Draft, row: number): Reading {
  const point = truePoint(draw.machine, draw.loadFraction, draw.voltageRatio);
  const volts = draw.voltageRatio * draw.group.voltage * (1 + 0.001 * random.normal());
  const spread = 0.002 * random.normal();
  const voltagesV = [
    round(volts * (1 + spread), 1),
    round(volts * (1 - spread / 2), 1),
    round(volts * (1 - spread / 2), 1),
  ] as const;
  const amps = point.currentA * (1 + 0.004 * random.normal());
  const tilt = 7 * spread;
  const currentsA = [round(amps * (1 + tilt), 1), round(amps * (1 - tilt / 2), 1), round(amps * (1 - tilt / 2), 1)] as const;
  return {
    row,
    takenAt: draw.takenAt,
    readingsAt: draw.group.driveFed ? 'drive-input' : 'starter',
    readingCondition: 'coupled',
    takenBy: 'round crew (invented)',
    instrument: 'analyser 1',
    ...(draw.group.driveFed
      ? {}
      : {
          voltagesV,
          voltageV: mean(voltagesV),
          currentsA,
          currentA: mean(currentsA),
          shaftSpeedRpm: round(point.speedRpm + 0.5 * random.normal(), 0),
        }),
    inputPowerKw: round(
      (draw.group.driveFed ? point.inputPowerKw / 0.96 : point.inputPowerKw) * (1 + 0.004 * random.normal()),
      2,
    ),
    frequencyHz: round(60 + 0.008 * random.normal(), 2),
    ambientC: round(26 + 4 * random.normal(), 0),
    ...(random.next() < 0.6 ? { vibrationMmS: round(random.between(0.6, 2.4), 1) } : {}),
  };
}

/** Offline tests that a share of the motors had at their last outage. */
export function offlineTests(random: Random, draw: Draft): Partial<Reading> {
  const resistance = (0.9 * draw.machine.r1 * draw.group.voltage ** 2) / (draw.machine.baseKva * 1000);
  const pairs = [1 + 0.004 * random.normal(), 1 + 0.004 * random.normal(), 1 + 0.004 * random.normal()].map((factor) =>
    Number((2 * resistance * factor).toPrecision(4)),
  );
  return {
    insulationResistanceMohm: round(random.between(180, 1600), 0),
    insulationTempC: 25,
    insulationTestVoltageV: draw.group.voltage > 1000 ? 1000 : 500,
    resistancesOhm: [pairs[0] ?? resistance, pairs[1] ?? resistance, pairs[2] ?? resistance],
    resistanceAt: 'motor',
  };
}

function round(value: number, digits: number): number {
  const factor = 10 ** digits;
  return Math.round(value * factor) / factor;
}

/** Mean of three, as the parser computes it. */
export function mean(values: readonly [number, number, number]): number {
  return (values[0] + values[1] + values[2]) / 3;
}

/** The motor as the sheet would hold it. */
export function motorOf(draw: Draft, plate: Plate, hoursPerYear: number, readings: readonly Reading[]): Motor {
  return { site: DEMO_SITE, area: draw.group.area, tag: draw.tag, description: draw.group.what, plate, hoursPerYear, readings };
}
