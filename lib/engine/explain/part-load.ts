import type { Evaluation } from '../evaluate';
import { extraLoss } from '../load/supply-loss';
import { type Conditions, operatingPoint } from '../machine/operate';
import { exact, standardUncertainty } from '../quantity/quantity';

/** A point of the part-load curves of efficiency and power factor; `u` and `powerFactorU` are standard uncertainties. */
export interface CurvePoint {
  readonly loadFraction: number;
  readonly efficiency: number;
  readonly u: number;
  readonly powerFactor: number;
  readonly powerFactorU: number;
}

/**
 * What holds at the motor whatever its load: voltage and heat as the fit finds them, ambient, frequency and unbalance as read.
 * A measured winding temperature belongs to the load at which it was measured, and is left out.
 */
export function conditionsInUse({ inUse }: Pick<Evaluation, 'inUse'>): Conditions {
  if (!inUse) return { voltageRatio: exact(1, '1') };
  const { metered, combination } = inUse;
  return {
    voltageRatio: combination?.voltageRatio ?? metered.voltageRatio,
    ambient: metered.ambient,
    frequencyRatio: metered.frequencyRatio,
    negativeSequence: metered.negativeSequence,
    extraLoss: extraLoss(metered.supplyLoss),
    // Found against a measured winding it says nothing of one that is reckoned.
    heat: metered.windingTemperature ? undefined : combination?.heat,
  };
}

/**
 * Efficiency and power factor of the existing motor over its load, at the conditions of the reading in use, with the doubt of the fitted
 * machine. Load from `from` to `to` (fractions of rating) in `steps` equal steps; `from` above zero. Ends at the breakdown torque.
 */
export function partLoadCurve(evaluation: Evaluation, from = 0.1, to = 1.25, steps = 46): CurvePoint[] {
  const scope = { ...evaluation.scope, trace: undefined };
  const conditions = conditionsInUse(evaluation);
  return Array.from({ length: steps + 1 }, (_, index) => from + ((to - from) * index) / steps).flatMap((loadFraction) => {
    const point = operatingPoint(scope, evaluation.machine, exact(loadFraction, '1'), conditions);
    if (!point) return [];
    return [
      {
        loadFraction,
        efficiency: point.efficiency.value,
        u: standardUncertainty(point.efficiency),
        powerFactor: point.powerFactor.value,
        powerFactorU: standardUncertainty(point.powerFactor),
      },
    ];
  });
}
