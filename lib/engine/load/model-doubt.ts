/**
 * What the circuit leaves out, as standard uncertainties: harmonics and stray paths in input, saturation and skew in current, skin effect in
 * slip (common practice).
 */
export const INPUT_MODEL = 0.003;
export const CURRENT_MODEL = 0.012;
const SLIP_MODEL = 0.02;

/** The same for slip: a share of it, and a hundredth of a per mille where it vanishes. */
export function slipModel(slip: number): number {
  return SLIP_MODEL * Math.abs(slip) + 1e-5;
}
