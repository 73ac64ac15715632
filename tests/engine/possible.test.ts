import { describe, expect, it } from 'vitest';
import { evaluateMotor } from '@/lib/engine/evaluate';
import type { Plate, Reading } from '@/lib/engine/motor';
import { motorResult } from '@/lib/engine/motor-result';
import { leaveOutImpossible } from '@/lib/engine/possible';
import { motorOf, study } from './support/study';

const PLATES: readonly Partial<Plate>[] = [
  { serviceFactor: 0 },
  { serviceFactor: -1.15 },
  { statorResistanceOhm: -0.18 },
  { statorResistanceOhm: 0.18, statorResistanceTempC: -234.5 },
  { noLoadCurrentA: -20, noLoadPowerKw: 1 },
  { noLoadCurrentA: 20, noLoadPowerKw: -1 },
  { noLoadCurrentA: 20, noLoadVoltageV: 0 },
  { frictionWindageKw: -0.4 },
  { rewindCount: -1 },
  { yearBuilt: 85 },
  { speedRatio: 0 },
  { peakLoadKw: -30 },
  { loadInertiaKgm2: -2 },
  { demandCoincidence: 1.5 },
  { quotedPrice: -5 },
  { quotedRepair: -5 },
  { unplannedStopCost: -1 },
];

const READINGS: readonly Partial<Reading>[] = [
  { voltageV: 0 },
  { voltageV: 450, voltagesV: [460, -440, 462] },
  { currentA: -40.6 },
  { currentA: 13, currentsA: [40, 41, -42] },
  { powerFactorPct: 184 },
  { frequencyHz: 0 },
  { shaftSpeedRpm: -1779 },
  { windingTempC: 4000, windingTempMethod: 'resistance' },
  { powerAccuracyPct: -1 },
  { vibrationMmS: -2 },
  { insulationResistanceMohm: -5, insulationTempC: 30 },
  { insulationResistanceMohm: 5, insulationTempC: -300 },
  { polarizationIndex: -2 },
  { rotorSidebandDb: -45 },
  { resistancesOhm: [0.18, 0, 0.18] },
  { bearingTempC: 600 },
];

const CODES = ['plate-value-impossible', 'reading-value-impossible'];
const codesOf = (evaluation: ReturnType<typeof evaluateMotor>) =>
  evaluation.trust.findings.map((found) => found.code).filter((code) => CODES.includes(code));

describe('values that nature does not allow', () => {
  it('leave a motor without any as it is', () => {
    const motor = motorOf();
    expect(leaveOutImpossible(motor)).toEqual({ motor, plate: [], readings: [[]], others: [] });
    expect(leaveOutImpossible(motor).motor).toBe(motor);
  });

  it.each([
    ...PLATES.map((plate) => [JSON.stringify(plate), motorOf({ plate })] as const),
    ...READINGS.map((reading) => [JSON.stringify(reading), motorOf({ reading })] as const),
  ])('%s: one finding names it, and no figure is impossible', (_, motor) => {
    const evaluation = evaluateMotor(motor, study());
    expect(codesOf(evaluation)).toHaveLength(1);
    const result = motorResult(evaluation);
    // JSON writes a number that is not finite as null.
    expect(JSON.stringify(result)).not.toContain('null');
    for (const loss of Object.values(result.losses ?? {})) expect(loss.value).toBeGreaterThanOrEqual(0);
  });

  it('are as if the cell were empty, but for the finding and the trust', () => {
    const wrong = motorResult(evaluateMotor(motorOf({ plate: { frictionWindageKw: -0.4, quotedPrice: -5 } }), study()));
    const empty = motorResult(evaluateMotor(motorOf(), study()));
    expect(wrong.losses).toEqual(empty.losses);
    expect(wrong.options).toEqual(empty.options);
    expect([wrong.trust.level, empty.trust.level]).toEqual(['provisional', 'sound']);
  });

  it('a current of zero in one phase is possible: a blown fuse', () => {
    const motor = motorOf({ reading: { currentA: 27, currentsA: [40, 41, 0] } });
    expect(leaveOutImpossible(motor).motor).toBe(motor);
  });

  it('cap the trust only where the energy figures rest on them', () => {
    for (const motor of [motorOf({ plate: { quotedRepair: -5 } }), motorOf({ reading: { vibrationMmS: -2 } })])
      expect(evaluateMotor(motor, study()).trust.level).toBe('sound');
    expect(evaluateMotor(motorOf({ reading: { currentA: -40 } }), study()).trust.level).toBe('provisional');
  });

  it('stay visible as what the meter showed', () => {
    const result = motorResult(evaluateMotor(motorOf({ reading: { currentA: -40.6 } }), study()));
    expect(result.readings[0]?.metered.current).toBe(-40.6);
  });
});

describe('a synchronous motor', () => {
  it('has its load from input power alone: its field sets the reactive current', () => {
    const motor = motorOf({ plate: { machineKind: 'synchronous', ratedSpeedRpm: 1800 }, reading: { shaftSpeedRpm: 1800 } });
    const result = motorResult(evaluateMotor(motor, study()));
    expect(result.estimates.map((estimate) => estimate.method)).toEqual(['input-power', 'combined']);
    expect(result.trust.findings.map((found) => found.code)).toContain('synchronous-limited');
  });
});
