import * as C from '../generated/circuit';
import type { Circuit } from './parameters';

/**
 * Rotor resistance at about twice line frequency over that at slip frequency: bars and rings of medium machines, from memory
 * (published values 1.25 to 4 for deep bars).
 */
export const NEGATIVE_ROTOR = 1.8;

/** What the negative sequence meets, per unit as the circuit. */
interface NegativeSequence {
  /** Resistance of the rotor branch, (R₂ of deep bars) / (2 − s). */
  readonly rotor: number;
  /** Square of the impedance at the terminals. */
  readonly squared: number;
}

/**
 * Impedance that an unbalanced part of the supply meets: a field turning backwards sees the rotor at slip 2 − s, so that the magnetising
 * branch hardly counts, Z₂ = R₁ + R₂'/(2 − s) + j(X₁ + X₂).
 *
 * Units: per unit as in {@link Circuit}; reactances at the frequency in force, resistances at the temperature in force. Valid for: slip 0 up
 * to breakdown. Deep bars lower the rotor's leakage at that frequency, by up to a fifth of the impedance: that is left to the caller.
 * Source: declared in `backward-field.ts`, where the running point has it from as well.
 */
export function negativeSequence({ r1, x1, r2, x2 }: Pick<Circuit, 'r1' | 'x1' | 'r2' | 'x2'>, slip: number): NegativeSequence {
  const rotor = C.negative_sequence_rotor.f(NEGATIVE_ROTOR, r2, slip);
  return { rotor, squared: C.negative_sequence_squared.f(r1, rotor, x1, x2) };
}
