import { describe, expect, it } from 'vitest';
import { INDICATORS } from '@/lib/engine/condition/registry';
import { standardUncertainty } from '@/lib/engine/quantity/quantity';
import { atLoad, type Changes, full, judge, three } from './judged';
import { NEW_LIMITS } from './limit-rows';

/** Full load: about 105 % by input power alone, so that sideband levels need no correction. */
const loaded = { inputPowerKw: (37.285 * 1.05) / 0.915, currentA: undefined, shaftSpeedRpm: undefined };

/** Level in dB at which a cage of 44 bars and two pole pairs speaks of so many bars: Thomson and Fenger's formula turned round. */
const levelOf = (bars: number) => 20 * Math.log10((2 * 44) / bars - 2);

/** Zone boundaries B/C and C/D in mm/s of ISO 20816-3, groups 1 (400 kW) and 2 (37 kW), from memory. */
const ZONES = [
  [400, 'rigid', 4.5, 7.1],
  [400, 'flexible', 7.1, 11],
  [37.285, 'rigid', 2.8, 4.5],
  [37.285, 'flexible', 4.5, 7.1],
] as const;

/** Limit by limit: a value well inside, then just below, on, and just above each edge, with the band that each must have. */
const TABLE: readonly {
  id: string;
  name: string;
  at: (value: number) => Changes;
  cases: readonly (readonly [number, string])[];
}[] = [
  ...NEW_LIMITS,
  {
    id: 'voltage-unbalance',
    name: '1 % (NEMA MG 1 12.45)',
    at: (v) => ({ reading: { voltagesV: three(460, v), voltageV: 460 } }),
    cases: [
      [0.3, 'within'],
      [0.799, 'within'],
      [0.801, 'near'],
      [0.999, 'near'],
      [1, 'near'],
      [1.001, 'beyond'],
      [1.5, 'beyond'],
    ],
  },
  {
    id: 'voltage-deviation',
    name: '10 % (US DOE Motor Systems Tip Sheet 9; NEMA MG 1 12.44)',
    at: (v) => ({ reading: { voltageV: 460 * (1 + v / 100) } }),
    cases: [
      [2, 'within'],
      [7.99, 'within'],
      [8.01, 'near'],
      [9.99, 'near'],
      [10, 'near'],
      [10.01, 'beyond'],
      [-9.99, 'near'],
      [-10, 'near'],
      [-10.01, 'beyond'],
    ],
  },
  {
    id: 'current-unbalance',
    name: '10 % beyond the voltage’s (practice), on balanced voltage',
    at: (v) => ({ reading: { voltagesV: three(460, 0), voltageV: 460, currentsA: three(40.6, v) } }),
    cases: [
      [4, 'within'],
      [7.9, 'within'],
      [8.1, 'near'],
      [9.99, 'near'],
      [10, 'near'],
      [10.01, 'beyond'],
    ],
  },
  {
    id: 'winding-resistance-unbalance',
    name: '2 % random wound (AR100, memory)',
    at: (v) => ({ reading: { resistancesOhm: three(0.2, v), resistanceAt: 'motor' } }),
    cases: [
      [1, 'within'],
      [1.99, 'near'],
      [2, 'near'],
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
      [1, 'near'],
      [1.01, 'beyond'],
    ],
  },
  {
    id: 'winding-resistance-unbalance',
    name: '5 % from the starter (practice)',
    at: (v) => ({ reading: { resistancesOhm: three(0.2, v), resistanceAt: 'starter' } }),
    cases: [
      [3, 'within'],
      [4.99, 'near'],
      [5, 'near'],
      [5.01, 'beyond'],
    ],
  },
  ...(
    [
      ['5 MΩ random wound (IEEE 43, memory)', 5, {}],
      ['5 MΩ form wound below 1 kV (IEEE 43, memory)', 5, { winding: 'form' }],
      ['100 MΩ form wound since 1970 (IEEE 43, memory)', 100, { ratedVoltageV: 4000 }],
      ['100 MΩ form wound in 1971 (IEEE 43, memory)', 100, { ratedVoltageV: 4000, yearBuilt: 1971 }],
      [
        '4 kV + 1 MΩ form wound in 1970, the last of the old ones (IEEE 43: “before about 1970”)',
        5,
        { ratedVoltageV: 4000, yearBuilt: 1970, insulationSystem: 'thermoplastic' },
      ],
      ['5 MΩ random wound above 1 kV (IEEE 43, memory)', 5, { ratedVoltageV: 2300, winding: 'random' }],
      [
        '4 kV + 1 MΩ old form wound (IEEE 43, second text)',
        5,
        { ratedVoltageV: 4000, yearBuilt: 1962, insulationSystem: 'thermoplastic' },
      ],
    ] as const
  ).map(([name, limit, plate]) => ({
    id: 'insulation-resistance',
    name,
    at: (v: number): Changes => ({ plate, reading: { insulationResistanceMohm: v, insulationTempC: 40 } }),
    cases: [
      [limit * 10, 'within'],
      [limit * 1.24, 'near'],
      [limit * 1.26, 'within'],
      [limit * 1.001, 'near'],
      [limit, 'near'],
      [limit * 0.999, 'beyond'],
      [0, 'beyond'],
    ] as const,
  })),
  {
    id: 'polarization-index',
    name: '2.0 class F form wound (IEEE 43, second text)',
    at: (v) => ({
      plate: { ratedVoltageV: 4000, winding: 'form', insulationClass: 'F' },
      reading: { voltageV: 4000, polarizationIndex: v },
    }),
    cases: [
      [4, 'within'],
      [2.49, 'near'],
      [2.51, 'within'],
      [2.01, 'near'],
      [2, 'near'],
      [1.99, 'beyond'],
    ],
  },
  {
    id: 'polarization-index',
    name: '1.5 class A form wound (IEEE 43, memory)',
    at: (v) => ({
      plate: { ratedVoltageV: 4000, winding: 'form', insulationClass: 'A' },
      reading: { voltageV: 4000, polarizationIndex: v },
    }),
    cases: [
      [3, 'within'],
      [1.51, 'near'],
      [1.5, 'near'],
      [1.49, 'beyond'],
    ],
  },
  ...ZONES.map(([ratedPowerKw, foundation, bc, cd]) => ({
    id: 'vibration',
    name: `${ratedPowerKw} kW, ${foundation} (ISO 20816-3, memory)`,
    at: (v: number): Changes => ({ plate: { ratedPowerKw, ratedCurrentA: undefined, foundation }, reading: { vibrationMmS: v } }),
    cases: [
      [bc / 2, 'within'],
      [bc - 0.01, 'within'],
      [bc, 'within'],
      [bc + 0.01, 'near'],
      [cd - 0.01, 'near'],
      [cd, 'near'],
      [cd + 0.01, 'beyond'],
    ] as const,
  })),
  {
    id: 'winding-temperature',
    name: 'class F by detector: 155 °C (MG 1 12.43, second text)',
    at: (v) => ({ plate: { insulationClass: 'F' }, reading: { windingTempC: v, windingTempMethod: 'embedded' } }),
    cases: [
      [144.9, 'within'],
      [145, 'near'],
      [154.9, 'near'],
      [155, 'near'],
      [155.1, 'beyond'],
    ],
  },
  ...(
    [
      ['A', 100],
      ['B', 120],
      ['F', 145],
      ['H', 165],
    ] as const
  ).map(([insulationClass, limit]) => ({
    id: 'winding-temperature',
    name: `class ${insulationClass} by resistance: 40 °C and its rise (MG 1 12.43, second text)`,
    at: (v: number): Changes => ({ plate: { insulationClass }, reading: { windingTempC: v, windingTempMethod: 'resistance' } }),
    cases: [
      [limit - 10.1, 'within'],
      [limit - 9.9, 'near'],
      [limit, 'near'],
      [limit + 0.1, 'beyond'],
    ] as const,
  })),
  {
    id: 'winding-temperature',
    name: 'class F with the rise of class B, 80 K, by resistance at 25 °C: near above 105 °C, beyond above 145 °C',
    at: (v) => ({
      plate: { insulationClass: 'F', temperatureRiseClass: 'B' },
      reading: { windingTempC: v, windingTempMethod: 'resistance', ambientC: 25 },
    }),
    cases: [
      [104.9, 'within'],
      [105, 'within'],
      [105.1, 'near'],
      [145.1, 'beyond'],
    ],
  },
  {
    id: 'winding-temperature',
    name: 'class F with the rise of class B by detector at 25 °C: 10 K more, near above 115 °C (MG 1 20.8, memory)',
    at: (v) => ({
      plate: { insulationClass: 'F', temperatureRiseClass: 'B' },
      reading: { windingTempC: v, windingTempMethod: 'embedded', ambientC: 25 },
    }),
    cases: [
      [115, 'within'],
      [115.1, 'near'],
      [155.1, 'beyond'],
    ],
  },
  {
    id: 'winding-temperature',
    name: 'class F with the rise of class B, ambient not read: the rise is not judged',
    at: (v) => ({
      plate: { insulationClass: 'F', temperatureRiseClass: 'B' },
      reading: { windingTempC: v, windingTempMethod: 'resistance', ambientC: undefined },
    }),
    cases: [
      [130, 'within'],
      [145.1, 'beyond'],
    ],
  },
  {
    id: 'winding-temperature',
    name: 'rise of class B alone, by resistance at 25 °C: 105 °C',
    at: (v) => ({
      plate: { temperatureRiseClass: 'B' },
      reading: { windingTempC: v, windingTempMethod: 'resistance', ambientC: 25 },
    }),
    cases: [
      [94.9, 'within'],
      [105, 'near'],
      [105.1, 'beyond'],
    ],
  },
  {
    id: 'bearing-temperature',
    name: 'alarm 90, trip 105 °C (practice)',
    at: (v) => ({ reading: { bearingTempC: v } }),
    cases: [
      [89.9, 'within'],
      [90, 'near'],
      [90.1, 'near'],
      [104.9, 'near'],
      [105, 'near'],
      [105.1, 'beyond'],
    ],
  },
  {
    id: 'overload',
    name: 'rating and service factor 1.15 (MG 1 1.42, memory)',
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
    name: '44 counted bars at full load: a quarter and a half bar (own scale)',
    at: (v) => ({ plate: { rotorBars: 44, rotorBarsSource: 'counted' }, reading: { ...loaded, rotorSidebandDb: levelOf(v) } }),
    cases: [
      [0.1, 'within'],
      [0.249, 'within'],
      [0.25, 'near'],
      [0.251, 'near'],
      [0.499, 'near'],
      [0.5, 'beyond'],
      [0.501, 'beyond'],
    ],
  },
  {
    id: 'rotor-sideband',
    name: 'no bar count at full load: 54 and 45 dB (practice)',
    at: (v) => ({ reading: { ...loaded, rotorSidebandDb: v } }),
    cases: [
      [60, 'within'],
      [54.01, 'within'],
      [54, 'within'],
      [53.99, 'near'],
      [45.01, 'near'],
      [45, 'near'],
      [44.99, 'beyond'],
    ],
  },
  {
    id: 'rotor-sideband',
    name: 'no bar count at 90 % load: corrected by some tenths of a decibel',
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

  it.each(TABLE.flatMap(({ id, at, cases }) => cases.map(([value, band]) => ({ id, at, value, band }))))(
    '$id at $value: what is left to the limit is below zero where it is beyond, and nowhere else',
    ({ id, at, value, band }) => {
      const margin = judge(id, at(value)).indicator?.margin;
      // A part of the vibration below what counts as quiet, and an eccentricity sideband, are judged by no one limit.
      if (margin === undefined) return expect(band).not.toBe('beyond');
      // On the limit itself it is nothing, on either side of the verdict.
      if (band === 'beyond') expect(margin.value).toBeLessThanOrEqual(1e-9);
      else expect(margin.value).toBeGreaterThanOrEqual(0);
    },
  );

  it('what is left is the limit less the value, with the doubt of the value', () => {
    const { indicator } = judge('voltage-unbalance', { reading: { voltagesV: three(460, 0.4), voltageV: 460 } });
    // 1 % less 0.4 %.
    expect(indicator?.margin).toMatchObject({ unit: '%' });
    expect(indicator?.margin?.value).toBeCloseTo(0.6, 9);
    expect(indicator?.margin?.u).toBeCloseTo(indicator ? standardUncertainty(indicator.value) : Number.NaN, 12);
  });

  it('the least efficiency of a plate is that of the standard’s ladder, on its steps and between; by the tolerance for IEC motors', () => {
    const least = (stamped: number, standards: 'nema' | 'iec', ratedPowerKw: number) => {
      const tested = { name: 'shop', measured: { efficiency: { value: 0.9, u: 1e-6, unit: '1' } } };
      const found = atLoad(0.8, { plate: { nominalEfficiencyPct: stamped, ratedPowerKw }, motor: { tested } }, { standards });
      const { indicator } = found('tested-efficiency');
      return (indicator?.value.value ?? 0) - (indicator?.margin?.value ?? 0);
    };
    // NEMA MG 1 table 12-10 (from memory): 95.0 and 94.1; 91.0 and 89.5. It is 20 % more loss, rounded down to a step: 100/(1 + 1.2 × 5/95) = 94.06.
    expect(least(95, 'nema', 37)).toBeCloseTo(94.1, 9);
    expect(least(91, 'nema', 37)).toBeCloseTo(89.5, 9);
    // IEC 60034-1: 15 % of 1 − η up to 150 kW, 10 % above: 92 − 1.2 and 95 − 0.5.
    expect(least(92, 'iec', 37)).toBeCloseTo(90.8, 9);
    expect(least(95, 'iec', 200)).toBeCloseTo(94.5, 9);
  });

  it('the table holds every indicator that has bands', () => {
    const known = new Set([...TABLE.map((entry) => entry.id), 'eccentricity-sideband']);
    expect([...known].sort()).toEqual(INDICATORS.map((indicator) => indicator.id).sort());
  });

  it('each indicator names what it needs', () => {
    for (const indicator of INDICATORS) expect(indicator.needs.length, indicator.id).toBeGreaterThan(0);
  });
});
