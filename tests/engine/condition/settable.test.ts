import { describe, expect, it } from 'vitest';
import { limitOf } from '@/lib/engine/condition/limit';
import { PRACTICE } from '@/lib/engine/condition/practice';
import { INDICATORS } from '@/lib/engine/condition/registry';
import { evaluateMotor } from '@/lib/engine/evaluate';
import { motorOf, scopeOf, study } from '../support/study';
import { atLoad, type Changes, full, judge, three, twice } from './judged';

/** For each limit that a study may set: readings that the shipped limit calls `shipped`, and a value of the study's that makes them `set`. */
const SETTABLE: readonly { limit: string; id: string; changes: Changes; shipped: string; value: number; set: string }[] = [
  {
    limit: 'C1',
    id: 'voltage-unbalance',
    changes: { reading: { voltagesV: three(460, 2), voltageV: 460 } },
    shipped: 'beyond',
    value: 3,
    set: 'within',
  },
  {
    limit: 'C5',
    id: 'voltage-deviation',
    changes: { reading: { voltageV: 460 * 1.06 } },
    shipped: 'within',
    value: 5,
    set: 'beyond',
  },
  {
    limit: 'C4',
    id: 'current-unbalance',
    changes: { reading: { voltagesV: three(460, 1), voltageV: 460, currentsA: three(40.6, 20) } },
    shipped: 'beyond',
    value: 15,
    set: 'within',
  },
  {
    limit: 'current-unbalance-ceiling',
    id: 'current-unbalance',
    changes: { reading: { voltagesV: three(460, 0), voltageV: 460, currentsA: three(40.6, 12) } },
    shipped: 'beyond',
    value: 20,
    set: 'within',
  },
  {
    limit: 'efficiency-least',
    id: 'tested-efficiency',
    changes: {
      plate: { nominalEfficiencyPct: 93.6 },
      motor: { tested: { name: 'shop', measured: { efficiency: { value: 0.92, u: 1e-6, unit: '1' } } } },
    },
    shipped: 'beyond',
    value: 90,
    set: 'within',
  },
  {
    limit: 'B1',
    id: 'winding-resistance-unbalance',
    changes: { reading: { resistancesOhm: three(0.2, 3), resistanceAt: 'motor' } },
    shipped: 'beyond',
    value: 5,
    set: 'within',
  },
  {
    limit: 'B2',
    id: 'winding-resistance-unbalance',
    changes: { plate: { winding: 'form' }, reading: { resistancesOhm: three(0.2, 2), resistanceAt: 'motor' } },
    shipped: 'beyond',
    value: 4,
    set: 'within',
  },
  {
    limit: 'B3',
    id: 'winding-resistance-unbalance',
    changes: { reading: { resistancesOhm: three(0.2, 6), resistanceAt: 'starter' } },
    shipped: 'beyond',
    value: 10,
    set: 'within',
  },
  {
    limit: 'A1',
    id: 'insulation-resistance',
    changes: {
      plate: { ratedVoltageV: 4000, yearBuilt: 1962, insulationSystem: 'thermoplastic' },
      reading: { voltageV: 4000, insulationResistanceMohm: 50, insulationTempC: 40 },
    },
    shipped: 'within',
    value: 100,
    set: 'beyond',
  },
  {
    limit: 'A2',
    id: 'insulation-resistance',
    changes: { plate: { ratedVoltageV: 4000 }, reading: { voltageV: 4000, insulationResistanceMohm: 50, insulationTempC: 40 } },
    shipped: 'beyond',
    value: 20,
    set: 'within',
  },
  {
    limit: 'A3',
    id: 'insulation-resistance',
    changes: { reading: { insulationResistanceMohm: 50, insulationTempC: 40 } },
    shipped: 'within',
    value: 100,
    set: 'beyond',
  },
  {
    limit: 'A4',
    id: 'polarization-index',
    changes: { plate: { ratedVoltageV: 4000, insulationClass: 'A' }, reading: { voltageV: 4000, polarizationIndex: 2.5 } },
    shipped: 'within',
    value: 3,
    set: 'beyond',
  },
  {
    limit: 'A5',
    id: 'polarization-index',
    changes: { plate: { ratedVoltageV: 4000, insulationClass: 'H' }, reading: { voltageV: 4000, polarizationIndex: 1.5 } },
    shipped: 'beyond',
    value: 1,
    set: 'within',
  },
  ...(
    [
      [400, 'rigid', 1, 8],
      [400, 'flexible', 1, 12],
      [37.285, 'rigid', 2, 5],
      [37.285, 'flexible', 2, 8],
    ] as const
  ).flatMap(([ratedPowerKw, foundation, group, vibrationMmS]) => [
    {
      limit: `vibration-${group}-${foundation}-cd`,
      id: 'vibration',
      changes: { plate: { ratedPowerKw, ratedCurrentA: undefined, foundation }, reading: { vibrationMmS } },
      shipped: 'beyond',
      value: 20,
      set: 'near',
    },
  ]),
  ...(
    [
      ['A', 110],
      ['B', 135],
      ['F', 160],
      ['H', 185],
    ] as const
  ).flatMap(([name, windingTempC]) => [
    {
      limit: `winding-class-${name}`,
      id: 'winding-temperature',
      changes: { plate: { insulationClass: name }, reading: { windingTempC, windingTempMethod: 'embedded' as const } },
      shipped: 'beyond',
      value: 250,
      set: 'within',
    },
    {
      limit: `winding-resistance-${name}`,
      id: 'winding-temperature',
      changes: { plate: { insulationClass: name }, reading: { windingTempC, windingTempMethod: 'resistance' as const } },
      shipped: 'beyond',
      value: 250,
      set: 'within',
    },
    {
      limit: `winding-rise-${name}`,
      id: 'winding-temperature',
      changes: {
        plate: { temperatureRiseClass: name },
        reading: { windingTempC, windingTempMethod: 'resistance' as const, ambientC: 40 },
      },
      shipped: 'beyond',
      value: 200,
      set: 'within',
    },
  ]),
  {
    limit: 'C6',
    id: 'frequency-deviation',
    changes: { reading: { frequencyHz: 64 } },
    shipped: 'beyond',
    value: 9,
    set: 'within',
  },
  {
    limit: 'C7',
    id: 'frequency-deviation',
    changes: { reading: { frequencyHz: 62, voltageV: 460 * 1.08 } },
    shipped: 'beyond',
    value: 12.5,
    set: 'within',
  },
  {
    limit: 'C11',
    id: 'voltage-distortion',
    changes: { reading: { thdVoltagePct: 9 } },
    shipped: 'beyond',
    value: 15,
    set: 'within',
  },
  {
    limit: 'C12',
    id: 'voltage-distortion',
    changes: { plate: { ratedVoltageV: 4000 }, reading: { voltageV: 4000, thdVoltagePct: 6 } },
    shipped: 'beyond',
    value: 10,
    set: 'within',
  },
  {
    limit: 'life-at-class',
    id: 'insulation-life',
    changes: { plate: { insulationClass: 'F' }, reading: { windingTempC: 160, windingTempMethod: 'embedded' } },
    shipped: 'beyond',
    value: 0.4,
    set: 'within',
  },
  {
    limit: 'starts',
    id: 'starts-per-hour',
    changes: { plate: { startsPerHour: 9 } },
    shipped: 'beyond',
    value: 20,
    set: 'within',
  },
  ...(
    [
      ['axial-share', 'vibration-axial', { vibrationAxialMmS: 2.8 }],
      ['share-1x', 'vibration-1x', { vibration1xMmS: 3.5 }],
      ['share-2x', 'vibration-2x', { vibration2xMmS: 2.8 }],
      ['share-2xline', 'vibration-twice-line', { vibration2xlineMmS: 2.8 }],
    ] as const
  ).map(([limit, id, part]) => ({
    limit,
    id,
    changes: { reading: { vibrationMmS: 4, ...part } },
    shipped: 'beyond',
    value: 120,
    set: 'within',
  })),
  {
    limit: 'envelope-rise',
    id: 'bearing-envelope',
    changes: { readings: twice({ bearingEnvelopeG: 1 }, { bearingEnvelopeG: 3 }) },
    shipped: 'beyond',
    value: 5,
    set: 'within',
  },
  {
    limit: 'belt-slip',
    id: 'belt-slip',
    changes: { plate: { coupling: 'v-belt', speedRatio: 1.5, drivenSpeedRpm: 1120 } },
    shipped: 'beyond',
    value: 8,
    set: 'within',
  },
  {
    limit: 'belt-slip-synchronous',
    id: 'belt-slip',
    changes: { plate: { coupling: 'synchronous-belt', speedRatio: 1.5, drivenSpeedRpm: 1170 } },
    shipped: 'beyond',
    value: 4,
    set: 'within',
  },
  {
    limit: 'eccentricity-rise',
    id: 'eccentricity-sideband',
    changes: { readings: twice({ ...full, eccentricitySidebandDb: 50 }, { ...full, eccentricitySidebandDb: 42 }) },
    shipped: 'beyond',
    value: 20,
    set: 'within',
  },
  {
    limit: 'bearing-trip',
    id: 'bearing-temperature',
    changes: { reading: { bearingTempC: 110 } },
    shipped: 'beyond',
    value: 120,
    set: 'near',
  },
  {
    limit: 'sideband-likely',
    id: 'rotor-sideband',
    changes: { reading: { rotorSidebandDb: 40 } },
    shipped: 'beyond',
    value: 30,
    set: 'near',
  },
  {
    limit: 'bars-likely',
    id: 'rotor-sideband',
    changes: { plate: { rotorBars: 44, rotorBarsSource: 'counted' }, reading: { rotorSidebandDb: 40 } },
    shipped: 'beyond',
    value: 3,
    set: 'near',
  },
];

describe('limits of a study', () => {
  it.each(SETTABLE)(
    '$limit at $value makes $shipped $set, and the reason is the source',
    ({ limit, id, changes, shipped, value, set }) => {
      expect(judge(id, changes).indicator?.band).toBe(shipped);
      const { condition } = evaluateMotor(
        motorOf(changes),
        study({ limits: { [limit]: { value, reason: 'agreed with the works' } } }),
      );
      const found = condition.indicators.find((entry) => entry.id === id);
      expect(found?.band).toBe(set);
      expect(found?.source).toContain('agreed with the works');
      expect(found?.status).not.toBe('read');
    },
  );

  it('the table holds every limit that decides beyond', () => {
    // Left out: first edges, gates and limits of findings, which do not decide it.
    const others = [
      'C2',
      'C10',
      'F1',
      'eccentricity-raised',
      'A6',
      'E1a',
      'E1b',
      'bars-no-sign',
      'sideband-no-sign',
      'bearing-alarm',
    ];
    const first = ['1-rigid', '1-flexible', '2-rigid', '2-flexible'].map((zone) => `vibration-${zone}-bc`);
    const all = new Set(INDICATORS.flatMap((indicator) => indicator.limits));
    expect([...SETTABLE.map((entry) => entry.limit), ...others, ...first].sort()).toEqual([...all].sort());
  });

  it('first edges can be set too', () => {
    const set = (limit: string, value: number) => ({ limits: { [limit]: { value, reason: 'trial' } } });
    expect(atLoad(1, { reading: { bearingTempC: 85 } }, set('bearing-alarm', 80))('bearing-temperature').band).toBe('near');
    expect(atLoad(1, { reading: { rotorSidebandDb: 60 } }, set('sideband-no-sign', 65))('rotor-sideband').band).toBe('near');
    const counted = { plate: { rotorBars: 44, rotorBarsSource: 'counted' }, reading: { rotorSidebandDb: 60 } } as const;
    expect(atLoad(1, counted, set('bars-no-sign', 0.05))('rotor-sideband').band).toBe('near');
    const rigid = { plate: { foundation: 'rigid' }, reading: { vibrationMmS: 2 } } as const;
    expect(atLoad(1, rigid, set('vibration-2-rigid-bc', 1.5))('vibration').band).toBe('near');
  });

  it('of practice share no id with the table of limits, and an unknown id is refused', () => {
    const ids = new Set(study().tables.limits.rows.map((row) => row.id));
    for (const id of Object.keys(PRACTICE)) expect(ids.has(id), id).toBe(false);
    expect(() => limitOf(scopeOf(), 'Z9')).toThrow('Z9');
  });
});
