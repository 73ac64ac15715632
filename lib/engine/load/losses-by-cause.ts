import type { Evaluation } from '../evaluate';
import { apply } from '../formula/apply';
import * as M from '../generated/machine';
import { withDoubt } from '../machine/observation';
import { exact, type Quantity } from '../quantity/quantity';

/** The total loss at the reading in use by what causes it; a cause of which nothing was read is absent. */
export interface ByCause {
  readonly fundamental: Quantity<'kW'>;
  readonly unbalance?: Quantity<'kW'> | undefined;
  readonly harmonics?: Quantity<'kW'> | undefined;
  readonly drive?: Quantity<'kW'> | undefined;
}

/**
 * What the backward field really costs, over what the circuit gives: known to half of itself, since deep bars multiply the rotor's
 * resistance by 1.25 to 4 (from memory) where 1.8 is taken.
 */
const BACKWARD_DOUBT = 0.5;

/**
 * Losses by cause. Their sum is the total loss.
 *
 * Units: kW. Valid for: a motor with a usable reading; `undefined` without. Source: the circuit's negative sequence; published ranges for
 * waveforms, see `supply-loss.ts`.
 */
export function lossesByCause({ scope, point, inUse }: Pick<Evaluation, 'scope' | 'point' | 'inUse'>): ByCause | undefined {
  if (!point || !inUse) return undefined;
  const { unbalanceLoss } = point;
  const unbalance =
    unbalanceLoss &&
    withDoubt(
      scope,
      unbalanceLoss,
      `row ${inUse.reading.row}:model:unbalance`,
      'what an unbalanced supply costs beyond the circuit',
      BACKWARD_DOUBT * unbalanceLoss.value,
    );
  const fundamental = apply(scope, M.fundamental_loss, {
    total_loss: point.losses.total,
    unbalance: unbalanceLoss ?? exact(0, 'kW'),
    extra_loss: point.extraLoss ?? exact(0, 'kW'),
  });
  return { fundamental, unbalance, ...inUse.metered.supplyLoss };
}
