import type { Circuit } from './parameters';
import { type AtSlip, type SlipPoint, solveAtSlip } from './solve-at-slip';

/** Torque and current against speed. Torques over rated shaft torque, currents over the base current, speed over rated synchronous speed. */
interface TorqueCurve {
  /** At standstill. Rough: real cages start with more resistance and less leakage than they run with. */
  readonly starting: SlipPoint;
  /** Highest torque between standstill and synchronous speed. */
  readonly breakdown: SlipPoint;
  /** From standstill to synchronous speed. Between standstill and breakdown as rough as the start. */
  readonly points: readonly (SlipPoint & { readonly speed: number })[];
}

/** Supply and temperature for a whole curve. */
export type CurveConditions = Omit<AtSlip, 'slip'>;

const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** Each step narrows the interval by GOLDEN: 80 of them come to the last digit of a torque that is flat at its top. */
const STEPS = 80;
/** Points on either side of breakdown. */
const SIDE = 40;

/**
 * Torque against speed from standstill to synchronous speed.
 *
 * A pull-up torque, the dip that slot harmonics and skewing leave in the real curve, is not known from a circuit and not given.
 * Valid for: a balanced supply. `undefined` where a point cannot be solved.
 * Source: exact per-phase circuit; breakdown as the highest point, found by golden section.
 */
export function torqueCurve(circuit: Circuit, conditions: CurveConditions): TorqueCurve | undefined {
  const at = (slip: number) => solveAtSlip(circuit, { ...conditions, slip });
  const starting = at(1);
  const breakdown = highest(at);
  if (!starting || !breakdown) return undefined;
  const points: (SlipPoint & { readonly speed: number })[] = [];
  const add = (slip: number): boolean => {
    const point = at(slip);
    if (point) points.push({ ...point, speed: conditions.frequency * (1 - slip) });
    return point !== undefined;
  };
  const top = breakdown.slip;
  // Even steps of slip on each side of the top: the running side is narrow, and drawn as finely as the rest.
  for (let i = 0; i < SIDE; i++) if (!add(1 + ((top - 1) * i) / SIDE)) return undefined;
  for (let i = 0; i <= SIDE; i++) if (!add(top * (1 - i / SIDE))) return undefined;
  return { starting, breakdown, points };
}

/** The slip of highest torque: one top between synchronous speed and standstill. */
function highest(at: (slip: number) => SlipPoint | undefined): SlipPoint | undefined {
  let low = 0;
  let high = 1;
  let left = at(high - GOLDEN * (high - low));
  let right = at(low + GOLDEN * (high - low));
  for (let i = 0; i < STEPS && left && right; i++) {
    if (left.torque >= right.torque) {
      high = right.slip;
      right = left;
      left = at(high - GOLDEN * (high - low));
    } else {
      low = left.slip;
      left = right;
      right = at(low + GOLDEN * (high - low));
    }
  }
  if (!left || !right) return undefined;
  const inner = left.torque >= right.torque ? left : right;
  const standstill = at(1);
  return standstill && standstill.torque >= inner.torque ? standstill : inner;
}
