import { beforeAll, describe, expect, it } from 'vitest';
import type { UnrankedMotor } from '@/lib/engine';
import { evaluateMotor } from '@/lib/engine/evaluate';
import { defaultSettings } from '@/lib/features/study/settings';
import { loadTables } from '@/lib/reference/load';
import { type Corrupted, corrupt } from '../simulator/corrupt';
import { type SimulatedMotor, simulateFleet } from '../simulator/fleet';
import { Chance } from '../simulator/random';
import { evaluateRows } from './support/simulated';
import { motorOf, study } from './support/study';

const READ = { voltageV: 460, shaftSpeedRpm: undefined };
/** Apparent power, kVA, at the voltage of {@link READ}. */
const apparent = (amps: number) => (Math.sqrt(3) * READ.voltageV * amps) / 1000;
const evaluated = (amps: number, kilowatts: number, more: object = {}) =>
  evaluateMotor(motorOf({ reading: { ...READ, currentA: amps, inputPowerKw: kilowatts, ...more } }), study());
const unconfirmed = (result: ReturnType<typeof evaluated>) =>
  result.readings[0]?.findings.find(({ code }) => code === 'power-not-confirmed');

/**
 * The two-wattmeter method (any textbook of electrical measurement): the elements show V I cos(φ + 30°) and V I cos(φ − 30°). With one turned
 * round the meter shows their difference, V I sin φ, which is the apparent power times sin φ / √3 and so never more than 1/√3 of it.
 */
describe('a power meter with one sensor turned round', () => {
  it('at half load, where volts and amperes hardly contradict, is not taken for sound', () => {
    // 34 A at a power factor of 0.70 is about half load of the plate.
    const shown = (apparent(34) * Math.sin(Math.acos(0.7))) / Math.sqrt(3);
    const result = evaluated(34, shown);
    expect(result.trust.level).toBe('provisional');
    expect(unconfirmed(result)?.evidence.mistake).toBe('power-sensor-reversed');
    // Had it been so, the power would be S cos φ again: 0.70 S less some 9 % of loss (the plate says 91.7 % at rated load), over 37.3 kW.
    expect(Number(unconfirmed(result)?.evidence.other)).toBeCloseTo((0.7 * apparent(34) * 0.91) / 37.3, 1);
  });

  it('the power that belongs to those amperes is sound', () => {
    const result = evaluated(34, 0.7 * apparent(34));
    expect(result.trust.level).toBe('sound');
    expect(unconfirmed(result)).toBeUndefined();
  });

  it('nothing is said of power alone, which no second way confirms anyhow', () => {
    expect(unconfirmed(evaluated(34, 13, { currentA: undefined }))).toBeUndefined();
  });
});

const SETS = { all: 1, 'power-volts-amps': 1 } as const;

describe.each(['usual', 'stamped'] as const)('a simulated fleet with known truth, %s world', (world) => {
  const fleet = simulateFleet({ seed: 12, motors: 500, world, sets: SETS });
  const reference = loadTables();
  const context = { settings: defaultSettings(), tables: reference.tables, prices: reference.prices };
  const planted = fleet.flatMap((motor, i) => corrupt(new Chance(i), 'current-transformer-reversed', motor, motor) ?? []);
  let honest: ReadonlyMap<string, UnrankedMotor> = new Map();
  let turned: ReadonlyMap<string, UnrankedMotor> = new Map();
  beforeAll(async () => {
    honest = await evaluateRows(
      fleet.map(({ cells }) => cells),
      context,
    );
    turned = await evaluateRows(
      planted.map(({ cells }) => cells),
      context,
    );
  });
  const pointsOff = ({ motor }: Corrupted, result: UnrankedMotor | undefined) =>
    100 * Math.abs((result?.shaft_power?.value ?? Number.NaN) / (motor.rating.watts / 1000) - motor.loadFraction);

  it('hardly any motor with a sensor turned round is sound and more than 5 points of load off', () => {
    const missed = planted.filter((one) => {
      const result = turned.get(one.cells.tag ?? '');
      return result?.trust.level === 'sound' && pointsOff(one, result) > 5;
    });
    expect(missed.length / planted.length).toBeLessThan(0.02);
  });

  it('few honest motors lose trust by it', () => {
    const doubted = (motors: readonly SimulatedMotor[]) =>
      motors.filter(({ cells }) => honest.get(cells.tag ?? '')?.trust.findings.some(({ code }) => code === 'power-not-confirmed'))
        .length / motors.length;
    expect(doubted(fleet)).toBeLessThan(0.05);
    expect(doubted(fleet.filter(({ beyondObjection }) => beyondObjection))).toBeLessThan(0.02);
  });
});
