import { describe, expect, it } from 'vitest';
import { evaluateMotor, type Motor, motorResult } from '@/lib/engine';
import { withTest } from '@/lib/features/bench/tested';
import { loadTables } from '@/lib/reference/load';
import { study } from '../support/study';
import { drawnErrors, NO_ERRORS, seeded, syntheticTest, TRUTH, trueAt, trueAtPower } from './synthetic';

const { tables } = loadTables();

/** The synthetic motor as an old plate might show it: no efficiency, no power factor. Read at 70 % load on good meters. */
function motorAt(load: number): Motor {
  const at = trueAtPower(load * TRUTH.ratedPowerKw, 70);
  return {
    site: 'North',
    tag: 'S-1',
    plate: {
      ratedPowerKw: TRUTH.ratedPowerKw,
      ratedPowerUnit: 'hp',
      status: 'running',
      ratedVoltageV: TRUTH.ratedVoltageV,
      ratedSpeedRpm: 1769,
      machineKind: 'cage',
      designLetter: 'B',
    },
    hoursPerYear: 6000,
    readings: [
      {
        row: 2,
        takenAt: '2025-06-01',
        readingsAt: 'motor',
        readingCondition: 'coupled',
        voltageV: TRUTH.ratedVoltageV,
        inputPowerKw: at.inputKw,
        windingTempC: 70,
        windingTempMethod: 'resistance',
        ambientC: 25,
      },
    ],
  };
}

const test = (seed?: number) => ({
  test: syntheticTest(seed === undefined ? NO_ERRORS : drawnErrors(seeded(seed))),
  takenAt: '2025-03-01',
  rotorConductor: undefined,
});

describe('a bench test takes the place of what it measured in the model of the machine', () => {
  const motor = motorAt(0.7);
  const truth = trueAtPower(0.7 * TRUTH.ratedPowerKw, 70);
  const without = motorResult(evaluateMotor(motor, study()));

  it('moves the efficiency to the truth and narrows it; what it measured of each loss shows', () => {
    const tested = withTest(motor, [test()], tables);
    expect(tested.tested?.measured.core?.value).toBeCloseTo(TRUTH.coreKw, 3);
    const result = motorResult(evaluateMotor(tested, study()));
    const before = without.efficiency;
    const after = result.efficiency;
    if (!before || !after || !result.losses || !without.losses) throw new Error('the motor has no efficiency');
    expect(Math.abs(after.value - truth.efficiency)).toBeLessThan(0.003);
    expect(Math.abs(after.value - truth.efficiency)).toBeLessThan(Math.abs(before.value - truth.efficiency));
    expect(after.u).toBeLessThan(before.u / 2);
    expect(result.losses.friction_windage.value).toBeCloseTo(TRUTH.frictionKw, 2);
    expect(result.losses.friction_windage.u).toBeLessThan(without.losses.friction_windage.u / 3);
    // The test ran free; under load the air-gap voltage, and with its square the core loss, is a few per cent lower.
    expect(result.losses.core.value / TRUTH.coreKw).toBeGreaterThan(0.9);
    expect(result.losses.core.value / TRUTH.coreKw).toBeLessThan(1.01);
    expect(Math.abs(result.losses.stray.value - truth.stray) / truth.total).toBeLessThan(0.02);
    expect(result.trust.findings.map(({ code }) => code)).toContain('efficiency-by-test');
    expect(result.trust.findings.map(({ code }) => code)).not.toContain('efficiency-unknown');
  });

  it('holds the truth in its 95 % limits, in tests with drawn errors of meters', () => {
    let inside = 0;
    for (let seed = 1; seed <= 40; seed++) {
      const tested = withTest(motor, [test(seed)], tables);
      const { efficiency } = motorResult(evaluateMotor(tested, study()));
      if (efficiency && Math.abs(efficiency.value - truth.efficiency) < 1.96 * efficiency.u) inside++;
    }
    // 38 of 40 would be 95 %; fewer than 35 happen once in thirty such series.
    expect(inside).toBeGreaterThanOrEqual(35);
  });

  it('the model draws at no load what the test drew, and has its resistance', () => {
    const { machine } = evaluateMotor(withTest(motor, [test()], tables), study());
    const free = trueAt(0, 70);
    const { circuit, base } = machine.model;
    expect((circuit.magnetising * base.currentA) / free.currentA).toBeGreaterThan(0.85);
    expect((circuit.magnetising * base.currentA) / free.currentA).toBeLessThan(1.02);
    expect(Math.abs(machine.rated.stray.value - trueAtPower(TRUTH.ratedPowerKw, 89).stray)).toBeLessThan(0.03);
  });

  it('a test that was withdrawn, refused or made before the last rewind does not count', () => {
    const withdrawn = { at: new Date('2025-04-01'), by: 'R. Example', reason: 'torque meter not zeroed' };
    expect(withTest(motor, [{ ...test(), withdrawn }], tables)).toBe(motor);
    const rewound = { ...motor, plate: { ...motor.plate, lastRewindYear: 2026 } };
    expect(withTest(rewound, [test()], tables)).toBe(rewound);
    const scattered = syntheticTest(NO_ERRORS, (point, section) =>
      section === 'load' ? { ...point, torqueNm: (point.torqueNm ?? 0) + (point.row % 2 === 0 ? 3 : -3) } : point,
    );
    expect(withTest(motor, [{ ...test(), test: scattered }], tables)).toBe(motor);
    // The newest that counts is taken, not the newest.
    const kept = withTest(motor, [{ ...test(), withdrawn, takenAt: '2025-05-01' }, test()], tables);
    expect(kept.tested?.takenAt).toBe('2025-03-01');
  });

  it('a plate that the test contradicts is named among the motor’s findings', () => {
    const stamped = (ratedCurrentA: number): Motor => ({ ...motor, plate: { ...motor.plate, ratedCurrentA } });
    const at = trueAtPower(TRUTH.ratedPowerKw, 89).currentA;
    const result = (m: Motor) => motorResult(evaluateMotor(withTest(m, [test()], tables), study())).trust;
    expect(result(stamped(at)).findings.map(({ code }) => code)).not.toContain('current-off-plate');
    expect(result(stamped(at * 1.25)).findings.map(({ code }) => code)).toContain('current-off-plate');
  });

  it('a plate that promises otherwise is named, and the test believed', () => {
    const promised = { ...motor, plate: { ...motor.plate, nominalEfficiencyPct: 88 } };
    const { trust, efficiency } = motorResult(evaluateMotor(withTest(promised, [test()], tables), study()));
    expect(trust.findings.map(({ code }) => code)).toContain('test-contradicts-plate');
    expect(Math.abs((efficiency?.value ?? 0) - truth.efficiency)).toBeLessThan(0.003);
  });
});
