import { describe, expect, it } from 'vitest';
import { evaluateMotor, motorResult } from '@/lib/engine';
import type { Motor } from '@/lib/engine/motor';
import { PLATE, study } from '../support/study';

const motor: Motor = {
  site: 'North',
  tag: 'M1',
  plate: PLATE,
  hoursPerYear: 6000,
  readings: [
    {
      row: 2,
      takenAt: '2025-06-01',
      inputPowerKw: 28,
      voltageV: 460,
      currentA: 45,
      readingsAt: 'motor',
      readingCondition: 'coupled',
    },
  ],
};
const valueAt = (hours: number) => {
  const { options } = motorResult(evaluateMotor({ ...motor, hoursPerYear: hours }, study()));
  return new Map(options.map(({ id, net_present_value }) => [id, net_present_value?.value ?? 0]));
};

describe('what the values of options hang on', () => {
  it('moves a value with the hours as an evaluation at other hours does', () => {
    const { doubts = [] } = motorResult(evaluateMotor(motor, study()));
    const hours = doubts.find(({ about }) => about === 'hours');
    expect(hours?.figure.value).toBe(6000);
    const u = hours?.figure.u ?? 0;
    const [up, down] = [valueAt(6000 + u), valueAt(6000 - u)];
    expect(hours?.effects.length).toBeGreaterThan(0);
    for (const { option, net_present_value } of hours?.effects ?? []) {
      const moved = ((up.get(option) ?? 0) - (down.get(option) ?? 0)) / 2;
      // Cents of rounding in the values.
      expect(Math.abs(net_present_value - moved)).toBeLessThan(0.02 + 1e-3 * Math.abs(moved));
    }
  });

  it('never moves a value by more than its own doubt, and says nothing where hours are unknown', () => {
    const { doubts = [], options } = motorResult(evaluateMotor(motor, study()));
    expect(doubts.map(({ about }) => about)).toEqual(['load', 'hours', 'efficiency']);
    const doubtOf = new Map(options.map(({ id, net_present_value }) => [id, net_present_value?.u ?? 0]));
    for (const { effects } of doubts)
      for (const { option, net_present_value } of effects)
        expect(Math.abs(net_present_value)).toBeLessThanOrEqual((doubtOf.get(option) ?? 0) * (1 + 1e-6));
    const { hoursPerYear: _, ...idle } = motor;
    expect(motorResult(evaluateMotor(idle, study())).doubts).toBeUndefined();
  });
});
