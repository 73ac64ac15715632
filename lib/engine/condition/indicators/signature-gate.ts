import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import type { MotorScope } from '../../context';
import type { Finding } from '../../quantity/finding';
import { type Quantity, standardUncertainty } from '../../quantity/quantity';
import { CONDITION } from '../findings';
import { limitOf } from '../limit';

/** What the load at which a signature was read makes of it. */
interface Gate {
  readonly open: boolean;
  /** How far the reading counts as evidence, 0 to 1. */
  readonly weight: number;
  readonly findings: readonly Finding[];
}

/**
 * Signature readings below 50 % load are not used, from 50 to 75 % count half, from 75 % in full (common practice, limits E1a and E1b).
 * The weight takes the load's own doubt along: half the chance that the load was at least the lower, plus half the chance that it was at
 * least the upper. `floor` is a load fraction below which no setting opens the gate.
 */
export function signatureGate(scope: MotorScope, loadFraction: Quantity<'1'> | undefined, reading: string, floor = 0): Gate {
  if (!loadFraction) return { open: false, weight: 0, findings: [CONDITION.make('signature-load-unknown', { reading })] };
  const load = loadFraction.value;
  const least = Math.max(limitOf(scope, 'E1a').value / 100, floor);
  if (load < least)
    return { open: false, weight: 0, findings: [CONDITION.make('signature-under-loaded', { reading, load, least })] };
  const full = Math.max(least, limitOf(scope, 'E1b').value / 100);
  const weight = (chanceOf(loadFraction, least) + chanceOf(loadFraction, full)) / 2;
  const half = load < full ? [CONDITION.make('signature-half-weight', { reading, load, least, full })] : [];
  return { open: true, weight, findings: half };
}

/** Chance that a load reaches an edge, its doubt taken as normal. */
function chanceOf(load: Quantity<'1'>, edge: number): number {
  const u = standardUncertainty(load);
  if (u === 0) return load.value >= edge ? 1 : 0;
  return 1 - normalCdf(edge, load.value, u);
}
