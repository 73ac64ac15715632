import { describe, expect, it } from 'vitest';
import { evaluateMotor } from '@/lib/engine/evaluate';
import { meterReading } from '@/lib/engine/load/metered';
import { supplyLoss } from '@/lib/engine/load/supply-loss';
import { buildMachine } from '@/lib/engine/machine/build';
import type { Plate, Reading } from '@/lib/engine/motor';
import { completePlate } from '@/lib/engine/nameplate/complete';
import { standardUncertainty } from '@/lib/engine/quantity/quantity';
import { motorOf, PLATE, READING, scopeOf, study } from './support/study';

function read(reading: Partial<Reading>, plate: Partial<Plate> = {}) {
  const scope = scopeOf();
  const whole = { ...PLATE, ...plate };
  const { machine } = buildMachine(scope, whole, completePlate(scope, whole, '').plate, '');
  const given = { ...READING, ...reading };
  return { ...meterReading(scope, whole, machine, given), machine, scope, whole, given };
}
const codes = (reading: Partial<Reading>) => read(reading).findings.map(({ code }) => code);

describe('the doubt of a meter', () => {
  it('is that of a rectangular error: class over √3 (JCGM 100, 4.3.7)', () => {
    const { inputPower, current, voltage, speed } = read({});
    const half = (of: number, pct: number) => (of * pct) / 100 / Math.sqrt(3);
    expect(standardUncertainty(inputPower ?? { parts: { at: [], by: [] } })).toBeCloseTo(half(24.4, 1), 9);
    expect(standardUncertainty(current ?? { parts: { at: [], by: [] } })).toBeCloseTo(half(40.6, 1), 9);
    expect(standardUncertainty(voltage ?? { parts: { at: [], by: [] } })).toBeCloseTo(half(462, 0.5), 9);
    expect(standardUncertainty(speed ?? { parts: { at: [], by: [] } })).toBeCloseTo(1 / Math.sqrt(3), 9);
  });
});

describe('values that contradict each other', () => {
  it('power is at most volt-amperes by definition, with room of 5 % for the meters (common practice)', () => {
    const amperes = (share: number) => (24.4 * 1000) / (Math.sqrt(3) * 462 * share);
    expect(codes({ currentA: amperes(1.04) })).not.toContain('power-above-apparent');
    expect(codes({ currentA: amperes(1.06) })).toContain('power-above-apparent');
  });

  it.each([-5, 0, 5])('a voltage to neutral is told from one between lines at %d %% off the rated one', (pct) => {
    const voltageV = (460 / Math.sqrt(3)) * (1 + pct / 100);
    expect(codes({ voltageV })).toContain('voltage-phase-for-line');
  });

  it('a voltage that is neither is only far off', () => {
    expect(codes({ voltageV: (460 / Math.sqrt(3)) * 1.1 })).toContain('voltage-far-from-plate');
  });
});

describe('a load that may as well be none', () => {
  /** What bearings, seals and belts alone may take (common practice). */
  const IDLE = 0.02;
  /** By a power meter alone that is good for little more than a guess. */
  const readAt = (inputPowerKw: number, powerAccuracyPct: number) => {
    const reading = { currentA: undefined, shaftSpeedRpm: undefined, inputPowerKw, powerAccuracyPct };
    const [only] = evaluateMotor(motorOf({ reading }), study()).readings;
    const load = only?.combination?.loadFraction;
    if (!load) throw new Error('the reading has a load');
    return { load: load.value, low: load.value - 1.96 * standardUncertainty(load), codes: only.findings.map(({ code }) => code) };
  };
  it('is remarked upon below 15 % (common practice); above it an interval that reaches down to none is but wide', () => {
    const [tenth, quarter] = [readAt(4.6, 60), readAt(10, 100)];
    expect(tenth.load).toBeGreaterThan(0.06);
    expect(tenth.load).toBeLessThan(0.15);
    expect(tenth.low).toBeLessThan(IDLE);
    expect(tenth.codes).toContain('load-not-told-from-none');
    expect(quarter.load).toBeGreaterThan(0.15);
    expect(quarter.low).toBeLessThan(IDLE);
    expect(quarter.codes).not.toContain('load-not-told-from-none');
  });
});

describe('losses by a supply other than a sine', () => {
  it.each([
    [90, 0.15],
    [110, 0.25],
  ])('behind a drive at %d kW: %d of the rated loss (IEC 61800-9-2, from memory)', (ratedPowerKw, share) => {
    const { machine, scope, whole, given } = read({}, { ratedPowerKw, ratedCurrentA: undefined });
    const { drive } = supplyLoss(scope, whole, machine, given, true);
    expect(drive?.value).toBeCloseTo(share * ratedPowerKw * (1 / 0.917 - 1), 9);
  });

  it('by distortion: the loss of a harmonic current that the leakage limits, rotor bars at √6 times their resistance', () => {
    const { machine, scope, whole, given } = read({ thdVoltagePct: 8 });
    const { r1, r2, x1, x2 } = machine.model.circuit;
    // I₅ = d U / (5 (X₁ + X₂)); per unit of the rated output, three phases in it already.
    const current = 0.08 / (5 * (x1 + x2));
    const expected = current ** 2 * (r1 + Math.sqrt(6) * r2) * whole.ratedPowerKw;
    expect(supplyLoss(scope, whole, machine, given, false).harmonics?.value).toBeCloseTo(expected, 9);
  });
});
