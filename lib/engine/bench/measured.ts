import type { Quantity } from '../quantity/quantity';
import type { Figure } from '../result';
import { figure } from '../result-figure';
import type { BenchEvaluation } from './evaluate';

/** What a test has measured of a motor, to take the place of typical shares in its model. Absent is not measured. */
export interface MeasuredLosses {
  /** At rated voltage, kW. */
  readonly core?: Figure;
  /** kW. */
  readonly friction_windage?: Figure;
  /** Core loss with friction and windage, where the run did not tell them apart, kW. */
  readonly constant_loss?: Figure;
  /** At rated load, measured by a dynamometer or by reverse rotation, never assumed; kW. */
  readonly stray_at_rated_load?: Figure;
  /** Between terminals, Ω, with the temperature of the winding, °C. */
  readonly stator_resistance?: Figure;
  readonly stator_resistance_temp?: Figure;
  /** Line current uncoupled at rated voltage, A. */
  readonly no_load_current?: Figure;
  /** At rated load, all losses measured; bare fraction. */
  readonly efficiency?: Figure;
}

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
