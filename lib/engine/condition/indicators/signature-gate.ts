import type { MotorScope } from '../../context';
import type { Finding } from '../../quantity/finding';
import type { Quantity } from '../../quantity/quantity';
import { CONDITION } from '../findings';
import { limitOf } from '../limit';

/** What the load at which a signature was read makes of it. */
export interface Gate {
  readonly open: boolean;
  readonly findings: readonly Finding[];
}

/**
 * Signature readings below 50 % load are not used, from 50 to 75 % count half, from 75 % in full (common practice, limits E1a and E1b).
 * `floor` is a load fraction below which no setting opens the gate.
 */
export function signatureGate(scope: MotorScope, loadFraction: Quantity<'1'> | undefined, reading: string, floor = 0): Gate {
  if (!loadFraction) return { open: false, findings: [CONDITION.make('signature-load-unknown', { reading })] };
  const load = loadFraction.value;
  const least = Math.max(limitOf(scope, 'E1a').value / 100, floor);
  if (load < least) return { open: false, findings: [CONDITION.make('signature-under-loaded', { reading, load, least })] };
  const full = limitOf(scope, 'E1b').value / 100;
  if (load < full) return { open: true, findings: [CONDITION.make('signature-half-weight', { reading, load, least, full })] };
  return { open: true, findings: [] };
}
