import type { Quantity } from '../quantity/quantity';
import type { Figure } from '../result';
import { figure } from '../result-figure';
import type { BenchEvaluation } from './evaluate';
import type { MeasuredLosses } from './tested';

/**
 * The measured losses of a test.
 *
 * A refused test gives what its sound sections measured: resistance, and the no-load losses where they could be separated. Stray-load loss
 * and efficiency come from an accepted test with measured stray-load loss alone.
 */
export function measuredLosses(evaluation: BenchEvaluation): MeasuredLosses {
  const { noLoad, reference, load, method, accepted } = evaluation;
  const shown = (quantity: Quantity): Figure => figure(quantity, '');
  const rated = load?.loads.find((each) => each.loadFraction === 1);
  const measured = accepted && (method.stray === 'line' || method.stray === 'reverse-rotation');
  return {
    ...(noLoad?.separated && {
      core: shown(noLoad.separated.core),
      friction_windage: shown(noLoad.separated.frictionWindage),
    }),
    ...(noLoad && { constant_loss: shown(noLoad.constant), no_load_current: shown(noLoad.current) }),
    ...(measured && rated && { stray_at_rated_load: shown(rated.losses.stray), efficiency: shown(rated.efficiency) }),
    ...(reference && {
      stator_resistance: shown(reference.resistance),
      stator_resistance_temp: { ...shown(reference.temperature), unit: '°C' },
    }),
  };
}
