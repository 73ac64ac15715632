import { describe, expect, it } from 'vitest';
import { INDICATORS } from '@/lib/engine/condition/registry';
import { evaluateMotor } from '@/lib/engine/evaluate';
import { motorOf, study } from '../support/study';
import { type Changes, full, judge, three } from './judged';

/** Limit by limit: a value just below, on, and just above, with the band that each must have. Limits: see the table of limits. */
const TABLE: readonly {
  id: string;
  name: string;
  at: (value: number) => Changes;
  cases: readonly (readonly [number, string])[];
}[] = [
  {
    id: 'voltage-unbalance',
    name: '1 % (NEMA MG 1 12.45)',
    at: (v) => ({ reading: { voltagesV: three(460, v), voltageV: 460 } }),
    cases: [
      [0.3, 'within'],
      [0.99, 'near'],
      [1.001, 'beyond'],
      [1.5, 'beyond'],
    ],
  },
  {
    id: 'voltage-deviation',
    name: '10 % (NEMA MG 1 12.44)',
    at: (v) => ({ reading: { voltageV: 460 * (1 + v / 100) } }),
    cases: [
      [2, 'within'],
      [9.9, 'near'],
      [10.1, 'beyond'],
      [-10.1, 'beyond'],
      [-9.9, 'near'],
    ],
  },
  {
    id: 'winding-resistance-unbalance',
    name: '2 % random wound (AR100, memory)',
    at: (v) => ({ reading: { resistancesOhm: three(0.2, v), resistanceAt: 'motor' } }),
    cases: [
      [1, 'within'],
      [1.99, 'near'],
      [2.01, 'beyond'],
    ],
  },
  {
    id: 'winding-resistance-unbalance',
    name: '1 % form wound (AR100, memory)',
    at: (v) => ({ plate: { winding: 'form' }, reading: { resistancesOhm: three(0.2, v), resistanceAt: 'motor' } }),
    cases: [
      [0.5, 'within'],
      [0.99, 'near'],
      [1.01, 'beyond'],
    ],
  },
  {
    id: 'winding-resistance-unbalance',
    name: '5 % from the starter (practice)',
    at: (v) => ({ reading: { resistancesOhm: three(0.2, v), resistanceAt: 'starter' } }),
    cases: [
      [3, 'within'],
      [4.9, 'near'],
      [5.1, 'beyond'],
    ],
  },
  {
    id: 'insulation-resistance',
    name: '5 MΩ random wound (IEEE 43)',
    at: (v) => ({ reading: { insulationResistanceMohm: v, insulationTempC: 40 } }),
    cases: [
      [500, 'within'],
      [5.01, 'near'],
      [4.99, 'beyond'],
    ],
  },
  {
    id: 'insulation-resistance',
    name: '100 MΩ form wound (IEEE 43)',
    at: (v) => ({
      plate: { ratedVoltageV: 4000 },
      reading: { voltageV: 4000, insulationResistanceMohm: v, insulationTempC: 40 },
    }),
    cases: [
      [2000, 'within'],
      [101, 'near'],
      [99, 'beyond'],
    ],
  },
  {
    id: 'insulation-resistance',
    name: 'kV + 1 MΩ old form wound (IEEE 43)',
    at: (v) => ({
      plate: { ratedVoltageV: 4000, yearBuilt: 1962, insulationSystem: 'thermoplastic' },
      reading: { voltageV: 4000, insulationResistanceMohm: v, insulationTempC: 40 },
    }),
    cases: [
      [60, 'within'],
      [5.1, 'near'],
      [4.9, 'beyond'],
    ],
  },
  {
    id: 'polarization-index',
    name: '2.0 class F form wound (IEEE 43)',
    at: (v) => ({
      plate: { ratedVoltageV: 4000, winding: 'form', insulationClass: 'F' },
      reading: { voltageV: 4000, polarizationIndex: v },
    }),
    cases: [
      [4, 'within'],
      [2.01, 'near'],
      [1.99, 'beyond'],
    ],
  },
  {
    id: 'polarization-index',
    name: '1.5 class A form wound (IEEE 43)',
    at: (v) => ({
      plate: { ratedVoltageV: 4000, winding: 'form', insulationClass: 'A' },
      reading: { voltageV: 4000, polarizationIndex: v },
    }),
    cases: [
      [3, 'within'],
      [1.51, 'near'],
      [1.49, 'beyond'],
    ],
  },
  {
    id: 'vibration',
    name: 'zones of group 2, rigid (ISO 20816-3, memory)',
    at: (v) => ({ plate: { foundation: 'rigid' }, reading: { vibrationMmS: v } }),
    cases: [
      [1.3, 'within'],
      [2.8, 'within'],
      [2.81, 'near'],
      [4.5, 'near'],
      [4.51, 'beyond'],
    ],
  },
  {
    id: 'vibration',
    name: 'zones of group 1, flexible (ISO 20816-3, memory)',
    at: (v) => ({ plate: { ratedPowerKw: 400, ratedCurrentA: 640, foundation: 'flexible' }, reading: { vibrationMmS: v } }),
    cases: [
      [7.1, 'within'],
      [7.2, 'near'],
      [11.1, 'beyond'],
    ],
  },
  {
    id: 'winding-temperature',
    name: 'class F by detector (MG 1 12.43)',
    at: (v) => ({ plate: { insulationClass: 'F' }, reading: { windingTempC: v, windingTempMethod: 'embedded' } }),
    cases: [
      [120, 'within'],
      [154, 'near'],
      [156, 'beyond'],
    ],
  },
  {
    id: 'winding-temperature',
    name: 'class B by resistance, less 10 K of hot spot',
    at: (v) => ({ plate: { insulationClass: 'B' }, reading: { windingTempC: v, windingTempMethod: 'resistance' } }),
    cases: [
      [90, 'within'],
      [119, 'near'],
      [121, 'beyond'],
    ],
  },
  {
    id: 'bearing-temperature',
    name: 'alarm 90, trip 105 °C (practice)',
    at: (v) => ({ reading: { bearingTempC: v } }),
    cases: [
      [89, 'within'],
      [90, 'near'],
      [105, 'near'],
      [106, 'beyond'],
    ],
  },
  {
    id: 'overload',
    name: 'rating and service factor (MG 1 1.42)',
    at: (v) => ({
      plate: { serviceFactor: 1.15 },
      reading: { inputPowerKw: (37.285 * v) / 0.915, currentA: undefined, shaftSpeedRpm: undefined },
    }),
    cases: [
      [0.8, 'within'],
      [1.06, 'near'],
      [1.25, 'beyond'],
    ],
  },
  {
    id: 'rotor-sideband',
    name: 'counted bars, at 90 % load',
    at: (v) => ({ plate: { rotorBars: 44, rotorBarsSource: 'counted' }, reading: { ...full, rotorSidebandDb: v } }),
    cases: [
      [60, 'within'],
      [49, 'near'],
      [42, 'beyond'],
    ],
  },
  {
    id: 'rotor-sideband',
    name: 'no bar count, at 90 % load (practice: 54 and 45 dB)',
    at: (v) => ({ reading: { ...full, rotorSidebandDb: v } }),
    cases: [
      [56, 'within'],
      [50, 'near'],
      [43, 'beyond'],
    ],
  },
];

describe('bands', () => {
  for (const { id, name, at, cases } of TABLE) {
    it.each(cases)(`${id}, ${name}: %s is %s`, (value, band) => {
      expect(judge(id, at(value)).indicator?.band).toBe(band);
    });
  }

  it('the table holds every indicator that has bands', () => {
    const known = new Set([...TABLE.map((entry) => entry.id), 'current-unbalance', 'eccentricity-sideband']);
    expect([...known].sort()).toEqual(INDICATORS.map((indicator) => indicator.id).sort());
  });

  it('each indicator names what it needs, and its limits exist', () => {
    const ids = new Set(study().tables.limits.rows.map((row) => row.id));
    for (const indicator of INDICATORS) {
      expect(indicator.needs.length).toBeGreaterThan(0);
      for (const limit of indicator.limits) expect(ids.has(limit), limit).toBe(true);
    }
  });

  it('a limit set in the study wins and says so', () => {
    const context = study({ limits: { C1: { value: 3, reason: 'agreed with the works' } } });
    const { condition } = evaluateMotor(motorOf({ reading: { voltagesV: three(460, 2), voltageV: 460 } }), context);
    const found = condition.indicators.find((entry) => entry.id === 'voltage-unbalance');
    expect(found?.band).toBe('within');
    expect(found?.source).toContain('agreed with the works');
  });
});
