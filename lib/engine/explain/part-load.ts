import type { Evaluation } from '../evaluate';
import { operatingPoint } from '../machine/operate';
import { exact, standardUncertainty } from '../quantity/quantity';

/** A point of the part-load curve of efficiency. */
export interface CurvePoint {
  readonly loadFraction: number;
  readonly efficiency: number;
  readonly u: number;
}

/**
 * Efficiency of the existing motor over its load, at the voltage of the reading in use, with the doubt of its losses.
 * Load from `from` to `to` (fractions of rating) in `steps` equal steps; `from` above zero.
 */
export function partLoadCurve(evaluation: Evaluation, from = 0.1, to = 1.25, steps = 46): CurvePoint[] {
  const scope = { ...evaluation.scope, trace: undefined };
  const voltageRatio = evaluation.inUse?.metered.voltageRatio ?? exact(1, '1');
  return Array.from({ length: steps + 1 }, (_, index) => from + ((to - from) * index) / steps).flatMap((loadFraction) => {
    const point = operatingPoint(scope, evaluation.machine, exact(loadFraction, '1'), { voltageRatio });
    if (!point) return [];
    return [{ loadFraction, efficiency: point.efficiency.value, u: standardUncertainty(point.efficiency) }];
  });
}
