import { describe, expect, it } from 'vitest';
import { evaluateMotor } from '@/lib/engine/evaluate';
import type { Motor } from '@/lib/engine/motor';
import { motorResult } from '@/lib/engine/motor-result';
import { motorOf, PLATE, READING, study } from './support/study';

const resultOf = (motor: Motor) => motorResult(evaluateMotor(motor, study()));
const codesOf = (motor: Motor) => resultOf(motor).trust.findings.map(({ code }) => code);
const loadOf = (motor: Motor) => resultOf(motor).load_fraction?.value ?? Number.NaN;

/** A motor that runs free: 22 A and 1.9 kW cover its losses and hardly more. */
const FREE = { inputPowerKw: 1.9, currentA: 22.5, shaftSpeedRpm: 1799 };

describe('strange but valid sheets', () => {
  it('a load that cannot be told from none is said to be so, and its motor is not sound', () => {
    const { trust, load_fraction: load } = resultOf(motorOf({ reading: FREE }));
    expect(load?.value).toBeLessThan(0.03);
    expect(trust.findings.map(({ code }) => code)).toContain('load-not-told-from-none');
    expect(trust.level).toBe('provisional');
  });

  it('a load of a fifth is told from none, and sound', () => {
    const fifth = motorOf({ reading: { inputPowerKw: 9, currentA: 26, shaftSpeedRpm: 1793.5 } });
    expect(codesOf(fifth)).not.toContain('load-not-told-from-none');
    expect(resultOf(fifth).trust.level).toBe('sound');
  });

  it('no motor lacks its load without a finding that says why', () => {
    for (const inputPowerKw of [0.1, 0.5, 0.9, 1.1, 1.3, 1.5, 1.7, 60, 65, 70, 75]) {
      for (const currentA of [18, 22, 26, 100, 120]) {
        const { trust, load_fraction: load } = resultOf(motorOf({ reading: { ...FREE, inputPowerKw, currentA } }));
        const others = trust.findings.filter(({ code, severity }) => severity !== 'note' && code !== 'no-usable-reading');
        if (!load) expect(others.length, `${inputPowerKw} kW, ${currentA} A`).toBeGreaterThan(0);
      }
    }
  });

  it('limits of an efficiency stay between none and all', () => {
    const { efficiency } = resultOf(motorOf({ reading: { inputPowerKw: undefined, currentA: undefined, shaftSpeedRpm: 1799 } }));
    expect(efficiency?.low).toBeGreaterThanOrEqual(0);
    expect(efficiency?.high).toBeLessThanOrEqual(1);
  });

  it('a leading power factor gives no input power, that of a synchronous motor does', () => {
    const reading = { inputPowerKw: undefined, shaftSpeedRpm: undefined, powerFactorPct: -75 };
    const methods = (motor: Motor) => resultOf(motor).estimates.map(({ method }) => method);
    expect(methods(motorOf({ reading }))).not.toContain('input-power');
    expect(methods(motorOf({ reading: { ...reading, powerFactorPct: 75 } }))).toContain('input-power');
    expect(codesOf(motorOf({ plate: { machineKind: 'synchronous' }, reading }))).not.toContain('reading-value-impossible');
  });

  it('a frequency at the drive’s input that no mains has is the drive’s output', () => {
    const methods = (frequencyHz: number) =>
      resultOf(
        motorOf({ plate: { driveFed: true }, reading: { readingsAt: 'drive-input', frequencyHz, shaftSpeedRpm: 1423 } }),
      ).estimates.map(({ method }) => method);
    expect(methods(48)).toContain('slip');
    expect(methods(60)).not.toContain('slip');
  });

  it('a resistance that was refused bears on nothing else', () => {
    const plain = resultOf(motorOf());
    const wild = resultOf(motorOf({ plate: { statorResistanceOhm: 12, statorResistanceTempC: 25 } }));
    expect(wild.load_fraction?.value).toBeCloseTo(plain.load_fraction?.value ?? Number.NaN, 9);
    expect(wild.trust.findings.filter(({ severity }) => severity !== 'note').map(({ code }) => code)).toEqual([
      'resistance-contradicts-plate',
    ]);
  });

  it('tests written on the plate that cannot be leave the load as it is', () => {
    const load = loadOf(motorOf());
    expect(loadOf(motorOf({ plate: { frictionWindageKw: 3 } }))).toBeCloseTo(load, 9);
    expect(loadOf(motorOf({ plate: { noLoadCurrentA: 58 } }))).toBeCloseTo(load, 9);
  });

  it('temperatures that contradict each other are those of a reading without any', () => {
    const swapped = motorOf({ reading: { windingTempC: 20, windingTempMethod: 'embedded', ambientC: 70 } });
    expect(loadOf(swapped)).toBeCloseTo(loadOf(motorOf()), 9);
  });

  it('an efficiency that no motor of the rating has counts as not known; poor and excellent ones are believed', () => {
    const at = (nominalEfficiencyPct: number) => codesOf(motorOf({ plate: { nominalEfficiencyPct } }));
    expect(at(50)).toContain('efficiency-impossible');
    expect(at(98)).toContain('efficiency-impossible');
    // 85 % is below the average of standard motors of 50 hp by half its losses; 95.4 % is IE4 at 37 kW (IEC 60034-30-1).
    expect(at(85)).not.toContain('efficiency-impossible');
    expect(at(95.4)).not.toContain('efficiency-impossible');
  });

  it('a wound-rotor motor slowed by its rings is not told that another shaft was read', () => {
    const slow = motorOf({ plate: { machineKind: 'wound-rotor' }, reading: { shaftSpeedRpm: 1500 } });
    expect(codesOf(slow)).toContain('wound-rotor-rings');
    expect(codesOf(slow)).not.toContain('speed-of-another-shaft');
  });

  it('the plate of a motor of twice the rating is named: power, amperes and speed all contradict it', () => {
    const plate = {
      ratedPowerKw: 2 * PLATE.ratedPowerKw,
      ratedCurrentA: 132,
      ratedSpeedRpm: 1780,
      nominalEfficiencyPct: 93,
      ratedPowerFactorPct: 76,
    };
    const reading = { ...READING, inputPowerKw: 41, currentA: 61, shaftSpeedRpm: 1764 };
    expect(codesOf(motorOf({ plate, reading }))).toContain('plate-of-another-motor');
  });
});
