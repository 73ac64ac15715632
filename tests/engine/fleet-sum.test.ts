import { describe, expect, it } from 'vitest';
import { evaluateMotor, type Motor, meterCause, motorResult, sumOverMotors } from '@/lib/engine';
import { generateDemo } from '@/lib/features/demo/generate';
import { defaultSettings } from '@/lib/features/study/settings';
import { loadTables } from '@/lib/reference/load';

const { tables, prices } = loadTables();
const study = { settings: defaultSettings(), tables, prices };

/** A motor on the line with a reading of its power, among those of the invented works. */
const metered = generateDemo({ asOf: study.settings.asOf })
  .map(({ motor }) => motor)
  .filter(({ plate, readings }) => plate.driveFed !== true && readings.length === 1 && readings[0]?.inputPowerKw !== undefined)
  .slice(0, 40);

function readWith(motor: Motor, instrument: string | undefined): Motor {
  return { ...motor, readings: motor.readings.map((reading) => ({ ...reading, instrument, powerAccuracyPct: 5 })) };
}

/** The sum of input power over motors, each read with the instrument that it is given. */
function inputPower(instrumentOf: (index: number) => string | undefined) {
  const results = metered.map((motor, index) => motorResult(evaluateMotor(readWith(motor, instrumentOf(index)), study)));
  const terms = results.flatMap(({ site, input_power: figure, meters = [] }) =>
    figure ? [{ ...figure, shared: meters.map((meter) => [meterCause(site, meter), meter.input_power] as const) }] : [],
  );
  return { terms, sum: sumOverMotors(terms) };
}

describe('a sum over motors', () => {
  it('adds a common cause before squaring: ten resistors calibrated against one standard (JCGM 100, example in 5.2.2)', () => {
    // Ten resistors of 1000 Ω, each with u = 100 mΩ from one standard and nothing else: 10 kΩ with 1 Ω in series, where independent ones had 0.32 Ω.
    const one = { value: 1000, u: 0.1 };
    const together = sumOverMotors(Array.from({ length: 10 }, () => ({ ...one, shared: [['standard', 0.1]] as const })));
    expect(together.value).toBe(10_000);
    expect(together.u).toBeCloseTo(1, 12);
    const apart = sumOverMotors(Array.from({ length: 10 }, () => ({ ...one, shared: [] })));
    expect(apart.u).toBeCloseTo(0.32, 2);
  });

  it('lets a common cause cancel where it moves two motors in opposite ways, and has none over nothing', () => {
    const pair = sumOverMotors([
      { value: 5, u: 0.5, shared: [['meter', 0.3]] },
      { value: 7, u: 0.5, shared: [['meter', -0.3]] },
    ]);
    expect(pair.u).toBeCloseTo(Math.hypot(0.4, 0.4), 12);
    expect(sumOverMotors([])).toEqual({ value: 0, u: 0 });
  });

  it('is less sure where one meter read every motor than where each had its own, and the same by the whole covariance', () => {
    expect(metered.length).toBeGreaterThan(20);
    const shared = inputPower(() => 'clamp 1');
    const own = inputPower((index) => `clamp ${index}`);
    expect(shared.sum.value).toBeCloseTo(own.sum.value, 6);
    expect(own.sum.u).toBeCloseTo(Math.hypot(...own.terms.map(({ u }) => u)), 6);
    expect(shared.sum.u).toBeGreaterThan(2 * own.sum.u);
    // GUM eq. (13), written out: variances on the diagonal, products of common contributions beside it.
    let variance = 0;
    shared.terms.forEach((a, i) => {
      shared.terms.forEach((b, j) => {
        variance += i === j ? a.u ** 2 : a.shared.reduce((sum, [cause, by]) => sum + by * (new Map(b.shared).get(cause) ?? 0), 0);
      });
    });
    expect(shared.sum.u).toBeCloseTo(Math.sqrt(variance), 6);
  });

  it('takes readings without a named instrument as read with one set of meters', () => {
    expect(inputPower(() => undefined).sum.u).toBeCloseTo(inputPower(() => 'clamp 1').sum.u, 6);
  });

  it('leaves every figure of a single motor as it is, whoever else was read with the meter', () => {
    const [motor] = metered;
    if (!motor) throw new Error('no motor');
    const { meters: _with, ...one } = motorResult(evaluateMotor(readWith(motor, 'clamp 1'), study));
    const { meters: _without, ...other } = motorResult(evaluateMotor(readWith(motor, 'clamp 2'), study));
    expect(JSON.stringify(one)).toBe(JSON.stringify(other));
  });
});
