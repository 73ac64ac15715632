import { combineParts, type Quantity } from '../quantity/quantity';
import type { Unit } from '../quantity/unit';

/** Quantities in a list of units, in their order. */
export type QuantitiesOf<U extends readonly Unit[]> = { readonly [K in keyof U]: Quantity<U[K]> };

/**
 * Carries doubts through a solution that no closed formula gives: each input is moved by a small part of its own standard uncertainty,
 * and the change of every output is its sensitivity (GUM 5.1.3, note 2).
 *
 * Returns `undefined` when the solution does not exist at the inputs or beside them.
 */
export function propagate<const U extends readonly Unit[]>(
  inputs: readonly Quantity[],
  units: U,
  solve: (values: readonly number[]) => readonly number[] | undefined,
): QuantitiesOf<U> | undefined {
  const values = inputs.map((input) => input.value);
  const outputs = solve(values);
  if (!outputs) return undefined;
  const slopes: number[][] = [];
  for (const [k, input] of inputs.entries()) {
    const u = Math.hypot(...input.parts.by);
    if (u === 0) {
      slopes.push(outputs.map(() => 0));
      continue;
    }
    const step = u / 10;
    const up = solve(values.map((value, i) => (i === k ? value + step : value)));
    const down = solve(values.map((value, i) => (i === k ? value - step : value)));
    if (!up || !down) return undefined;
    slopes.push(outputs.map((_, j) => ((up[j] ?? 0) - (down[j] ?? 0)) / (2 * step)));
  }
  // The mapped type ties each output to its unit, which map forgets: hence the assertion.
  return units.map((unit, j) => ({
    unit,
    value: outputs[j] ?? 0,
    parts: combineParts(inputs.map((input, k) => [slopes[k]?.[j] ?? 0, input.parts] as const)),
  })) as unknown as QuantitiesOf<U>;
}
