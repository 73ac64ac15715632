import { abs, add, type Complex, complex, multiply } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { evaluateMotor } from '@/lib/engine/evaluate';
import type { Reading } from '@/lib/engine/motor';
import { standardUncertainty } from '@/lib/engine/quantity/quantity';
import { motorOf, study } from '../support/study';
import { atLoad, judge, three } from './judged';

type Three = readonly [number, number, number];

const size = (x: unknown) => abs(x as Complex) as unknown as number;

/** Positive and negative sequence of three magnitudes that close a triangle, by phasors and Fortescue's transformation. */
function sequences([a, b, c]: Three): { positive: number; negative: number } {
  // The triangle laid out: a along the axis, b turned by the angle between them.
  const angle = Math.acos((c * c - a * a - b * b) / (2 * a * b));
  const A = complex(a, 0);
  const B = complex({ r: b, phi: -angle });
  const C = multiply(add(A, B), -1) as Complex;
  const turn = (by: number) => complex({ r: 1, phi: (by * 2 * Math.PI) / 3 });
  const sum = (first: number, second: number) => size(add(A, multiply(turn(first), B), multiply(turn(second), C))) / 3;
  const pair = [sum(1, -1), sum(-1, 1)].sort((x, y) => y - x) as [number, number];
  return { positive: pair[0], negative: pair[1] };
}

/** What the voltages explain, per cent, by the circuit that the engine found and complex arithmetic of its own. */
function explained(voltages: Three, currents: Three, reading: Partial<Reading>): number {
  const { machine, point } = evaluateMotor(motorOf({ reading }), study());
  const { circuit, base } = machine.model;
  const slip = point?.slip.value ?? circuit.slip;
  // Deep bars: rotor resistance 1.8 times, impedance 0.9 times that of the running circuit (the beliefs of the method).
  const z = multiply(0.9, complex(circuit.r1 + (1.8 * circuit.r2) / (2 - slip), circuit.x1 + circuit.x2)) as Complex;
  const perUnit = sequences(voltages).negative / machine.plate.ratedVoltage.value;
  return ((3 / Math.PI) * 100 * (perUnit / size(z)) * base.currentA) / sequences(currents).positive;
}

const VOLTS = three(460, 1);
const at = (pct: number): Partial<Reading> => ({
  voltagesV: VOLTS,
  voltageV: 460,
  currentsA: three(40.6, pct),
});

describe('current unbalance beyond what the voltages explain', () => {
  it.each([7.5, 9.5, 9.99, 10.01, 12])('through the negative-sequence circuit: %s %% is left', (left) => {
    let [low, high] = [0, 60];
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (middle - explained(VOLTS, three(40.6, middle), at(middle)) < left) low = middle;
      else high = middle;
    }
    const { indicator } = judge('current-unbalance', { reading: at(low) });
    expect(indicator?.value.value).toBeCloseTo(left, 6);
    expect(indicator?.band).toBe(left > 10 ? 'beyond' : 'near');
  });

  it('near rated load explains about what the trade sees, 6 to 10 times (US DOE Motor Systems Tip Sheet 7), within its own doubt', () => {
    const reading = { ...at(0), currentsA: three(58, 0), currentA: 58, inputPowerKw: 38, shaftSpeedRpm: undefined };
    const found = judge('current-unbalance', { reading }).indicator;
    const multiple = -(found?.value.value ?? Number.NaN);
    const u = found ? standardUncertainty(found.value) : 0;
    expect(multiple + 1.96 * u).toBeGreaterThan(6);
    expect(multiple - 1.96 * u).toBeLessThan(10);
  });

  it('explains more at less load, and nothing on balanced voltages', () => {
    const light = -(judge('current-unbalance', { reading: at(0) }).indicator?.value.value ?? 0);
    const heavy = { ...at(0), currentsA: three(58, 0), currentA: 58, inputPowerKw: 38, shaftSpeedRpm: undefined };
    const full = -(judge('current-unbalance', { reading: heavy }).indicator?.value.value ?? 0);
    expect(light).toBeGreaterThan(full);
    const balanced = { ...at(4), voltagesV: three(460, 0) };
    expect(judge('current-unbalance', { reading: balanced }).indicator?.value.value).toBeCloseTo(4, 6);
  });

  it.each([
    [12, 'within'],
    [17.99, 'near'],
    [18, 'near'],
    [18.01, 'beyond'],
  ] as const)('by a multiple that the study sets, 8 times 1 %%: %s is %s', (pct, band) => {
    const settings = { limits: { C4: { value: 8, reason: 'trial' } } };
    expect(atLoad(0.7, { reading: at(pct) }, settings)('current-unbalance').band).toBe(band);
  });

  it('of a synchronous motor, or of values that cannot close a triangle, goes by the multiple of the table', () => {
    const synchronous = judge('current-unbalance', { plate: { machineKind: 'synchronous' }, reading: at(12) });
    expect(synchronous.indicator?.value.value).toBeCloseTo(4, 6);
    const odd: Partial<Reading> = { ...at(0), currentsA: [10, 30, 60] };
    const { indicator } = judge('current-unbalance', { reading: odd });
    expect(indicator?.limit).toContain('8 times the voltage unbalance');
    expect(indicator?.band).toBe('beyond');
  });
});
