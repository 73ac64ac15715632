import { describe, expect, it } from 'vitest';
import { CONDITION } from '@/lib/engine/condition/findings';
import { type Changes, full, judge, three } from './judged';

/** For each code: readings that bring it out, and whether a verdict may stand beside it. */
const CODES: Readonly<Record<string, Changes & { id: string; verdict: boolean }>> = {
  'limit-straddled': { id: 'voltage-unbalance', verdict: true, reading: { voltagesV: three(460, 1.001), voltageV: 460 } },
  'voltage-unbalance-high': { id: 'voltage-unbalance', verdict: true, reading: { voltagesV: three(460, 6), voltageV: 460 } },
  'voltage-unbalance-derates': { id: 'voltage-unbalance', verdict: true, reading: { voltagesV: three(460, 2.5), voltageV: 460 } },
  'supply-behind-drive': {
    id: 'voltage-unbalance',
    verdict: false,
    plate: { driveFed: true },
    reading: { readingsAt: 'drive-input', voltagesV: three(460, 2.5), voltageV: 460 },
  },
  'current-unbalance-unexplained': {
    id: 'current-unbalance',
    verdict: true,
    reading: { voltagesV: three(460, 0.2), voltageV: 460, currentsA: three(40.6, 20) },
  },
  'current-unbalance-without-voltage': { id: 'current-unbalance', verdict: false, reading: { currentsA: three(40.6, 9) } },
  'current-unbalance-low-load': {
    id: 'current-unbalance',
    verdict: false,
    reading: {
      voltagesV: three(460, 0.2),
      voltageV: 460,
      currentsA: three(28, 9),
      currentA: 28,
      inputPowerKw: 11.2,
      shaftSpeedRpm: 1791,
    },
  },
  'resistance-at-starter': {
    id: 'winding-resistance-unbalance',
    verdict: true,
    reading: { resistancesOhm: three(0.2, 1), resistanceAt: 'starter' },
  },
  'resistance-place-unknown': { id: 'winding-resistance-unbalance', verdict: false, reading: { resistancesOhm: three(0.2, 1) } },
  'insulation-without-temperature': { id: 'insulation-resistance', verdict: false, reading: { insulationResistanceMohm: 50 } },
  'insulation-system-unknown': {
    id: 'insulation-resistance',
    verdict: false,
    plate: { yearBuilt: 1962 },
    reading: { insulationResistanceMohm: 50, insulationTempC: 25 },
  },
  'insulation-outside-range': {
    id: 'insulation-resistance',
    verdict: false,
    reading: { insulationResistanceMohm: 50, insulationTempC: 4 },
  },
  'insulation-below-minimum': {
    id: 'insulation-resistance',
    verdict: true,
    reading: { insulationResistanceMohm: 1, insulationTempC: 40 },
  },
  'polarization-random-wound': {
    id: 'polarization-index',
    verdict: false,
    plate: { insulationClass: 'F' },
    reading: { polarizationIndex: 1.1 },
  },
  'polarization-not-meaningful': {
    id: 'polarization-index',
    verdict: false,
    plate: { ratedVoltageV: 4000, insulationClass: 'F' },
    reading: { voltageV: 4000, polarizationIndex: 1.2, insulationResistanceMohm: 9000, insulationTempC: 40 },
  },
  'polarization-class-unknown': {
    id: 'polarization-index',
    verdict: false,
    plate: { ratedVoltageV: 4000 },
    reading: { voltageV: 4000, polarizationIndex: 1.2 },
  },
  'distortion-bounds-hvf': { id: 'voltage-distortion', verdict: true, reading: { thdVoltagePct: 7 } },
  'belt-slip-impossible': {
    id: 'belt-slip',
    verdict: false,
    plate: { coupling: 'v-belt', speedRatio: 1.5, drivenSpeedRpm: 1250 },
  },
  'starts-outside-table': {
    id: 'starts-per-hour',
    verdict: false,
    plate: { ratedPowerKw: 400, ratedCurrentA: undefined, startsPerHour: 2 },
  },
  // 1770 r/min is a pole pass of 2 Hz; 12 teeth on 177 turn the wheel twice a second.
  'sideband-not-unique': {
    id: 'rotor-sideband',
    verdict: true,
    plate: { coupling: 'gear', rotorBars: 44, rotorBarsSource: 'counted' },
    reading: { ...full, rotorSidebandDb: 35, spectrumResolutionHz: 0.1 },
    motor: { lineGeometry: { gearTeeth: [12, 177] } },
  },
  'vibration-foundation-unknown': { id: 'vibration', verdict: false, reading: { vibrationMmS: 3 } },
  'vibration-outside-standard': {
    id: 'vibration',
    verdict: false,
    plate: { ratedPowerKw: 7.5, ratedCurrentA: 13 },
    reading: { vibrationMmS: 3 },
  },
  'vibration-zone-c': { id: 'vibration', verdict: true, plate: { foundation: 'rigid' }, reading: { vibrationMmS: 3 } },
  'signature-under-loaded': {
    id: 'rotor-sideband',
    verdict: false,
    reading: { rotorSidebandDb: 40, inputPowerKw: 15, currentA: 31, shaftSpeedRpm: 1787 },
  },
  'signature-load-unknown': {
    id: 'rotor-sideband',
    verdict: false,
    reading: { rotorSidebandDb: 40, inputPowerKw: undefined, currentA: undefined, shaftSpeedRpm: undefined },
  },
  'signature-half-weight': { id: 'rotor-sideband', verdict: true, reading: { rotorSidebandDb: 60 } },
  'sideband-one-side': {
    id: 'rotor-sideband',
    verdict: true,
    reading: { ...full, rotorSidebandDb: 40, rotorSidebandSides: 'one' },
  },
  'bars-unknown': { id: 'rotor-sideband', verdict: true, reading: { ...full, rotorSidebandDb: 60 } },
  'bars-estimated': {
    id: 'rotor-sideband',
    verdict: true,
    plate: { rotorBars: 44, rotorBarsSource: 'estimated' },
    reading: { ...full, rotorSidebandDb: 38 },
  },
  'eccentricity-trend-only': { id: 'eccentricity-sideband', verdict: false, reading: { ...full, eccentricitySidebandDb: 48 } },
  'temperature-surface': {
    id: 'winding-temperature',
    verdict: false,
    plate: { insulationClass: 'F' },
    reading: { windingTempC: 70, windingTempMethod: 'surface' },
  },
  'temperature-class-unknown': {
    id: 'winding-temperature',
    verdict: false,
    reading: { windingTempC: 120, windingTempMethod: 'embedded' },
  },
};

describe('condition findings', () => {
  it('the table holds every code', () => {
    expect(Object.keys(CODES).sort()).toEqual(Object.keys(CONDITION.kinds).sort());
  });

  it.each(Object.entries(CODES))('%s is made, with a verdict only where one may stand', (code, { id, verdict, ...changes }) => {
    const { indicator, codes } = judge(id, changes);
    expect(codes).toContain(code);
    expect(indicator?.band !== undefined).toBe(verdict);
    if (!verdict) expect(indicator?.margin).toBeUndefined();
  });

  it('a single sideband and an estimated bar count go no further than near', () => {
    expect(
      judge('rotor-sideband', { reading: { ...full, rotorSidebandDb: 35, rotorSidebandSides: 'one' } }).indicator?.band,
    ).toBe('near');
    expect(
      judge('rotor-sideband', {
        plate: { rotorBars: 44, rotorBarsSource: 'estimated' },
        reading: { ...full, rotorSidebandDb: 35 },
      }).indicator?.band,
    ).toBe('near');
  });

  it('a signature below half load caps trust at provisional and nothing else; energy figures stand', () => {
    const { trust, condition } = judge('rotor-sideband', {
      reading: { rotorSidebandDb: 40, inputPowerKw: 15, currentA: 31, shaftSpeedRpm: 1787 },
    });
    expect(trust.level).toBe('provisional');
    expect(condition.callsForRepair).toEqual([]);
  });

  it('insulation below its minimum is a must-do, an unbalanced winding calls for a rewind, vibration in zone D for bearings', () => {
    expect(
      judge('insulation-resistance', { reading: { insulationResistanceMohm: 1, insulationTempC: 40 } }).condition.mustAct,
    ).toBe(true);
    expect(
      judge('winding-resistance-unbalance', { reading: { resistancesOhm: three(0.2, 4), resistanceAt: 'motor' } }).condition
        .callsForRepair,
    ).toEqual(['rewind']);
    expect(judge('vibration', { plate: { foundation: 'rigid' }, reading: { vibrationMmS: 6 } }).condition.callsForRepair).toEqual(
      ['bearing-job'],
    );
  });
});
