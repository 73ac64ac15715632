import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveAtPower } from '@/lib/engine/circuit/solve';
import { leaf } from '@/lib/engine/formula/apply';
import { buildMachine } from '@/lib/engine/machine/build';
import { operatingPoint } from '@/lib/engine/machine/operate';
import type { DrivenMachine } from '@/lib/engine/motor';
import { completePlate } from '@/lib/engine/nameplate/complete';
import { loadLaw, speedRatio } from '@/lib/engine/options/load-law';
import { exact } from '@/lib/engine/quantity/quantity';
import { PLATE, scopeOf } from '../support/study';

interface Given {
  readonly oldSpeed: number;
  readonly newSpeed: number;
  readonly load: number;
  readonly exponent: 0 | 1 | 2;
  readonly voltage?: number;
}

/** The ratio for an old and a new motor of one rating, each with its stamped speed. */
function solve({ oldSpeed, newSpeed, load, exponent, voltage = 1 }: Given) {
  const scope = scopeOf();
  const machineOf = (ratedSpeedRpm: number, prefix: string) => {
    const plate = { ...PLATE, ratedSpeedRpm, poles: 4 };
    return buildMachine(scope, plate, completePlate(scope, plate, prefix).plate, prefix).machine;
  };
  const voltageRatio = exact(voltage, '1');
  const loadFraction = leaf(scope, {
    value: load,
    unit: '1',
    label: 'load',
    origin: 'metered',
    source: 'test',
    doubts: [{ id: 'load', label: 'load', u: 0.01 }],
  });
  const conditions = { voltageRatio, ambient: exact(25, 'K') };
  const old = operatingPoint(scope, machineOf(oldSpeed, ''), loadFraction, conditions);
  const machine = machineOf(newSpeed, 'new ');
  const law = loadLaw({ ...PLATE, loadTorqueExponent: exponent });
  const ratio = old && speedRatio(scope, old, machine, law, conditions);
  if (!old || !ratio) throw new Error('beyond the breakdown torque');
  return { scope, old, machine, ratio };
}

describe('load law', () => {
  it('is as stated, else the square for pumps, fans, blowers and mixers, else constant torque', () => {
    const exponents = Object.fromEntries(
      (['pump', 'fan', 'blower', 'mixer', 'compressor', 'conveyor', 'hoist', 'other'] as DrivenMachine[]).map((drivenMachine) => [
        drivenMachine,
        loadLaw({ ...PLATE, drivenMachine }).exponent.value,
      ]),
    );
    expect(exponents).toEqual({ pump: 2, fan: 2, blower: 2, mixer: 2, compressor: 0, conveyor: 0, hoist: 0, other: 0 });
    expect(loadLaw({ ...PLATE, drivenMachine: 'pump', loadTorqueExponent: 0 }).exponent.value).toBe(0);
    expect(loadLaw(PLATE).exponent.value).toBe(0);
  });
  it('knows who holds the speed and who runs on and off', () => {
    expect(loadLaw({ ...PLATE, flowControl: 'drive' }).speedHeld).toBe(true);
    expect(loadLaw({ ...PLATE, driveFed: true }).speedHeld).toBe(true);
    expect(loadLaw({ ...PLATE, flowControl: 'throttle' }).speedHeld).toBe(false);
    expect(loadLaw({ ...PLATE, flowControl: 'on-off' }).onOff).toBe(true);
  });
});

describe('speed ratio', () => {
  it('is one for a motor of the same speed', () => {
    expect(solve({ oldSpeed: 1765, newSpeed: 1765, load: 0.8, exponent: 2 }).ratio.value).toBeCloseTo(1, 12);
  });
  it('lies where the new motor’s circuit meets the load, as bisection finds it', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1730, max: 1790 }),
        fc.integer({ min: 1730, max: 1790 }),
        fc.double({ min: 0.05, max: 1.2, noNaN: true }),
        fc.constantFrom(0, 1, 2),
        fc.double({ min: 0.9, max: 1.1, noNaN: true }),
        (oldSpeed, newSpeed, load, exponent, voltage) => {
          const { old, machine, ratio } = solve({ oldSpeed, newSpeed, load, exponent, voltage });
          const gap = (r: number) => {
            const power = old.shaftPower.value * r ** (exponent + 1);
            const slip = solveAtPower(machine.model.circuit, {
              load: power / machine.plate.ratedPower.value,
              voltage,
              frequency: 1,
              ambient: 25,
            })?.slip;
            return r * old.speed.value - 1800 * (1 - (slip ?? Number.NaN));
          };
          let [low, high] = [0.8, 1.2];
          for (let step = 0; step < 100; step++) {
            const middle = (low + high) / 2;
            if (gap(middle) < 0) low = middle;
            else high = middle;
          }
          expect(ratio.value).toBeCloseTo(low, 10);
        },
      ),
      { numRuns: 40 },
    );
  });
  it('never passes the ratio of the full-load speeds at full load (US DOE fact sheet: 1740 to 1760 r/min takes up to 3.5 % more)', () => {
    const { ratio } = solve({ oldSpeed: 1740, newSpeed: 1760, load: 1, exponent: 2 });
    expect(ratio.value).toBeGreaterThan(1);
    expect(ratio.value).toBeLessThan(1760 / 1740);
    expect(100 * (ratio.value ** 3 - 1)).toBeCloseTo(3.3, 0);
  });
  it('has the doubt of slips and load, as small changes of each show', () => {
    const base: Given = { oldSpeed: 1750, newSpeed: 1775, load: 0.7, exponent: 2 };
    const { ratio, scope } = solve(base);
    const part = (id: string) =>
      ratio.parts.by[ratio.parts.at.indexOf(scope.sources.list.findIndex((source) => source.id === id))] ?? Number.NaN;
    const slope = (change: Partial<Given>, step: number) => (solve({ ...base, ...change }).ratio.value - ratio.value) / step;
    expect(part('load')).toBeCloseTo(0.01 * slope({ load: 0.7001 }, 0.0001), 7);
    // Stamped speeds: 20 % of the slip at 2.5 deviations.
    expect(part('stamp:slip')).toBeCloseTo(((0.2 * 50) / 2.5) * slope({ oldSpeed: 1750.01 }, 0.01), 6);
    expect(part('new stamp:slip')).toBeCloseTo(((0.2 * 25) / 2.5) * slope({ newSpeed: 1775.01 }, 0.01), 6);
  });
});
