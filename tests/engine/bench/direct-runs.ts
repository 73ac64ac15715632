import type { BenchPoint, BenchSections } from '@/lib/engine/bench/test';
import { type MeterErrors, NO_ERRORS, TRUTH } from './synthetic';

/** An invented pair of losses: each part in W at 20 A, and its exponent of the current. */
export const DIRECT = {
  fundamentalW: 60,
  fundamentalExponent: 1.92,
  harmonicW: 110,
  harmonicExponent: 2.13,
  atA: 20,
  celsius: 60,
} as const;

const CURRENTS = [40, 34, 28, 20, 14, 8] as const;
const SYNCHRONOUS = 1800;
const RADIANS = (2 * Math.PI * SYNCHRONOUS) / 60;

/** The part of stray-load loss of these runs at a current, W. */
export function directLoss(amperes: number, given: Partial<typeof DIRECT | Record<keyof typeof DIRECT, number>> = {}) {
  const d = { ...DIRECT, ...given };
  const fundamental = d.fundamentalW * (amperes / d.atA) ** d.fundamentalExponent;
  const harmonic = d.harmonicW * (amperes / d.atA) ** d.harmonicExponent;
  return { fundamental, harmonic };
}

/**
 * The two runs of the direct test: rotor out, and driven against the field at synchronous speed. Written from the balance of powers, not
 * from the engine: backwards, the slip is two, so that the shaft brings as much rotor loss as the gap does.
 */
export function directRuns(
  given: Partial<Record<keyof typeof DIRECT, number>> = {},
  errors: MeterErrors = NO_ERRORS,
): Pick<BenchSections, 'rotor-removed' | 'reverse-rotation'> {
  const d = { ...DIRECT, ...given };
  const factor = (meter: string) => 1 + 0.002 * (errors.shared(meter) + errors.own());
  const shift = (meter: string) => errors.shared(meter) + errors.own();
  const resistance = (TRUTH.resistance25 * (234.5 + d.celsius)) / (234.5 + 25);
  const read = (row: number, amperes: number, watts: number, shaftW?: number): BenchPoint => ({
    row,
    ...(amperes > 0 && { currentA: amperes * factor('current'), inputPowerKw: (watts / 1000) * factor('power') }),
    windingTempC: d.celsius + shift('winding'),
    ...(shaftW !== undefined && {
      torqueNm: (shaftW / RADIANS) * factor('torque'),
      speedRpm: SYNCHRONOUS + shift('speed'),
    }),
  });
  const friction = 1000 * TRUTH.frictionKw;
  const removed = CURRENTS.map((amperes, i) => {
    const stator = 1.5 * amperes ** 2 * resistance;
    return read(60 + i, amperes, stator + directLoss(amperes, d).fundamental);
  });
  const driven = CURRENTS.map((amperes, i) => {
    const stator = 1.5 * amperes ** 2 * resistance;
    const { fundamental, harmonic } = directLoss(amperes, d);
    // What crosses the gap at slip 2 is invented, and half of the rotor's loss comes from either side.
    const gap = 0.4 * amperes ** 2;
    return read(70 + i, amperes, stator + fundamental + gap, friction + gap + harmonic);
  });
  return { 'rotor-removed': removed, 'reverse-rotation': [...driven, read(80, 0, 0, friction)] };
}
