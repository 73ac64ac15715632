import { apply, type Scope } from '../formula/apply';
import * as N from '../generated/nameplate';
import { exact, type Quantity } from '../quantity/quantity';
import type { BenchPlate, BenchPoint } from './test';

/** Slip from a measured speed; the frequency is taken as exact, since speed and frequency are counted against one clock. */
export function slipOf(scope: Scope, speed: Quantity<'r/min'>, frequencyHz: number, poles: number): Quantity<'1'> {
  const synchronous = synchronousSpeed(scope, frequencyHz, poles);
  return apply(scope, N.slip_fraction, { synchronous_speed: synchronous, shaft_speed: speed });
}

/** Synchronous speed, r/min, as a quantity without doubt, from the frequency in Hz and the number of poles. */
export function synchronousSpeed(scope: Scope, frequencyHz: number, poles: number): Quantity<'r/min'> {
  return apply(scope, N.synchronous_speed, { frequency: exact(frequencyHz, 'Hz'), poles: exact(poles, 'pole') });
}

/** Largest slip at which a speed still tells the number of poles. */
const SLIP_MAX = 0.15;

/** Number of poles: stated, else the one whose synchronous speed lies just above the stamped or the measured speeds (r/min) at so many Hz. */
export function polesOf(plate: BenchPlate, points: readonly BenchPoint[], frequencyHz: number): number | undefined {
  if (plate.poles !== undefined) return plate.poles;
  const speed = plate.ratedSpeedRpm ?? points.reduce((highest, point) => Math.max(highest, point.speedRpm ?? 0), 0);
  if (!(speed > 0)) return undefined;
  const pairs = Math.floor((60 * frequencyHz) / speed + 1e-9);
  const synchronous = (60 * frequencyHz) / pairs;
  return pairs >= 1 && 1 - speed / synchronous < SLIP_MAX ? 2 * pairs : undefined;
}
