import type { Evaluation } from '../evaluate';
import { covariance, type Quantity, standardUncertainty } from '../quantity/quantity';
import type { DoubtResult } from '../result';
import { figure, tidy } from '../result-figure';

/**
 * What the values of a motor's options hang on: for its load, its hours and its efficiency, how much each option's net present value moves with one
 * standard deviation of it, through all doubts that they share. Units: currency. Source: GUM 5.2, regression of one normal quantity on another.
 */
export function doubtsOf({ duty, point, options, scope }: Evaluation): DoubtResult[] {
  const { currency } = scope.settings;
  // The step of the duty that runs longest stands for the load; hours share one doubt.
  const main = duty?.points.reduce((longest, step) => (step.hours.value > longest.hours.value ? step : longest));
  const about: readonly (readonly [DoubtResult['about'], Quantity | undefined])[] = [
    ['load', main?.loadFraction ?? point?.loadFraction],
    ['hours', main?.hours],
    ['efficiency', point?.efficiency],
  ];
  return about.flatMap(([name, quantity]) => {
    const u = quantity && standardUncertainty(quantity);
    if (!quantity || !u) return [];
    const effects = options.flatMap(({ id, figures }) => {
      const value = figures.net_present_value;
      const moved = value && covariance(value, quantity) / u;
      return moved ? [{ option: id, net_present_value: tidy(moved) }] : [];
    });
    return effects.length > 0 ? [{ about: name, figure: figure(quantity, currency), effects }] : [];
  });
}
