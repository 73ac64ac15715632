import { type Changes, full, twice } from './judged';

/** One limit: its indicator, its name with its source, and values with the band that each must have. */
export interface LimitCase {
  readonly id: string;
  readonly name: string;
  readonly at: (value: number) => Changes;
  readonly cases: readonly (readonly [number, string])[];
}

const belted = (coupling: 'v-belt' | 'synchronous-belt', slipPct: number): Changes => ({
  plate: { coupling, speedRatio: 1.5, drivenSpeedRpm: (1779.4 / 1.5) * (1 - slipPct / 100) },
});

/** Limits of supply quality, starts, life, parts of the vibration and the drive train: below, on and above. */
export const NEW_LIMITS: readonly LimitCase[] = [
  {
    id: 'tested-efficiency',
    name: '92.4 % at least for a plate of 93.6 % (NEMA MG 1 table 12-10, from memory)',
    at: (v) => ({
      plate: { nominalEfficiencyPct: 93.6 },
      motor: {
        tested: { name: 'shop', takenAt: '2025-10-01', measured: { efficiency: { value: v / 100, u: 1e-6, unit: '1' } } },
      },
    }),
    cases: [
      [93.6, 'within'],
      [93.01, 'within'],
      [92.99, 'near'],
      [92.41, 'near'],
      [92.39, 'beyond'],
    ],
  },
  {
    id: 'voltage-distortion',
    name: '8 % up to 1 kV (IEEE 519-2014 table 1, second text)',
    at: (v) => ({ reading: { thdVoltagePct: v } }),
    cases: [
      [3, 'within'],
      [6.39, 'within'],
      [6.41, 'near'],
      [7.99, 'near'],
      [8, 'near'],
      [8.01, 'beyond'],
    ],
  },
  {
    id: 'voltage-distortion',
    name: '5 % above 1 kV (IEEE 519-2014 table 1, second text)',
    at: (v) => ({ plate: { ratedVoltageV: 4000 }, reading: { voltageV: 4000, thdVoltagePct: v } }),
    cases: [
      [3.99, 'within'],
      [4.99, 'near'],
      [5, 'near'],
      [5.01, 'beyond'],
    ],
  },
  {
    id: 'frequency-deviation',
    name: '5 % at rated voltage (NEMA MG 1 12.44, second text)',
    at: (v) => ({ reading: { voltageV: 460, frequencyHz: 60 * (1 + v / 100) } }),
    cases: [
      [0, 'within'],
      [3.99, 'within'],
      [4.01, 'near'],
      [5, 'near'],
      [5.01, 'beyond'],
      [-5, 'near'],
      [-5.01, 'beyond'],
    ],
  },
  {
    id: 'frequency-deviation',
    name: '10 % together with a voltage 8 % high: 2 % are left (NEMA MG 1 12.44, second text)',
    at: (v) => ({ reading: { voltageV: 460 * 1.08, frequencyHz: 60 * (1 + v / 100) } }),
    cases: [
      [1.59, 'within'],
      [1.99, 'near'],
      [2.001, 'beyond'],
    ],
  },
  ...(
    [
      ['vibration-axial', 'axial', 50],
      ['vibration-1x', '1x', 80],
      ['vibration-2x', '2x', 50],
      ['vibration-twice-line', '2xline', 50],
    ] as const
  ).map(([id, part, limit]) => ({
    id,
    name: `${limit} % of 4 mm/s (practice)`,
    at: (v: number): Changes => ({
      reading: { vibrationMmS: 4, [`vibration${part === 'axial' ? 'Axial' : part}MmS`]: (4 * v) / 100 },
    }),
    cases: [
      [30, 'within'],
      [0.8 * limit - 0.1, 'within'],
      [0.8 * limit + 0.1, 'near'],
      [limit, 'near'],
      [limit + 0.1, 'beyond'],
    ] as const,
  })),
  {
    id: 'vibration-2x',
    name: 'no share counts while the part stays below 1.4 mm/s (ISO 20816-3, memory)',
    at: (v) => ({ reading: { vibrationMmS: v, vibration2xMmS: v } }),
    cases: [
      [1.39, 'within'],
      [1.4, 'within'],
      [1.41, 'beyond'],
    ],
  },
  {
    id: 'belt-slip',
    name: '3 % of a V-belt (practice)',
    at: (v) => belted('v-belt', v),
    cases: [
      [-2, 'within'],
      [1.5, 'within'],
      [2.39, 'within'],
      [2.41, 'near'],
      [3, 'near'],
      [3.01, 'beyond'],
    ],
  },
  {
    id: 'belt-slip',
    name: '0.5 % of a toothed belt (practice)',
    at: (v) => belted('synchronous-belt', v),
    cases: [
      [0, 'within'],
      [0.41, 'near'],
      [0.499, 'near'],
      [0.501, 'beyond'],
    ],
  },
  {
    id: 'starts-per-hour',
    name: '6.8 an hour at 50 hp, 4 poles (NEMA MG 10 table 2-3, second text)',
    at: (v) => ({ plate: { startsPerHour: v } }),
    cases: [
      [0, 'within'],
      [5.43, 'within'],
      [5.45, 'near'],
      [6.8, 'near'],
      [6.81, 'beyond'],
    ],
  },
  {
    // The worked example of the handbook that reprints the table: 122 / 50 = 2.44; 1 lb ft² is 0.04214 kg m².
    id: 'starts-per-hour',
    name: '2.44 an hour at 25 hp, 4 poles with 50 lb ft² (handbook’s example)',
    at: (v) => ({
      plate: { ratedPowerKw: 25 * 0.7457, ratedCurrentA: undefined, startsPerHour: v, loadInertiaKgm2: 50 * 0.04214011 },
      reading: { inputPowerKw: 12, currentA: undefined },
    }),
    cases: [
      [1.95, 'within'],
      [2.44, 'near'],
      [2.441, 'beyond'],
    ],
  },
  {
    id: 'insulation-life',
    name: 'the life at 155 °C, class F by detector (US DOE Motor Systems Tip Sheets 3 and 7: halves for each 10 K)',
    at: (v) => ({ plate: { insulationClass: 'F' }, reading: { windingTempC: v, windingTempMethod: 'embedded' } }),
    cases: [
      [130, 'within'],
      [151.7, 'within'],
      [151.9, 'near'],
      [155, 'near'],
      [155.1, 'beyond'],
    ],
  },
  {
    id: 'insulation-life',
    name: 'the same by resistance, whose mean lies 10 K below the hottest spot (MG 1 12.43, second text)',
    at: (v) => ({ plate: { insulationClass: 'F' }, reading: { windingTempC: v, windingTempMethod: 'resistance' } }),
    cases: [
      [141.7, 'within'],
      [145, 'near'],
      [145.1, 'beyond'],
    ],
  },
  {
    id: 'bearing-envelope',
    name: 'twice the first reading (practice)',
    at: (v) => ({ readings: twice({ bearingEnvelopeG: 1 }, { bearingEnvelopeG: v }) }),
    cases: [
      [1, 'within'],
      [1.59, 'within'],
      [1.61, 'near'],
      [2, 'near'],
      [2.01, 'beyond'],
    ],
  },
  {
    id: 'eccentricity-sideband',
    name: '6 dB closer to the line than at first (practice)',
    at: (v) => ({ readings: twice({ ...full, eccentricitySidebandDb: 50 }, { ...full, eccentricitySidebandDb: 50 - v }) }),
    cases: [
      [-3, 'within'],
      [2.9, 'within'],
      [3, 'near'],
      [5.9, 'near'],
      [6, 'beyond'],
    ],
  },
];
