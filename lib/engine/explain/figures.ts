import type { Evaluation } from '../evaluate';
import { lossesByCause } from '../load/losses-by-cause';
import type { Quantity } from '../quantity/quantity';

/** Before the id of an indicator in the path of its value. */
export const INDICATOR_PATH = 'condition.indicators.';

/**
 * Every figure of a motor's results by its path, as `--figure` and the panel name it: `shaft_power`, `losses.stator`,
 * `estimates.slip.load_fraction`, `options.replace-now-30-premium.simple_payback`.
 */
export function figuresOf(evaluation: Evaluation): ReadonlyMap<string, Quantity> {
  const figures = new Map<string, Quantity>();
  const { point, machine } = evaluation;
  if (point) {
    figures.set('shaft_power', point.shaftPower);
    figures.set('load_fraction', point.loadFraction);
    figures.set('input_power', point.inputPower);
    figures.set('efficiency', point.efficiency);
    figures.set('power_factor', point.powerFactor);
    figures.set('current', point.current);
    figures.set('winding_temperature', point.windingTemperature);
    figures.set('slip', point.slip);
    figures.set('speed', point.speed);
    figures.set('losses.stator', point.losses.stator);
    figures.set('losses.rotor', point.losses.rotor);
    figures.set('losses.core', point.losses.core);
    figures.set('losses.friction_windage', point.losses.frictionWindage);
    figures.set('losses.stray', point.losses.stray);
    figures.set('losses.total', point.losses.total);
  }
  const causes = lossesByCause(evaluation);
  if (causes)
    for (const [name, quantity] of Object.entries(causes)) if (quantity) figures.set(`losses_by_cause.${name}`, quantity);
  for (const estimate of evaluation.inUse?.estimates ?? [])
    figures.set(`estimates.${estimate.method}.load_fraction`, estimate.loadFraction);
  figures.set('plate.efficiency', machine.plate.efficiency);
  figures.set('plate.rated_speed', machine.plate.ratedSpeed);
  figures.set('plate.rated_slip', machine.plate.ratedSlip);
  figures.set('plate.rated_current', machine.plate.ratedCurrent);
  figures.set('plate.power_factor', machine.plate.powerFactor);
  figures.set('plate.magnetising_share', machine.plate.magnetisingShare);
  for (const indicator of evaluation.condition.indicators) figures.set(`${INDICATOR_PATH}${indicator.id}`, indicator.value);
  for (const option of evaluation.options) {
    for (const [name, quantity] of Object.entries(option.figures))
      if (quantity) figures.set(`options.${option.id}.${name}`, quantity);
  }
  return figures;
}
