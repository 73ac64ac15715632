import { describe, expect, it } from 'vitest';
import { corrupt, corruptFleet, MISTAKES, swappedDigits } from './corrupt';
import { type SimulatedMotor, simulateFleet } from './fleet';
import { Chance } from './random';

const fleet = simulateFleet({ seed: 21, motors: 600 });
const corrupted = corruptFleet(new Chance(9), fleet, 30);
const other = fleet[0] as SimulatedMotor;
const tries = (mistake: (typeof MISTAKES)[number]) =>
  fleet.flatMap((motor, i) => {
    const found = corrupt(new Chance(i), mistake, motor, other);
    return found ? [found] : [];
  });

describe('planted mistakes', () => {
  it('are all planted, change the sheet, and some leave a trace', () => {
    for (const mistake of MISTAKES) {
      const own = corrupted.filter((one) => one.mistake === mistake);
      expect(own, mistake).toHaveLength(30);
      expect(
        own.some(({ leavesTrace }) => leavesTrace),
        mistake,
      ).toBe(true);
      for (const { cells, motor } of own) {
        const { tag: _, ...now } = cells;
        const { tag: __, ...before } = motor.cells;
        expect(now, mistake).not.toEqual(before);
      }
    }
  });

  it('come out the same from the same seed', () => {
    expect(corruptFleet(new Chance(9), fleet, 30)).toEqual(corrupted);
  });

  it('two elements with one missing: both halves make the whole reading', () => {
    for (const { cells, motor } of tries('current-transformer-missing')) {
      const whole = Number(motor.cells.input_power_kw);
      const part = Number(cells.input_power_kw);
      const phi = Math.acos(
        Math.min(
          1,
          motor.at.input /
            ((Math.sqrt(3) / 9) * motor.at.lineVolts.reduce((a, b) => a + b) * motor.at.amps.reduce((a, b) => a + b)),
        ),
      );
      // The lagging element's share of the power is (1 − tan φ/√3)/2, the leading one's (1 + tan φ/√3)/2.
      const share = Math.abs(part / whole - 0.5) * 2;
      expect(Math.abs(share - Math.tan(phi) / Math.sqrt(3))).toBeLessThan(0.02 + 0.011 / whole);
    }
  });

  it('one reversed: the meter shows the reactive power over √3, of either sign', () => {
    const shown = tries('current-transformer-reversed');
    for (const { cells, motor } of shown) {
      const apparent =
        ((Math.sqrt(3) / 9) * motor.at.lineVolts.reduce((a, b) => a + b) * motor.at.amps.reduce((a, b) => a + b)) / 1000;
      const reactive = Math.sqrt(Math.max(0, apparent ** 2 - (motor.at.input / 1000) ** 2));
      const gain = Number(motor.cells.input_power_kw) / (motor.at.input / 1000);
      expect(Math.abs(Math.abs(Number(cells.input_power_kw)) - (gain * reactive) / Math.sqrt(3))).toBeLessThan(
        0.01 + 1e-6 * apparent,
      );
    }
    expect(shown.some(({ cells }) => Number(cells.input_power_kw) < 0)).toBe(true);
  });

  it('digits swap as on paper', () => {
    expect(swappedDigits(new Chance(1), 1768, 5)).toSatisfy((value: number) => [7168, 1678, 1786].includes(value));
    expect(swappedDigits(new Chance(1), 1111, 1)).toBeUndefined();
    expect(swappedDigits(new Chance(1), 1787, 10)).toSatisfy((value: number) => [7187, 1877].includes(value));
  });

  it('power in horsepower, watts, phase voltage and other amperes differ by their factor', () => {
    const ratio = (mistake: (typeof MISTAKES)[number], column: string) =>
      tries(mistake)
        .filter(({ cells, motor }) => cells[column] !== undefined && Number(motor.cells[column]) > 20)
        .map(({ cells, motor }) => Number(cells[column]) / Number(motor.cells[column]));
    for (const value of ratio('power-in-horsepower', 'input_power_kw')) expect(value).toBeCloseTo(1.341, 2);
    for (const value of ratio('power-in-watts', 'input_power_kw')) expect(value).toBeCloseTo(1000, 6);
    for (const value of ratio('phase-voltage-for-line', 'voltage_v')) expect(value).toBeCloseTo(0.577, 2);
    for (const value of ratio('current-of-one-conductor', 'current_a')) expect(value).toBeCloseTo(0.5, 2);
    for (const value of ratio('current-times-root-three', 'current_a')) expect(value).toBeCloseTo(1.732, 2);
  });

  it('an uncoupled motor reads near its synchronous speed and its magnetising current', () => {
    for (const { cells, motor } of tries('motor-uncoupled')) {
      const synchronous = (120 * motor.rating.frequency) / motor.rating.poles;
      if (cells.shaft_speed_rpm !== undefined)
        expect(Math.abs(Number(cells.shaft_speed_rpm) / synchronous - 1)).toBeLessThan(0.006);
      if (cells.current_a !== undefined) expect(Number(cells.current_a) / motor.built.machine.ratedAmps).toBeLessThan(0.95);
    }
  });
});
