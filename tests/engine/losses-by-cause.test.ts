import { describe, expect, it } from 'vitest';
import { evaluateMotor, motorResult, partLoadCurve } from '@/lib/engine';
import { solveAtPower } from '@/lib/engine/circuit/solve';
import type { Plate, Reading } from '@/lib/engine/motor';
import { motorOf, PLATE, study } from './support/study';

const resultOf = (changes: { plate?: Partial<Plate>; reading?: Partial<Reading> } = {}) =>
  motorResult(evaluateMotor(motorOf(changes), study()));

const BEHIND = {
  plate: { driveFed: true },
  reading: { readingsAt: 'drive-output', frequencyHz: 60 },
} as const satisfies Parameters<typeof resultOf>[0];

describe('losses by cause', () => {
  it.each([
    ['mains', {}],
    ['unbalanced mains', { reading: { voltagesV: [474, 462, 450] as const } }],
    ['distorted mains', { reading: { thdVoltagePct: 6 } }],
    ['drive', BEHIND],
  ] as const)('add up to the total on a %s', (_, changes) => {
    const { losses, losses_by_cause, input_power, shaft_power } = resultOf(changes);
    if (!losses || !losses_by_cause || !input_power || !shaft_power) throw new Error('no losses');
    const sum = Object.values(losses_by_cause).reduce((added, { value }) => added + value, 0);
    expect(sum / losses.total.value).toBeCloseTo(1, 8);
    const { total, ...five } = losses;
    expect(Object.values(five).reduce((added, { value }) => added + value, 0) / total.value).toBeCloseTo(1, 8);
    expect(input_power.value - shaft_power.value).toBeCloseTo(total.value, 7);
  });

  it('hold a cause only where something of it was read', () => {
    expect(Object.keys(resultOf().losses_by_cause ?? {})).toEqual(['fundamental']);
    expect(Object.keys(resultOf({ reading: { thdVoltagePct: 6 } }).losses_by_cause ?? {})).toEqual(['fundamental', 'harmonics']);
    expect(Object.keys(resultOf(BEHIND).losses_by_cause ?? {})).toEqual(['fundamental', 'drive']);
    expect(
      resultOf({ plate: { ...BEHIND.plate, machineKind: 'synchronous' }, reading: BEHIND.reading }).losses_by_cause?.drive,
    ).toBe(undefined);
  });

  it('behind a drive: 15 % of the rated loss at 37 kW (IEC 61800-9-2, from memory), with a third of it as doubt', () => {
    const { losses_by_cause } = resultOf(BEHIND);
    const rated = PLATE.ratedPowerKw * (100 / (PLATE.nominalEfficiencyPct ?? Number.NaN) - 1);
    // The rated loss is that of the fitted plate, which weighs the stamped efficiency with the other stamps: within 1 % of the stamp's here.
    expect((losses_by_cause?.drive?.value ?? 0) / (0.15 * rated)).toBeCloseTo(1, 2);
    expect((losses_by_cause?.drive?.u ?? 0) / (losses_by_cause?.drive?.value ?? 1)).toBeGreaterThan(0.33);
  });

  it('behind a drive: less comes out at the shaft for the same input, by about the extra loss', () => {
    // A drive's reading has no voltage and a slip of its own frequency: compared with the same reading whose extra loss is nil by its size.
    const wide = evaluateMotor(motorOf(BEHIND), study());
    const { point, inUse } = wide;
    const extra = point?.extraLoss?.value ?? Number.NaN;
    expect(extra).toBeGreaterThan(0.4);
    expect(inUse?.metered.inputPower?.value).toBeCloseTo(24.4 - extra, 9);
    // Input of the consistent point is near what the meter showed, the extra loss included.
    expect(Math.abs((point?.inputPower.value ?? 0) - 24.4)).toBeLessThan(0.25);
  });

  it('distortion of 5 % costs a medium motor a fraction of a per cent of its rating (order of size by hand: current 0.05 / (5 × 0.17))', () => {
    const found = resultOf({ reading: { thdVoltagePct: 5 } }).losses_by_cause?.harmonics;
    const rated = PLATE.ratedPowerKw;
    expect(found?.value).toBeGreaterThan(0.0001 * rated);
    expect(found?.value).toBeLessThan(0.002 * rated);
    expect((found?.u ?? 0) / (found?.value ?? 1)).toBeCloseTo(0.5, 6);
    // With the square of the distortion.
    const twice = resultOf({ reading: { thdVoltagePct: 10 } }).losses_by_cause?.harmonics;
    expect((twice?.value ?? 0) / (found?.value ?? 1)).toBeGreaterThan(3.8);
    expect((twice?.value ?? 0) / (found?.value ?? 1)).toBeLessThan(4.2);
  });

  it('unbalance: with the square of the negative sequence, and its doubt is at least half of it', () => {
    const { machine, point } = evaluateMotor(motorOf({ reading: { voltagesV: [467, 462, 457] } }), study());
    // Of one machine: a fit to another sheet finds another leakage.
    const of = (negativeSequence: number) =>
      solveAtPower(machine.model.circuit, { load: 0.6, voltage: 1, frequency: 1, ambient: 25, winding: 80, negativeSequence })
        ?.unbalance;
    expect((of(0.02) ?? 0) / (of(0.01) ?? 1)).toBeCloseTo(4, 2);
    expect(point?.unbalanceLoss?.value).toBeGreaterThan(0);
    const found = resultOf({ reading: { voltagesV: [467, 462, 457] } }).losses_by_cause?.unbalance;
    expect((found?.u ?? 0) / (found?.value ?? 1)).toBeGreaterThanOrEqual(0.5);
  });

  it('the part-load curve passes through the operating point behind a drive, too', () => {
    const evaluation = evaluateMotor(motorOf(BEHIND), study());
    const x = evaluation.point?.loadFraction.value ?? Number.NaN;
    const [there] = partLoadCurve(evaluation, x, x + 0.1, 1);
    expect(there?.efficiency).toBeCloseTo(evaluation.point?.efficiency.value ?? Number.NaN, 9);
  });

  it('an input below the extra loss alone is still found impossible', () => {
    const { trust, shaft_power } = resultOf({
      plate: BEHIND.plate,
      reading: { ...BEHIND.reading, inputPowerKw: 0.3, currentA: undefined, shaftSpeedRpm: undefined },
    });
    expect(shaft_power).toBe(undefined);
    expect(trust.findings.map(({ code }) => code)).toContain('power-below-no-load');
  });
});

describe('a winding resistance', () => {
  it('is as doubtful in the way by losses as in the machine: more without its temperature', () => {
    const uOf = (plate: Partial<Plate>) =>
      evaluateMotor(motorOf({ plate: { ...plate, statorResistanceOhm: 0.1 } }), study()).inUse?.estimates.find(
        ({ method }) => method === 'loss-segregation',
      )?.loadFraction.parts;
    const size = (parts: ReturnType<typeof uOf>) => Math.hypot(...(parts?.by ?? []));
    expect(size(uOf({}))).toBeGreaterThan(size(uOf({ statorResistanceTempC: 25 })));
  });
});
