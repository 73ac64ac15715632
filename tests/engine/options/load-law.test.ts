import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveAtPower } from '@/lib/engine/circuit/solve';
import { leaf } from '@/lib/engine/formula/apply';
import { buildMachine } from '@/lib/engine/machine/build';
import { operatingPoint } from '@/lib/engine/machine/operate';
import type { DrivenMachine } from '@/lib/engine/motor';
import { completePlate } from '@/lib/engine/nameplate/complete';
import { exponentBetween, type LoadPoint, onCurve } from '@/lib/engine/options/load-curve';
import { exponentOf, loadLaw, speedRatio } from '@/lib/engine/options/load-law';
import { exact } from '@/lib/engine/quantity/quantity';
import { PLATE, scopeOf } from '../support/study';

interface Given {
  readonly oldSpeed: number;
  readonly newSpeed: number;
  readonly load: number;
  readonly exponent: 0 | 1 | 2;
  readonly points?: readonly LoadPoint[];
  readonly voltage?: number;
}

/** The ratio for an old and a new motor of one rating, each with its stamped speed. */
function solve({ oldSpeed, newSpeed, load, exponent, points, voltage = 1 }: Given) {
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
  const law = points
    ? loadLaw({ ...PLATE, loadCurve: 'given' }, { given: points }, oldSpeed)
    : loadLaw({ ...PLATE, loadTorqueExponent: exponent });
  const ratio = old && speedRatio(scope, old, machine, law, conditions);
  if (!old || !ratio) throw new Error('beyond the breakdown torque');
  return { scope, old, machine, ratio, exponent: exponentOf(scope, law, old.speed.value, ratio.value) };
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
      // The example is one in 7,000 drawn on which a search that ended at 1e-8 was 2e-10 off.
      { numRuns: 40, examples: [[1736, 1783, 1.1786651862447275, 2, 0.9225677821412676]] },
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

/** Points of a power law every so many per cent of speed, up to 110 %. */
const sampled = (exponent: number, step: number): LoadPoint[] =>
  Array.from({ length: Math.round(110 / step) + 1 }, (_, k) => ({
    speedPct: k * step,
    torquePct: 80 * ((k * step) / 100) ** exponent,
  }));

describe('load law by given points', () => {
  const speeds = { oldSpeed: 1740, newSpeed: 1775, load: 0.8 } as const;
  it('of a constant torque is the constant law exactly', () => {
    const byPoints = solve({ ...speeds, exponent: 0, points: sampled(0, 22) });
    const constant = solve({ ...speeds, exponent: 0 });
    expect(byPoints.ratio.value).toBe(constant.ratio.value);
    expect(byPoints.exponent.value).toBe(0);
    expect(byPoints.ratio.parts).toEqual(constant.ratio.parts);
  });
  it('of a square law gives its answer within what interpolating may miss, less with more points', () => {
    const square = solve({ ...speeds, exponent: 2 }).ratio.value;
    const miss = (step: number) => Math.abs(solve({ ...speeds, exponent: 2, points: sampled(2, step) }).ratio.value - square);
    // The slope between points is off by the order of the square of their distance; a torque moves the slip by a fortieth of itself.
    expect(miss(22)).toBeLessThan(2e-5);
    expect(miss(5)).toBeLessThan(1e-6);
    expect(miss(1)).toBeLessThan(1e-7);
  });
  it('has the doubt of slips and load, as small changes of each show', () => {
    // Rising ever more steeply about rated speed, as no power law does.
    const points = [
      { speedPct: 0, torquePct: 40 },
      { speedPct: 90, torquePct: 60 },
      { speedPct: 97, torquePct: 78 },
      { speedPct: 104, torquePct: 110 },
    ];
    const base: Given = { oldSpeed: 1750, newSpeed: 1775, load: 0.7, exponent: 2, points };
    const { ratio, scope } = solve(base);
    const part = (id: string) =>
      ratio.parts.by[ratio.parts.at.indexOf(scope.sources.list.findIndex((source) => source.id === id))] ?? Number.NaN;
    const slope = (change: Partial<Given>, step: number) => (solve({ ...base, ...change }).ratio.value - ratio.value) / step;
    const newSlip = ((0.2 * 25) / 2.5) * slope({ newSpeed: 1775.01 }, 0.01);
    expect(Math.abs(part('new stamp:slip') / newSlip - 1)).toBeLessThan(1e-3);
    const load = 0.01 * slope({ load: 0.7001 }, 0.0001);
    // The old speed moves with the load, and with it the place on the curve: left out, being of second order.
    expect(Math.abs(part('load') / load - 1)).toBeLessThan(0.05);
  });
  it('never leaves the range of two neighbours, and passes through the points', () => {
    const torque = fc.double({ min: 0, max: 300, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(torque, { minLength: 2, maxLength: 8 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (torques, share) => {
          const points = torques.map((torquePct, k) => ({ speedPct: 10 * k * (1 + k / 7), torquePct }));
          for (const { speedPct, torquePct } of points) expect(onCurve(points, speedPct).torquePct).toBeCloseTo(torquePct, 9);
          points.slice(1).forEach((to, k) => {
            const from = points[k] ?? to;
            const found = onCurve(points, from.speedPct + share * (to.speedPct - from.speedPct));
            expect(found.beyond).toBe(false);
            expect(found.torquePct).toBeGreaterThanOrEqual(Math.min(from.torquePct, to.torquePct) - 1e-9);
            expect(found.torquePct).toBeLessThanOrEqual(Math.max(from.torquePct, to.torquePct) + 1e-9);
          });
        },
      ),
    );
  });
  it('holds the law of the end beyond the points: that of the square stays the square', () => {
    const points = sampled(2, 5).filter(({ speedPct }) => speedPct >= 50 && speedPct <= 100);
    expect(onCurve(points, 120)).toMatchObject({ beyond: true });
    expect(onCurve(points, 120).torquePct).toBeCloseTo(80 * 1.2 ** 2, 6);
    expect(onCurve(points, 10).torquePct).toBeCloseTo(80 * 0.1 ** 2, 6);
    expect(exponentBetween(points, 100, 103)).toBeCloseTo(2, 9);
    expect(exponentBetween(points, 100, 100)).toBeCloseTo(2, 9);
  });
  it('after a dip carries on as its last piece rises', () => {
    const points = [
      { speedPct: 0, torquePct: 60 },
      { speedPct: 30, torquePct: 38 },
      { speedPct: 100, torquePct: 45 },
    ];
    // By hand: 7 in 70, at 45 of 100.
    expect(exponentBetween(points, 100, 102)).toBeCloseTo((0.1 * 100) / 45, 9);
  });
  it('takes the place of what the kind of machine would have, and only where the settings have it', () => {
    const curves = { flat: sampled(0, 55) };
    const of = (name: string) => loadLaw({ ...PLATE, drivenMachine: 'fan', loadCurve: name }, curves, 1765);
    expect(of('flat').exponent.value).toBe(0);
    expect(of('flat').curve?.name).toBe('flat');
    expect(of('other').exponent.value).toBe(2);
    expect(of('constructor').curve).toBeUndefined();
  });
});
