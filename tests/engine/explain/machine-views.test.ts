import { describe, expect, it } from 'vitest';
import {
  contributions,
  evaluateMotor,
  modelOfEvaluation,
  partLoadCurve,
  standardUncertainty,
  type TorqueSpeed,
  torqueSpeed,
} from '@/lib/engine';
import type { Plate, Reading } from '@/lib/engine/motor';
import { motorOf, PLATE, READING, study } from '../support/study';

const evaluated = (changes: { plate?: Partial<Plate>; reading?: Partial<Reading> } = {}) =>
  evaluateMotor(motorOf(changes), study());

function curveOf(changes: Parameters<typeof evaluated>[0] = {}): TorqueSpeed {
  const found = torqueSpeed(evaluated(changes));
  if (!found.ok) throw new Error(found.why);
  return found.value;
}

/** Torque of a drawn line at a speed, between its points. */
function at(line: readonly { speed: number; torque: number }[], speed: number): number {
  const next = line.findIndex((place) => place.speed >= speed);
  const [a, b] = [line[next - 1], line[next]];
  if (!a || !b) throw new Error('outside of the line');
  return a.torque + ((b.torque - a.torque) * (speed - a.speed)) / (b.speed - a.speed);
}

describe('the torque curve of a motor as it stands', () => {
  it('passes through the operating point, where the load’s line meets it', () => {
    const found = curveOf();
    expect(at(found.running, found.point.speed)).toBeCloseTo(found.point.torque, 3);
    expect(at(found.load, found.point.speed)).toBeCloseTo(found.point.torque, 3);
    expect(found.running.at(-1)?.torque).toBeLessThan(0.001);
    expect(found.rough[0]?.speed).toBe(0);
  });

  it('stays there with a measured winding and a voltage off its rating', () => {
    const found = curveOf({ reading: { voltageV: 441, currentA: 42, windingTempC: 92, windingTempMethod: 'resistance' } });
    expect(at(found.running, found.point.speed)).toBeCloseTo(found.point.torque, 3);
  });

  it('is not drawn where the circuit would hold the shaft back: a cage at standstill pulls', () => {
    // Much loss and little slip leave much stray-load loss: taken as at rated speed it is more than the rotor gives at standstill.
    const found = curveOf({ plate: { nominalEfficiencyPct: 84, ratedSpeedRpm: 1780 } });
    expect(found.rough[0]?.speed).toBeGreaterThan(0);
    for (const { torque } of found.rough) expect(torque).toBeGreaterThan(0);
    expect(found.rough.at(-1)?.torque).toBeCloseTo(found.breakdown.torque, 6);
  });

  it('rated torque is power over angular speed', () => {
    const { ratedTorqueNm } = curveOf();
    // 50 hp at the stamped 1765 r/min: T (lb·ft) = 5252 hp / n = 148.8 lb·ft = 201.7 N·m (5252 and 1.35582 N·m per lb·ft: handbooks).
    expect(Math.abs(ratedTorqueNm / ((5252 * 50 * 1.35582) / 1765) - 1)).toBeLessThan(0.01);
  });

  it('breakdown torque is beyond the least that NEMA MG 1 table 12-10 asks of design B, within its doubt (from memory: 200 % at 50 hp, 4 poles)', () => {
    const { breakdown } = curveOf();
    expect(breakdown.figure.value + 1.96 * breakdown.figure.u).toBeGreaterThan(2);
    expect(breakdown.figure.u).toBeGreaterThan(0);
  });

  it('the doubt of the breakdown torque is that of drawing the leakage anew, the one that rules it', () => {
    const evaluation = evaluated();
    const found = torqueSpeed(evaluation);
    const leakage = evaluation.machine.model.parameters[3];
    if (!found.ok || !leakage) throw new Error('no curve');
    // Breakdown torque of a circuit goes nearly with the inverse of its leakage.
    const expected = found.value.breakdown.figure.value * standardUncertainty(leakage);
    expect(found.value.breakdown.figure.u / expected).toBeGreaterThan(0.75);
    expect(found.value.breakdown.figure.u / expected).toBeLessThan(1.35);
  });

  it('a fan’s line falls with the square of the speed, a conveyor’s stays', () => {
    const fan = curveOf({ plate: { drivenMachine: 'fan' } });
    const conveyor = curveOf({ plate: { drivenMachine: 'conveyor' } });
    expect(at(fan.load, fan.point.speed / 2) / fan.point.torque).toBeCloseTo(0.25, 2);
    expect(at(conveyor.load, conveyor.point.speed / 2) / conveyor.point.torque).toBeCloseTo(1, 6);
    expect(fan.exponentStated).toBe(false);
    expect(curveOf({ plate: { loadTorqueExponent: 1 } }).exponentStated).toBe(true);
  });

  it('is not drawn behind a drive, of a synchronous or wound-rotor motor, or without a load', () => {
    expect(torqueSpeed(evaluated({ plate: { driveFed: true } }))).toEqual({ ok: false, why: 'drive-fed' });
    expect(torqueSpeed(evaluated({ plate: { machineKind: 'synchronous' } }))).toEqual({ ok: false, why: 'synchronous' });
    expect(torqueSpeed(evaluated({ plate: { machineKind: 'wound-rotor' } }))).toEqual({ ok: false, why: 'wound-rotor' });
    expect(torqueSpeed(evaluateMotor(motorOf({ readings: [] }), study()))).toEqual({ ok: false, why: 'no-load-known' });
  });
});

describe('the part-load curves', () => {
  it('pass through the operating point in efficiency and power factor', () => {
    const evaluation = evaluated();
    const { point } = evaluation;
    if (!point) throw new Error('no point');
    const x = point.loadFraction.value;
    const [there] = partLoadCurve(evaluation, x, x + 0.1, 1);
    expect(there?.efficiency).toBeCloseTo(point.efficiency.value, 9);
    expect(there?.powerFactor).toBeCloseTo(point.powerFactor.value, 9);
    expect(there?.powerFactorU).toBeGreaterThan(0);
  });

  it('power factor grows with the load up to about rating, as every handbook’s curve does', () => {
    const curve = partLoadCurve(evaluated(), 0.1, 0.9, 8);
    for (let i = 1; i < curve.length; i++) expect(curve[i]?.powerFactor).toBeGreaterThan(curve[i - 1]?.powerFactor ?? Number.NaN);
  });
});

describe('what each stamp and reading contributes', () => {
  it('is said in the unit of a person, and the shares add up to the whole doubt', () => {
    const found = contributions(evaluated());
    const power = found.find(({ name }) => name === 'input_power_row_2');
    expect(power).toMatchObject({ kind: 'reading', row: 2 });
    expect(power?.given.value).toBeCloseTo(READING.inputPowerKw ?? Number.NaN, 9);
    expect(power?.given.unit).toBe('kW');
    const current = found.find(({ name }) => name === 'stamped_current');
    expect(current).toMatchObject({ kind: 'stamp' });
    expect(current?.given.value).toBeCloseTo(PLATE.ratedCurrentA ?? Number.NaN, 9);
    // 10 % tolerance at 2.5 deviations, NEMA MG 1 12.47 (from memory).
    expect((current?.given.u ?? 0) / (current?.given.value ?? 1)).toBeCloseTo(0.04, 3);
    expect(found.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
    for (const each of found) expect(each.widthSource, each.name).not.toBe('');
  });

  it('the load without a reading is the load of the sheet that lacks it', () => {
    const evaluation = evaluated();
    const speed = contributions(evaluation).find(({ name }) => name === 'speed_row_2');
    const without = evaluated({ reading: { shaftSpeedRpm: undefined } });
    const load = without.point?.loadFraction.value ?? Number.NaN;
    expect(speed?.loadWithout).toBeCloseTo(load, 3);
    expect(speed?.pull).toBeCloseTo((evaluation.point?.loadFraction.value ?? 0) - load, 3);
  });

  it('is empty without a usable reading', () => {
    expect(contributions(evaluateMotor(motorOf({ readings: [] }), study()))).toEqual([]);
  });
});

describe('the model behind the figures', () => {
  it('states its equations and what the solutions leave', () => {
    const model = modelOfEvaluation(evaluated());
    if (!model) throw new Error('no model');
    expect(model.systems.map(({ title }) => title)).toEqual(['Circuit of a rated point', 'Running point of the circuit']);
    for (const { equations, residual } of model.systems) {
      expect(equations.length).toBeGreaterThan(20);
      expect(residual).toBeLessThan(1e-9);
    }
    expect(model.fit.residual).toBeLessThan(1e-5);
    expect(model.fit.iterations).toBeGreaterThan(1);
  });

  it('its solution is that of the reading in use', () => {
    const evaluation = evaluated();
    const model = modelOfEvaluation(evaluation);
    const slip = model?.numbers.find(({ symbol }) => symbol === 's')?.value;
    expect(slip).toBeCloseTo(evaluation.point?.slip.value ?? Number.NaN, 9);
  });
});
