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

/** Signature readings below 50 % load are not used, from 50 to 75 % count half, from 75 % in full (common practice, limits E1a and E1b). */
export function signatureGate(scope: MotorScope, loadFraction: Quantity<'1'> | undefined, reading: string): Gate {
  if (!loadFraction) return { open: false, findings: [CONDITION.make('signature-load-unknown', { reading })] };
  const load = loadFraction.value;
  if (load < limitOf(scope, 'E1a').value / 100)
    return { open: false, findings: [CONDITION.make('signature-under-loaded', { reading, load })] };
  if (load < limitOf(scope, 'E1b').value / 100)
    return { open: true, findings: [CONDITION.make('signature-half-weight', { reading, load })] };
  return { open: true, findings: [] };
}
