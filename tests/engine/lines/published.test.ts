import { describe, expect, it } from 'vitest';
import { polePassLines, slotLine } from '@/lib/engine/condition/lines/electrical';
import { expectedLines, lineOf } from '@/lib/engine/condition/lines/expected';
import type { LineRule, Rotation } from '@/lib/engine/condition/lines/line';
import * as L from '@/lib/engine/generated/lines';
import * as N from '@/lib/engine/generated/nameplate';
import { exact } from '@/lib/engine/quantity/quantity';
import { checkCases, given, type PublishedCase } from '../cases/published';
import { PLATE, scopeOf } from '../support/study';

const scope = scopeOf();

function turning(frequency: number, poles: number, speed: number): Rotation {
  return { poles, supply: exact(frequency, 'Hz'), shaft: exact(L.shaft_frequency.f(speed), 'Hz') };
}

/** Frequency of one rule at a rotation. */
const at = (rule: LineRule | undefined, rotation: Rotation) =>
  rule ? lineOf(scope, rule, rotation).frequency.value : Number.NaN;

/** Slip by the engine's formula. */
const slipOf = (frequency: number, poles: number, speed: number) => N.slip_fraction.f((120 * frequency) / poles, speed);

const bearing = (c: PublishedCase) => ({ n: given(c, 'balls'), d: given(c, 'd_ball'), D: given(c, 'd_pitch') });

checkCases(
  './lines.json',
  {
    'G-WEN-14.2': (c) => {
      const belts = L.belt_multiple.f(given(c, 'd1'), given(c, 'belt'));
      return {
        ratio: 1 / L.speed_share.f(given(c, 'd1'), given(c, 'd2')),
        belt_freq: belts * L.shaft_frequency.f(given(c, 'n1')),
        // Feet a minute: inches of belt for each turn, turns a minute.
        belt_speed: (belts * given(c, 'belt') * given(c, 'n1')) / 12,
      };
    },
    'G-CWRU-6205': (c) => {
      const { n, d, D } = bearing(c);
      return {
        bpfi: L.bearing_inner.f(n, d, D, 1),
        bpfo: L.bearing_outer.f(n, d, D, 1),
        ftf: L.bearing_cage.f(d, D, 1),
        ball: L.bearing_element.f(d, D, 1),
      };
    },
    'G-CBM-355': (c) => {
      const [frequency, poles, speed] = [given(c, 'frequency'), given(c, 'poles'), given(c, 'speed')];
      const rotation = turning(frequency, poles, speed);
      const pass = L.pole_pass.f(frequency, rotation.shaft.value, poles);
      const twice = expectedLines(scope, PLATE, undefined, rotation).find((line) => line.id === 'twice-supply');
      return {
        slip_cpm: (120 * frequency) / poles - speed,
        pole_pass_cpm: 60 * pass,
        pole_pass_hz: pass,
        two_line_cpm: 60 * (twice?.frequency.value ?? Number.NaN),
        slip: slipOf(frequency, poles, speed),
      };
    },
    'G-GURU-9.1': (c) => {
      const [frequency, poles, speed] = [given(c, 'frequency'), given(c, 'poles'), given(c, 'speed')];
      const pass = L.pole_pass.f(frequency, L.shaft_frequency.f(speed), poles);
      return { slip: slipOf(frequency, poles, speed), rotor_freq: pass / 2, pole_pass: pass };
    },
    'G-SEN-5.1': (c) => {
      const [frequency, poles, slip] = [given(c, 'frequency'), given(c, 'poles'), given(c, 'slip')];
      const synchronous = (120 * frequency) / poles;
      const speed = N.speed_from_slip.f(synchronous, slip);
      return {
        speed,
        slip_rpm: synchronous - speed,
        rotor_freq: L.pole_pass.f(frequency, L.shaft_frequency.f(speed), poles) / 2,
      };
    },
    'G-BHA-4.10': (c) => ({
      rotor_freq: L.pole_pass.f(given(c, 'frequency'), L.shaft_frequency.f(given(c, 'speed')), given(c, 'poles')) / 2,
    }),
    'G-THO-SB': (c) => {
      const [frequency, bars, pairs, slip] = [given(c, 'frequency'), given(c, 'bars'), given(c, 'pole_pairs'), given(c, 'slip')];
      const rotation = turning(frequency, 2 * pairs, ((60 * frequency) / pairs) * (1 - slip));
      const lines = expectedLines(scope, { ...PLATE, rotorBars: bars }, undefined, rotation);
      const named = (id: string) => lines.find((line) => line.id === id)?.frequency.value ?? Number.NaN;
      return {
        slot_plus: at(slotLine(bars, 0, 1), rotation),
        slot_minus: at(slotLine(bars, 0, -1), rotation),
        dyn_plus_low: named('slot-dynamic-below-1-upper'),
        dyn_plus_high: named('slot-dynamic-above-1-upper'),
        ecc_low: named('shaft-lower'),
        ecc_high: named('shaft-upper'),
        bar_low: named('pole-pass-lower'),
        bar_high: named('pole-pass-upper'),
      };
    },
    'G-FFT': (c) => {
      const [frequency, slip] = [given(c, 'f'), given(c, 'slip')];
      const pass = L.pole_pass.f(frequency, (frequency / 2) * (1 - slip), 4);
      const resolution = L.resolution_needed.f(pass, given(c, 'lines_apart'));
      return { sideband: pass, resolution, record: L.record_length.f(resolution) };
    },
    'G-GEAR': (c) => {
      const [z1, z2, speed] = [given(c, 'z1'), given(c, 'z2'), given(c, 'speed')];
      const rotation = turning(60, 4, speed);
      const lines = expectedLines(scope, { ...PLATE, coupling: 'gear' }, { gearTeeth: [z1, z2] }, rotation);
      const named = (id: string) => lines.find((line) => line.id === id)?.frequency.value ?? Number.NaN;
      return { mesh: named('gear-mesh'), out_rpm: 60 * named('gear-wheel') };
    },
  },
  // Sizes of the belt drive and a rotor voltage: no lines.
  { 'G-WEN-14.2': ['length', 'wrap_deg'], 'G-SEN-5.1': ['rotor_v'] },
);

describe('pole-pass sidebands', () => {
  it('lie 2 s f₁ on either side of the supply line at every slip, and on it without slip', () => {
    for (const slip of [0, 0.004, 0.01, 0.03, 0.1])
      for (const poles of [2, 4, 6, 12]) {
        const rotation = turning(50, poles, (6000 / poles) * (1 - slip));
        const [lower, upper] = polePassLines(poles);
        expect(at(lower, rotation)).toBeCloseTo(50 - 100 * slip, 9);
        expect(at(upper, rotation)).toBeCloseTo(50 + 100 * slip, 9);
      }
  });
});
