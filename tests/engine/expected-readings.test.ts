import { beforeAll, describe, expect, it } from 'vitest';
import { evaluateMotor, expectedReadings, type Motor } from '@/lib/engine';
import { parseFleet } from '@/lib/features/fleet/parse';
import { type SimulatedMotor, sheetText, simulateFleet } from '../simulator/fleet';
import { motorOf, study } from './support/study';

/** What a person with a good meter would have read at simulated motors, against what the sheet told him to expect from the plate alone. */
describe('expected readings', () => {
  const fleet = simulateFleet({ seed: 77, motors: 400 });
  const held: Record<string, boolean[]> = { current: [], inputPower: [], speed: [], powerFactor: [] };
  beforeAll(async () => {
    const parsed = await parseFleet(
      { name: 's.csv', text: sheetText(fleet.map(({ cells }) => cells)) },
      { asOf: study().settings.asOf },
    );
    if (!parsed.ok) throw new Error(parsed.problem.text);
    const byTag = new Map(parsed.motors.map(({ motor }) => [motor.tag, motor]));
    for (const simulated of fleet) {
      const motor = byTag.get(simulated.cells.tag ?? '');
      if (motor) compare(simulated, { ...motor, readings: [] });
    }
  });

  function compare({ at, loadFraction }: SimulatedMotor, motor: Motor): void {
    const expected = expectedReadings(evaluateMotor(motor, study()), [loadFraction, loadFraction + 0.001]);
    const mean = ([a, b, c]: readonly [number, number, number]) => (a + b + c) / 3;
    const [amps, volts, kilowatts] = [mean(at.amps), mean(at.lineVolts), at.input / 1000];
    const truth = {
      current: amps,
      inputPower: kilowatts,
      speed: at.rpm,
      powerFactor: (100_000 * kilowatts) / (Math.sqrt(3) * volts * amps),
    } as const;
    for (const [name, value] of Object.entries(truth)) {
      const range = expected[name as keyof typeof truth];
      if (range) held[name]?.push(value >= range.low && value <= range.high);
    }
  }

  it.each(['current', 'inputPower', 'speed', 'powerFactor'])('of %s hold what simulated motors show, nearly always', (name) => {
    const found = held[name] ?? [];
    expect(found.length).toBeGreaterThan(300);
    expect(found.filter(Boolean).length / found.length).toBeGreaterThan(0.9);
  });

  it('widen with the loads asked for, and stay below the synchronous speed', () => {
    const evaluation = evaluateMotor(motorOf(), study());
    const narrow = expectedReadings(evaluation, [0.6, 0.7]);
    const wide = expectedReadings(evaluation, [0.3, 1.1]);
    for (const name of ['current', 'inputPower', 'speed', 'powerFactor'] as const) {
      expect(wide[name]?.low, name).toBeLessThan(narrow[name]?.low ?? 0);
      expect(wide[name]?.high, name).toBeGreaterThan((narrow[name]?.high ?? 0) - 1e-9);
    }
    expect(wide.speed?.high).toBeLessThanOrEqual(wide.synchronousSpeed ?? 0);
    expect(wide.voltage).toEqual({ low: expect.closeTo(414, 6), high: expect.closeTo(506, 6), unit: 'V' });
  });

  it('say nothing of a drive-fed motor, and of a synchronous one power alone', () => {
    expect(expectedReadings(evaluateMotor(motorOf({ plate: { driveFed: true } }), study()), [0.5, 1])).toEqual({});
    const synchronous = expectedReadings(evaluateMotor(motorOf({ plate: { machineKind: 'synchronous' } }), study()), [0.5, 1]);
    expect(synchronous.current).toBeUndefined();
    expect(synchronous.speed).toBeUndefined();
    expect(synchronous.inputPower).toBeDefined();
  });
});
