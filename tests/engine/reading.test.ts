import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evaluateReading } from '@/lib/engine/load/reading';
import { buildMachine } from '@/lib/engine/machine/build';
import { operatingPoint } from '@/lib/engine/machine/operate';
import type { Plate, Reading } from '@/lib/engine/motor';
import { completePlate } from '@/lib/engine/nameplate/complete';
import { covariance, exact, standardUncertainty } from '@/lib/engine/quantity/quantity';
import { PLATE, READING, scopeOf } from './support/study';

function evaluate(plate: Partial<Plate> = {}, reading: Partial<Reading> = {}) {
  const scope = scopeOf();
  const whole = { ...PLATE, ...plate };
  const completed = completePlate(scope, whole, '');
  const { machine, findings } = buildMachine(scope, whole, completed.plate, '');
  return {
    scope,
    machine,
    plateFindings: [...completed.findings, ...findings],
    ...evaluateReading(scope, whole, machine, { ...READING, ...reading }),
  };
}

describe('rated losses', () => {
  it('add up to the stamped total at rated load, voltage and temperature', () => {
    const { scope, machine } = evaluate();
    const point = operatingPoint(scope, machine, exact(1, '1'), {
      voltageRatio: exact(1, '1'),
      windingTemperature: machine.referenceTemperature,
    });
    expect(point.efficiency.value).toBeCloseTo(0.917, 9);
    expect(point.losses.total.value).toBeCloseTo(PLATE.ratedPowerKw * (1 / 0.917 - 1), 9);
    expect(point.speed.value).toBeCloseTo(1765, 6);
  });

  it('are positive and keep the published ranges of shares loosely (shares: table of loss shares, general row)', () => {
    const { machine } = evaluate();
    const { rated } = machine;
    for (const part of [rated.stator, rated.rotor, rated.core, rated.frictionWindage, rated.stray]) {
      const share = part.value / rated.total.value;
      expect(share).toBeGreaterThan(0.04);
      expect(share).toBeLessThan(0.5);
    }
  });

  it('at no load are the constant ones and the no-load current’s', () => {
    const { scope, machine } = evaluate();
    const point = operatingPoint(scope, machine, exact(0, '1'), { voltageRatio: exact(1, '1') });
    expect(point.shaftPower.value).toBe(0);
    expect(point.losses.stray.value).toBe(0);
    expect(point.losses.rotor.value).toBe(0);
    expect(point.efficiency.value).toBe(0);
    expect(point.losses.core.value).toBeCloseTo(machine.rated.core.value, 12);
  });

  it('a measured resistance takes the place of the typical stator share: 1.5 I²R at the reference temperature', () => {
    const { machine } = evaluate({ statorResistanceOhm: 0.18, statorResistanceTempC: 25 });
    const hot = 0.18 * ((234.5 + 95) / (234.5 + 25));
    expect(machine.rated.stator.value).toBeCloseTo((1.5 * 61 ** 2 * hot) / 1000, 9);
    expect(machine.rated.stator.value + machine.rated.core.value).toBeCloseTo(
      machine.rated.total.value - machine.rated.rotor.value - machine.rated.frictionWindage.value - machine.rated.stray.value,
      9,
    );
  });

  it('a resistance that cannot be is reported and left out', () => {
    const { plateFindings } = evaluate({ statorResistanceOhm: 1.8 });
    expect(plateFindings.map((found) => found.code)).toContain('resistance-contradicts-plate');
  });
});

describe('one reading', () => {
  it('the three ways agree on a consistent reading, and the losses are input less output', () => {
    const { estimates, combination, point } = evaluate();
    expect(estimates.map((estimate) => estimate.method)).toEqual(['input-power', 'slip', 'current']);
    expect(combination?.birgeRatio).toBe(1);
    expect(point?.loadFraction.value).toBeGreaterThan(0.55);
    expect(point?.loadFraction.value).toBeLessThan(0.65);
    const losses = point?.losses;
    const sum =
      (losses?.stator.value ?? 0) +
      (losses?.rotor.value ?? 0) +
      (losses?.core.value ?? 0) +
      (losses?.frictionWindage.value ?? 0) +
      (losses?.stray.value ?? 0);
    expect(sum).toBeCloseTo((point?.inputPower.value ?? 0) - (point?.shaftPower.value ?? 0), 9);
  });

  it('the balance of losses returns the measured input within 1e-9', () => {
    const { scope, machine, metered, estimates } = evaluate();
    const load = estimates[0]?.loadFraction;
    const back = operatingPoint(scope, machine, exact(load?.value ?? 0, '1'), {
      voltageRatio: exact(metered.voltageRatio.value, '1'),
    });
    expect(back.inputPower.value).toBeCloseTo(24.4, 8);
  });

  it('more measured power never means less load by input power', () => {
    fc.assert(
      fc.property(fc.double({ min: 3, max: 55, noNaN: true }), fc.double({ min: 0.01, max: 5, noNaN: true }), (power, more) => {
        const at = (inputPowerKw: number) =>
          evaluate({}, { inputPowerKw, currentA: undefined }).estimates.find((estimate) => estimate.method === 'input-power')
            ?.loadFraction.value;
        const low = at(power);
        const high = at(power + more);
        if (low !== undefined && high !== undefined) expect(high).toBeGreaterThan(low);
      }),
      { numRuns: 200, seed: 7 },
    );
  });

  it('slip at low voltage is read as less load, by the square of the voltage (US DOE fact sheet)', () => {
    const full =
      evaluate({}, { voltageV: 460 }).estimates.find((estimate) => estimate.method === 'slip')?.loadFraction.value ?? 0;
    const low = evaluate({}, { voltageV: 440 }).estimates.find((estimate) => estimate.method === 'slip')?.loadFraction.value ?? 0;
    expect(low / full).toBeCloseTo((440 / 460) ** 2, 9);
  });

  it('the current’s interval widens by itself towards no load', () => {
    const u = (currentA: number) => {
      const found = evaluate({}, { currentA }).estimates.find((estimate) => estimate.method === 'current');
      return found ? standardUncertainty(found.loadFraction) : Number.NaN;
    };
    expect(u(55)).toBeLessThan(0.09);
    expect(u(26)).toBeGreaterThan(1.5 * u(55));
    expect(evaluate({}, { currentA: 15 }).findings.map((found) => found.code)).toContain('current-below-magnetising');
  });

  it('estimates that share the plate are correlated, and the mean is no surer than the best of them allows', () => {
    const { estimates, combination } = evaluate();
    const [power, slip] = estimates;
    if (!power || !slip || !combination) throw new Error('three estimates were expected');
    expect(covariance(power.loadFraction, slip.loadFraction)).not.toBe(0);
    const best = Math.min(...estimates.map((estimate) => standardUncertainty(estimate.loadFraction)));
    expect(standardUncertainty(combination.loadFraction)).toBeLessThanOrEqual(best * 1.0001);
  });

  it('a gross contradiction is found, and the interval widened', () => {
    const { findings, combination } = evaluate({}, { shaftSpeedRpm: 1795 });
    expect(findings.map((found) => found.code)).toContain('estimates-disagree');
    expect(combination?.birgeRatio).toBeGreaterThan(1.5);
  });

  it('a reading at the drive’s input is taken through the drive’s efficiency and never by slip', () => {
    const { estimates, findings } = evaluate({ driveFed: true }, { readingsAt: 'drive-input' });
    expect(estimates.map((estimate) => estimate.method)).toEqual(['input-power']);
    expect(findings.map((found) => found.code)).toContain('drive-without-frequency');
  });

  it('an hp plate and the same plate in kW give the same numbers', () => {
    const a = evaluate({ ratedPowerUnit: 'hp' });
    const b = evaluate({ ratedPowerUnit: 'kW' });
    expect(b.point?.shaftPower.value).toBe(a.point?.shaftPower.value);
  });
});
