import { describe, expect, it } from 'vitest';
import { evaluateMotor, MEASURE_IDS, measuresOf } from '@/lib/engine';
import type { Motor, Plate, Reading } from '@/lib/engine/motor';
import { correctingKvar } from '@/lib/engine/options/measures/power-factor';
import { powerBySpeed } from '@/lib/engine/options/measures/speed-control';
import { motorOf, study } from '../support/study';

const of = (plate: Partial<Plate> = {}, reading: Partial<Reading> = {}, motor: Partial<Motor> = {}) =>
  measuresOf(evaluateMotor(motorOf({ plate: { drivenMachine: 'pump', ...plate }, reading, motor }), study()));
const ids = (found: ReturnType<typeof of>) => found.measures.map(({ id }) => id);
/** The reading of the support module, with its mean voltage spread over the pairs. */
const UNBALANCED = { voltagesV: [474, 455, 457] as const };

describe('measures beside another motor', () => {
  it('are none where the data show none', () => {
    expect(ids(of({ flowControl: 'none', coupling: 'direct' })).filter((id) => id !== 'power-factor')).toEqual([]);
    for (const plate of [{ status: 'spare' }, { status: 'failed' }, { driveFed: true }, { flowControl: 'drive' }] as const)
      expect(of({ coupling: 'v-belt', ...plate })).toEqual({ measures: [] });
    expect(ids(of({ coupling: 'v-belt' }, {}, { hoursPerYear: undefined }))).toEqual([]);
    expect(ids(of({ coupling: 'v-belt' }, {}, { readings: [] }))).toEqual([]);
  });
  it('are each offered where its datum shows it', () => {
    expect(ids(of({ coupling: 'v-belt' }))).toContain('better-belt');
    expect(ids(of({ coupling: 'notched-belt' }))).not.toContain('better-belt');
    expect(ids(of({}, UNBALANCED))).toContain('balance-voltages');
    expect(ids(of({ flowControl: 'throttle', peakLoadKw: 30 }))).toContain('speed-control');
    expect(ids(of({ flowControl: 'throttle', drivenMachine: 'conveyor', peakLoadKw: 30 }))).not.toContain('speed-control');
    const duty = [
      { fraction: 1, hoursPerYear: 4000 },
      { fraction: 0.05, hoursPerYear: 1500 },
    ];
    expect(ids(of({}, { duty }))).toContain('stop-idling');
  });
  it('never promise a drive at full flow anything: it only adds its own loss', () => {
    expect(ids(of({ flowControl: 'throttle' }))).not.toContain('speed-control');
  });
  it('act on what the others leave: together less than their sum, and the parts in sequence add up to it', () => {
    const all = of({ coupling: 'v-belt', flowControl: 'throttle', peakLoadKw: 30 }, UNBALANCED);
    const saving = all.measures.filter(({ energySaved }) => energySaved);
    expect(saving.map(({ id }) => id)).toEqual(['speed-control', 'better-belt', 'balance-voltages']);
    const together = all.energySavedTogether;
    if (!together) throw new Error('nothing together');
    expect(together.likely).toBeLessThan(saving.reduce((sum, { energySaved }) => sum + (energySaved?.likely ?? 0), 0));
    expect(together.likely).toBeGreaterThan(Math.max(...saving.map(({ energySaved }) => energySaved?.likely ?? 0)));
    expect(saving.reduce((sum, { energySavedInSequence }) => sum + (energySavedInSequence ?? 0), 0)).toBeCloseTo(
      together.likely,
      6,
    );
    for (const { energySaved: saved } of saving) {
      expect(saved?.low).toBeLessThanOrEqual(saved?.likely ?? Number.NaN);
      expect(saved?.likely).toBeLessThanOrEqual(saved?.high ?? Number.NaN);
    }
  });
  it('a belt saves about its share of the shaft power: 92 to 98 % (US DOE Motor Systems Tip Sheet 5 and a university note)', () => {
    const [belt] = of({ coupling: 'v-belt' }).measures;
    const { point } = evaluateMotor(motorOf({ plate: { drivenMachine: 'pump' } }), study());
    const energy = 6000 * (point?.inputPower.value ?? Number.NaN);
    // Constant losses stay, so a little less than the share of the shaft power.
    const share = (belt?.energySaved?.likely ?? Number.NaN) / energy;
    expect(share).toBeLessThan(1 - 92 / 98);
    expect(share).toBeGreaterThan(0.9 * (1 - 92 / 98));
  });
  it('a motor of the same load on steadier voltages loses what its negative-sequence circuit says', () => {
    const measure = of({}, UNBALANCED).measures.find(({ id }) => id === 'balance-voltages');
    const evaluation = evaluateMotor(motorOf({ plate: { drivenMachine: 'pump' }, reading: UNBALANCED }), study());
    const lost = 6000 * (evaluation.point?.unbalanceLoss?.value ?? Number.NaN);
    expect(lost).toBeGreaterThan(0);
    expect(measure?.energySaved?.high).toBeGreaterThan(0.9 * lost);
    expect(measure?.energySaved?.high).toBeLessThan(1.15 * lost);
  });
  it('say what is assumed, in sentences with their numbers', () => {
    const all = of(
      { coupling: 'v-belt', flowControl: 'damper', drivenMachine: 'fan', peakLoadKw: 30, ratedPowerFactorPct: 75 },
      UNBALANCED,
    );
    for (const { id, text, assumed } of all.measures) {
      expect(MEASURE_IDS).toContain(id);
      for (const words of [text, assumed]) expect(words).toMatch(/^[A-Z].*\.$/);
      expect(text + assumed).not.toMatch(/NaN|undefined|Infinity/);
    }
  });
});

describe('rules behind them', () => {
  it('three fans at half speed take 13 % of full power without static head (fan sequence tutorial, vesma.com)', () => {
    expect(Math.abs(100 * powerBySpeed(0.5, 0) - 13)).toBeLessThan(0.6);
    expect(powerBySpeed(1, 0.4)).toBe(1);
    expect(powerBySpeed(0.5, 1)).toBe(0.5);
  });
  it('5 kW from 0.75 to 0.9 want 1.988 kvar (V. K. Mehta and R. Mehta, Principles of Power System, example 6.4)', () => {
    expect(correctingKvar(5, 0.75, 0.9)).toBeCloseTo(1.988, 3);
  });
  it('a capacitor never makes up for more than 90 % of the reactive power at no load', () => {
    const found = of({}, { inputPowerKw: 10, currentA: 22.4, shaftSpeedRpm: undefined }).measures.find(
      ({ id }) => id === 'power-factor',
    );
    // A 50 hp motor takes about a third of 61 A at 460 V at no load: some 16 kvar.
    expect(found?.capacitorKvar).toBeGreaterThan(5);
    expect(found?.capacitorKvar).toBeLessThan(20);
  });
});
