import { describe, expect, it } from 'vitest';
import { evaluateMotor } from '@/lib/engine/evaluate';
import { LOAD } from '@/lib/engine/load/findings';
import { SUSPICION } from '@/lib/engine/load/suspicion';
import type { Motor } from '@/lib/engine/motor';
import { motorResult } from '@/lib/engine/motor-result';
import { PLATE } from '@/lib/engine/nameplate/findings';
import type { Finding } from '@/lib/engine/quantity/finding';
import { TRUST } from '@/lib/engine/trust/findings';
import { motorOf, READING, study } from './support/study';

const rated = 4 * 0.25 * 1800;

/** For each code of plate, load and trust: a motor that has it, beside a sound one that has not. */
const TABLE: Readonly<Record<string, Motor>> = {
  'efficiency-as-fraction': motorOf({ plate: { nominalEfficiencyPct: 0.917 } }),
  'efficiency-impossible': motorOf({ plate: { nominalEfficiencyPct: 32.6 } }),
  'efficiency-by-test': motorOf({
    motor: { tested: { name: 'shop', measured: { efficiency: { value: 0.916, u: 0.003, unit: '1' } } } },
  }),
  'efficiency-by-old-method': motorOf({ plate: { yearBuilt: 1995 } }),
  'test-contradicts-plate': motorOf({
    motor: { tested: { name: 'shop', measured: { efficiency: { value: 0.87, u: 0.003, unit: '1' } } } },
  }),
  'class-contradicts-efficiency': motorOf({ plate: { nominalEfficiencyPct: 88.5, efficiencyClass: 'premium' } }),
  'efficiency-unknown': motorOf({ plate: { nominalEfficiencyPct: undefined } }),
  'power-factor-as-fraction': motorOf({ plate: { ratedPowerFactorPct: 0.84 } }),
  'power-factor-impossible': motorOf({ plate: { ratedPowerFactorPct: -84 } }),
  'poles-contradict-speed': motorOf({ plate: { poles: 8 } }),
  'poles-assumed': motorOf({ plate: { ratedSpeedRpm: undefined }, reading: { shaftSpeedRpm: undefined } }),
  'rated-speed-impossible': motorOf({ plate: { ratedSpeedRpm: rated } }),
  'slip-contradicts-efficiency': motorOf({ plate: { ratedSpeedRpm: 1670 } }),
  'current-of-other-voltage': motorOf({ plate: { ratedCurrentA: 122 } }),
  'current-contradicts-plate': motorOf({ plate: { ratedCurrentA: 88 } }),
  'resistance-contradicts-plate': motorOf({ plate: { statorResistanceOhm: 6 } }),
  'no-load-contradicts-plate': motorOf({ plate: { noLoadPowerKw: 9, noLoadCurrentA: 25 } }),
  'plate-value-impossible': motorOf({ plate: { frictionWindageKw: -0.4 } }),
  'reading-value-impossible': motorOf({ reading: { currentA: -40.6 } }),
  'frequency-not-the-mains': motorOf({ reading: { frequencyHz: 600 } }),
  'synchronous-limited': motorOf({ plate: { machineKind: 'synchronous' } }),
  'wound-rotor-rings': motorOf({ plate: { machineKind: 'wound-rotor' } }),
  'rewound-before': motorOf({ plate: { rewindCount: 1 } }),
  'power-negative': motorOf({ reading: { inputPowerKw: -24.4 } }),
  'power-impossible': motorOf({ reading: { inputPowerKw: 240 } }),
  'power-above-apparent': motorOf({ reading: { currentA: 15, shaftSpeedRpm: undefined } }),
  'power-below-no-load': motorOf({ reading: { inputPowerKw: 0.8, currentA: undefined, shaftSpeedRpm: undefined } }),
  'power-factor-contradicts': motorOf({ reading: { powerFactorPct: 97 } }),
  'power-factor-typed-as-fraction': motorOf({ reading: { powerFactorPct: 0.75 } }),
  'voltage-phase-for-line': motorOf({ reading: { voltageV: 267 } }),
  'voltage-far-from-plate': motorOf({ reading: { voltageV: 590 } }),
  'voltage-assumed': motorOf({ reading: { voltageV: undefined } }),
  'speed-above-synchronous': motorOf({ reading: { shaftSpeedRpm: 1850 } }),
  'speed-not-the-motors': motorOf({ reading: { shaftSpeedRpm: 880 } }),
  'current-below-magnetising': motorOf({ reading: { currentA: 15 } }),
  'current-low-load': motorOf({ reading: { currentA: 30 } }),
  'not-linear': motorOf({ reading: { inputPowerKw: undefined, shaftSpeedRpm: undefined, currentA: 22 } }),
  'load-not-told-from-none': motorOf({ reading: { inputPowerKw: 1.9, currentA: 22.5, shaftSpeedRpm: 1799 } }),
  'load-impossible': motorOf({ reading: { inputPowerKw: undefined, currentA: 120 } }),
  'estimates-disagree': motorOf({ reading: { inputPowerKw: 19.5 } }),
  'plate-fits-no-machine': motorOf({ plate: { designLetter: 'D', ratedSpeedRpm: 1500 } }),
  'power-sensor-reversed': motorOf({ reading: { inputPowerKw: 24.4 / 3 } }),
  'power-sensor-missing': motorOf({ reading: { inputPowerKw: (24.4 * 2) / 3 } }),
  'one-of-two-mistakes': motorOf({ reading: { currentA: 18, inputPowerKw: 16.3, shaftSpeedRpm: undefined } }),
  'power-not-confirmed': motorOf({ reading: { currentA: 34, inputPowerKw: 13, shaftSpeedRpm: undefined } }),
  'power-in-horsepower': motorOf({ reading: { inputPowerKw: 24.4 / 0.7457 } }),
  'power-in-watts': motorOf({ reading: { inputPowerKw: 24400 } }),
  'voltage-not-the-motors': motorOf({ reading: { voltageV: 231 } }),
  'current-of-a-winding': motorOf({ reading: { inputPowerKw: undefined, currentA: 40.6 * Math.sqrt(3) } }),
  'current-of-half-the-conductors': motorOf({ reading: { currentA: 20.3 } }),
  'stamped-current-not-the-motors': motorOf({ plate: { ratedCurrentA: 61 * 0.76, ratedPowerFactorPct: undefined } }),
  'speed-digits-swapped': motorOf({ reading: { shaftSpeedRpm: 7179 } }),
  'speed-of-another-shaft': motorOf({ reading: { shaftSpeedRpm: 880 } }),
  'poles-not-the-motors': motorOf({ plate: { poles: 6, ratedSpeedRpm: 1175 } }),
  'read-uncoupled': motorOf({ reading: { inputPowerKw: 1.4, currentA: 22, shaftSpeedRpm: 1799 } }),
  'plate-of-another-motor': motorOf({
    plate: { ratedSpeedRpm: 1785, nominalEfficiencyPct: 95.4, ratedPowerFactorPct: 92, ratedCurrentA: 54 },
  }),
  'drive-without-frequency': motorOf({ plate: { driveFed: true }, reading: { readingsAt: 'drive-input' } }),
  'drive-fed-losses': motorOf({ plate: { driveFed: true }, reading: { readingsAt: 'drive-output', frequencyHz: 60 } }),
  'uncoupled-reading': motorOf({ reading: { readingCondition: 'uncoupled' } }),
  'reading-without-load': motorOf({ reading: { inputPowerKw: undefined, currentA: undefined, shaftSpeedRpm: undefined } }),
  'no-usable-reading': motorOf({ readings: [] }),
  'not-in-service': motorOf({ plate: { status: 'retired' }, readings: [] }),
  'latest-reading-unusable': motorOf({
    readings: [
      READING,
      { ...READING, row: 3, takenAt: '2025-07-01', inputPowerKw: -3, currentA: undefined, shaftSpeedRpm: undefined },
    ],
  }),
  'reading-stale': motorOf({ reading: { takenAt: '2017-05-01' } }),
  'reading-undated': motorOf({ reading: { takenAt: undefined } }),
  'reading-after-study': motorOf({ reading: { takenAt: '2027-01-01' } }),
  'one-way-to-load': motorOf({ reading: { currentA: undefined, shaftSpeedRpm: undefined } }),
  'second-way-weak': motorOf({ reading: { inputPowerKw: 13, currentA: 28, shaftSpeedRpm: undefined } }),
  overloaded: motorOf({ reading: { inputPowerKw: 46, currentA: 68.5, shaftSpeedRpm: 1759 } }),
};

/** Codes that come only in a study by IEC. */
const IEC_ONLY: ReadonlySet<string> = new Set(['efficiency-by-old-method']);

function findingsOf(motor: Motor, standards: 'nema' | 'iec' = 'nema'): readonly Finding[] {
  const evaluation = evaluateMotor(motor, study({ standards }));
  return [
    ...motorResult(evaluation).trust.findings,
    ...evaluation.readings.flatMap((reading) => [...reading.findings, ...reading.trustFindings]),
  ];
}

const codes = [
  ...Object.keys(PLATE.kinds),
  ...Object.keys(LOAD.kinds),
  ...Object.keys(SUSPICION.kinds),
  ...Object.keys(TRUST.kinds),
];

describe('findings of plate, load and trust', () => {
  it('the table holds every code', () => {
    expect(Object.keys(TABLE).sort()).toEqual([...codes].sort());
  });

  it('a consistent motor has none but the usual remarks, and is sound', () => {
    const evaluation = evaluateMotor(motorOf(), study());
    expect(evaluation.trust.findings.filter((found) => found.severity !== 'note' && codes.includes(found.code))).toEqual([]);
    expect(evaluation.trust.level).toBe('sound');
  });

  it.each(Object.entries(TABLE))('%s is made, with cause and what to do', (code, motor) => {
    const found = findingsOf(motor, IEC_ONLY.has(code) ? 'iec' : 'nema').find((finding) => finding.code === code);
    expect(found, code).toBeDefined();
    for (const words of [found?.text, found?.cause, found?.next]) {
      expect(words?.length).toBeGreaterThan(15);
      expect(words).not.toMatch(/undefined|NaN|Infinity|\[object/);
    }
  });

  it.each(
    Object.entries(TABLE).filter(([code]) =>
      [
        'power-negative',
        'power-impossible',
        'power-above-apparent',
        'power-below-no-load',
        'no-usable-reading',
        'not-in-service',
      ].includes(code),
    ),
  )('%s makes the motor not usable: no load, no losses', (_, motor) => {
    const evaluation = evaluateMotor(motor, study());
    expect(evaluation.trust.level).toBe('not-usable');
    expect(evaluation.point).toBeUndefined();
  });

  it('low load alone never lowers trust', () => {
    const evaluation = evaluateMotor(motorOf({ reading: { inputPowerKw: 11.2, currentA: 28.5, shaftSpeedRpm: 1791 } }), study());
    expect(evaluation.point?.loadFraction.value).toBeLessThan(0.35);
    expect(evaluation.trust.level).toBe('sound');
  });
});
