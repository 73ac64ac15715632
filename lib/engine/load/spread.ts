import type { MotorScope } from '../context';
import { combineParts, onePart, type Quantity } from '../quantity/quantity';

/** Adds a method's own spread to an estimate, as a source of its own: what the method leaves out. */
export function withModelSpread(scope: MotorScope, estimate: Quantity<'1'>, id: string, label: string, u: number): Quantity<'1'> {
  const index = scope.sources.number(id, label);
  const widened: Quantity<'1'> = {
    unit: '1',
    value: estimate.value,
    parts: combineParts([
      [1, estimate.parts],
      [1, onePart(index, u)],
    ]),
  };
  const step = scope.trace?.get(estimate);
  if (step) scope.trace?.set(widened, step);
  return widened;
}
