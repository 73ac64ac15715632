import type { Found } from './measure';

/** Unbalance that is worth correcting, and what may be left of it; negative-sequence over rated voltage. */
const UNBALANCE_LIMIT = 0.01;
const UNBALANCE_LEFT = { low: 0.01, likely: 0.005, high: 0 } as const;

/** The unbalance corrected, where it is worth it; negative-sequence over rated voltage. */
export function balanceVoltages(negativeSequence: number): Found | undefined {
  if (negativeSequence <= UNBALANCE_LIMIT) return undefined;
  return {
    id: 'balance-voltages',
    text: `Find and correct the cause of the voltage unbalance: the negative sequence is ${(100 * negativeSequence).toFixed(1)} % of rated voltage.`,
    assumed:
      'Half a per cent is left, between none and one; loss by the negative-sequence circuit of the motor. Longer life comes on top.',
    change: (list, which) =>
      list.map((step) => ({ ...step, negativeSequence: Math.min(step.negativeSequence, UNBALANCE_LEFT[which]) })),
  };
}
