import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MotorScope } from '@/lib/engine';
import { evaluateReadings } from '@/lib/engine/load/reading';
import { buildMachine } from '@/lib/engine/machine/build';
import type { Machine, OperatingPoint } from '@/lib/engine/machine/model';
import { operatingPoint } from '@/lib/engine/machine/operate';
import type { Plate, Reading } from '@/lib/engine/motor';
import { completePlate } from '@/lib/engine/nameplate/complete';
import { covariance, exact, standardUncertainty } from '@/lib/engine/quantity/quantity';
import { PLATE, READING, scopeOf } from './support/study';

function evaluate(plate: Partial<Plate> = {}, reading: Partial<Reading> = {}) {
  const scope = scopeOf();
  const whole = { ...PLATE, ...plate };
  const completed = completePlate(scope, whole, '');
  const fromPlate = buildMachine(scope, whole, completed.plate, '');
  const together = evaluateReadings(scope, whole, completed.plate, fromPlate, [{ ...READING, ...reading }]);
  const [only] = together.readings;
  if (!only) throw new Error('one reading was expected');
  return {
    scope,
    /** The machine of the plate alone, and the one that plate and reading describe together. */
    machine: fromPlate.machine,
    fitted: together.machine,
    pulls: together.joint?.pulls() ?? [],
    plateFindings: [...completed.findings, ...fromPlate.findings],
    ...only,
  };
}

/** A plate whose stamps determine no more than the parameters: efficiency, speed and power factor. */
const CONSISTENT: Partial<Plate> = { ratedCurrentA: undefined };

function pointOf(scope: MotorScope, machine: Machine, load: number, voltage = 1): OperatingPoint {
  const point = operatingPoint(scope, machine, exact(load, '1'), {
    voltageRatio: exact(voltage, '1'),
    ambient: exact(25, 'K'),
  });
  if (!point) throw new Error('no such point');
  return point;
}

describe('rated losses', () => {
  it('add up to the stamped total and turn at the stamped speed at the rated point', () => {
    const { scope, machine } = evaluate(CONSISTENT);
    const point = pointOf(scope, machine, 1);
    expect(point.efficiency.value).toBeCloseTo(0.917, 6);
    expect(point.losses.total.value).toBeCloseTo(PLATE.ratedPowerKw * (1 / 0.917 - 1), 6);
    expect(point.speed.value).toBeCloseTo(1765, 4);
    expect(point.current.value).toBeCloseTo(machine.plate.ratedCurrent.value, 9);
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

  it('at no load are those of free running: no stray-load loss to speak of, core loss a little above the rated one', () => {
    const { scope, machine } = evaluate();
    const point = pointOf(scope, machine, 0);
    expect(point.shaftPower.value).toBe(0);
    expect(point.efficiency.value).toBe(0);
    expect(point.losses.stray.value).toBeLessThan(1e-3 * machine.rated.stray.value);
    expect(point.losses.rotor.value).toBeLessThan(1e-3 * machine.rated.rotor.value);
    // The air-gap voltage rises by the drop over the stator impedance, some 2 to 6 %; core loss with its square.
    expect(point.losses.core.value / machine.rated.core.value).toBeGreaterThan(1.02);
    expect(point.losses.core.value / machine.rated.core.value).toBeLessThan(1.13);
  });

  it('a measured resistance takes the place of the typical stator share: 1.5 I²R at the temperature of the rated point (IEEE 112 clause 5.4)', () => {
    const { machine } = evaluate({ statorResistanceOhm: 0.18, statorResistanceTempC: 25 });
    const hot = 0.18 * ((234.5 + 25 + machine.ratedRise.value) / (234.5 + 25));
    const expected = (1.5 * machine.plate.ratedCurrent.value ** 2 * hot) / 1000;
    // Within the doubt of the measurement, 1.2 %: the typical share still has a little weight.
    expect(Math.abs(machine.rated.stator.value / expected - 1)).toBeLessThan(0.006);
  });

  it('a resistance that cannot be is reported and left out', () => {
    const { plateFindings } = evaluate({ statorResistanceOhm: 1.8 });
    expect(plateFindings.map((found) => found.code)).toContain('resistance-contradicts-plate');
  });
});

describe('one reading', () => {
  it('the three ways agree on a consistent reading, and the losses are input less output', () => {
    const { estimates, combination, point } = evaluate();
    expect(estimates.map((estimate) => estimate.method)).toEqual(['input-power', 'slip', 'current', 'circuit']);
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

  it('the machine of the plate takes the measured input at the load by input power, within 1e-9', () => {
    const { scope, machine, metered, estimates } = evaluate();
    const load = estimates[0]?.loadFraction.value ?? 0;
    expect(pointOf(scope, machine, load, metered.voltageRatio.value).inputPower.value / 24.4).toBeCloseTo(1, 7);
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
    // The circuit adds the drop over the stator, so the square law holds to a few per cent only.
    expect(low / full / (440 / 460) ** 2).toBeGreaterThan(0.96);
    expect(low / full / (440 / 460) ** 2).toBeLessThan(1.03);
  });

  it('the current’s interval widens by itself towards no load', () => {
    const u = (currentA: number) => {
      const found = evaluate({}, { currentA }).estimates.find((estimate) => estimate.method === 'current');
      return found ? standardUncertainty(found.loadFraction) : Number.NaN;
    };
    expect(u(55)).toBeLessThan(0.09);
    expect(u(30)).toBeGreaterThan(1.5 * u(55));
    expect(evaluate({}, { currentA: 15 }).findings.map((found) => found.code)).toContain('current-below-magnetising');
  });

  it('estimates that share the plate are correlated, and the joint one is no surer than its evidence allows', () => {
    const { estimates, combination } = evaluate();
    const [power, , current] = estimates;
    if (!power || !current || !combination) throw new Error('three estimates were expected');
    expect(covariance(power.loadFraction, current.loadFraction)).not.toBe(0);
    const u = standardUncertainty(combination.loadFraction);
    const best = Math.min(...estimates.map((estimate) => standardUncertainty(estimate.loadFraction)));
    expect(u).toBeLessThanOrEqual(best * 1.0001);
    expect(u).toBeGreaterThan(0.5 * best);
  });

  it('a gross contradiction that no usual mistake explains is found, and the interval widened', () => {
    const { findings, combination } = evaluate({}, { shaftSpeedRpm: 1771 });
    expect(findings.map((found) => found.code)).toContain('estimates-disagree');
    expect(combination?.birgeRatio).toBeGreaterThan(1.5);
    const text = findings.find(({ code }) => code === 'estimates-disagree')?.text;
    expect(text).toMatch(/^The ways to the load in row 2 disagree .* \(input power \d+ ± \d+ %, slip \d+ ± \d+ %, current /);
  });

  it('where one way alone leads to the load, it is not said to disagree with others', () => {
    // Amperes below those that magnetise are no way to the load, but at odds with power and plate.
    const { findings, estimates } = evaluate({}, { inputPowerKw: 3.5, currentA: 9, shaftSpeedRpm: undefined });
    expect(estimates.filter(({ used }) => used).map(({ method }) => method)).toEqual(['input-power']);
    expect(findings.find(({ code }) => code === 'estimates-disagree')?.text).toMatch(
      /^What was read in row 2 and the stamps disagree more than their doubts allow, though one way alone leads to the load \(input power \d+ ± \d+ %\): were all/,
    );
  });

  it('a speed that contradicts all else is named and left out', () => {
    const { findings, combination, pulls } = evaluate({}, { shaftSpeedRpm: 1762 });
    expect(findings.map((found) => found.code)).toContain('speed-of-another-shaft');
    expect(combination?.birgeRatio).toBe(1);
    expect(pulls.some(({ name }) => name === 'speed_row_2')).toBe(false);
  });

  it('the pull of each reading is what the load moves by when it is left out', () => {
    const { combination, pulls } = evaluate();
    const speed = pulls.find(({ name }) => name === 'speed_row_2');
    const without = evaluate({}, { shaftSpeedRpm: undefined }).combination?.loadFraction.value ?? 0;
    const moved = (combination?.loadFraction.value ?? 0) - without;
    const foretold = (combination?.loadFraction.value ?? 0) - (speed?.loadsWithout[0] ?? 0);
    expect(Math.abs(foretold - moved)).toBeLessThan(0.1 * Math.abs(moved) + 1e-5);
  });

  it('a reading at the drive’s input is taken through the drive’s efficiency and never by slip', () => {
    const { estimates, findings } = evaluate({ driveFed: true }, { readingsAt: 'drive-input' });
    expect(estimates.map((estimate) => estimate.method)).toEqual(['input-power']);
    expect(findings.map((found) => found.code)).toContain('drive-without-frequency');
  });

  it('rated flux behind a drive: the same torque takes the same amperes and the same slip in r/min at two thirds of the frequency', () => {
    // Constant volts per hertz (Chapman, Electric Machinery Fundamentals, 6.9, from memory): torque hangs on the slip speed alone, but for the
    // drop at the stator's resistance and for friction, which do not fall with the frequency: two hundredths are allowed for them.
    const mains = evaluate();
    const slow = evaluate(
      { driveFed: true },
      { readingsAt: 'drive-output', frequencyHz: 40, shaftSpeedRpm: 1179.4, inputPowerKw: 16.4 },
    );
    const shaft = ({ estimates }: typeof mains, wanted: string) =>
      estimates.find(({ method }) => method === wanted)?.loadFraction?.value ?? 0;
    for (const method of ['current', 'slip']) {
      expect(shaft(mains, method)).toBeGreaterThan(0.5);
      const torques = shaft(slow, method) / 1179.4 / (shaft(mains, method) / 1779.4);
      expect(Math.abs(torques - 1), method).toBeLessThan(0.02);
    }
    expect(slow.findings.map(({ code }) => code)).not.toContain('current-below-magnetising');
    // What options are compared at stays the rated point.
    expect(slow.metered.voltageRatio.value).toBeCloseTo(2 / 3, 9);
    expect(slow.metered.voltageRatioAtRatedFrequency.value).toBe(1);
  });

  it('power beyond what the motor carries at a low voltage is not said to lie below that of free running', () => {
    // A sixth of voltage and frequency: the pull-out torque goes down with the drop at the stator's resistance, which stays.
    const slow = evaluate(
      { driveFed: true },
      {
        readingsAt: 'drive-output',
        frequencyHz: 10,
        voltageV: 460 / 6,
        currentA: undefined,
        shaftSpeedRpm: undefined,
        inputPowerKw: 12,
      },
    );
    const codes = slow.findings.map(({ code }) => code);
    expect(codes).toContain('load-impossible');
    expect(codes).not.toContain('power-below-no-load');
    expect(slow.findings.find(({ code }) => code === 'load-impossible')?.evidence.found).toBe('no');
    const free = evaluate({}, { currentA: undefined, shaftSpeedRpm: undefined, inputPowerKw: 0.8 });
    expect(free.findings.map(({ code }) => code)).toContain('power-below-no-load');
  });

  it('an hp plate and the same plate in kW give the same numbers', () => {
    const a = evaluate({ ratedPowerUnit: 'hp' });
    const b = evaluate({ ratedPowerUnit: 'kW' });
    expect(b.point?.shaftPower.value).toBe(a.point?.shaftPower.value);
  });
});
