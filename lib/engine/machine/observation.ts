import type { MotorScope } from '../context';
import { leaf } from '../formula/apply';
import { combineParts, type Quantity, scaleParts, standardUncertainty } from '../quantity/quantity';
import type { Unit } from '../quantity/unit';

/**
 * What an observed value is compared with. The first group speaks of the machine alone, the second of one reading.
 * Logarithms where the doubt is a share of the value.
 */
export type Observed =
  | { readonly of: 'parameter'; readonly index: number }
  /** Logarithm of the total loss at the rated point. */
  | { readonly of: 'rated-loss' }
  /** Logarithm of the rated current. */
  | { readonly of: 'rated-current' }
  | { readonly of: 'rated-power-factor' }
  /** Logarithm of the stator resistance at a temperature in °C. */
  | { readonly of: 'resistance'; readonly temperature: number }
  | { readonly of: 'friction' }
  /** Logarithm of the stray-load loss at the rated point. */
  | { readonly of: 'stray' }
  /** Logarithms of current and input running free at a voltage. */
  | { readonly of: 'free-current'; readonly voltage: number }
  | { readonly of: 'free-input'; readonly voltage: number }
  /** Logarithms of core loss, and of core loss with friction and windage, running free at rated voltage. */
  | { readonly of: 'free-core' }
  | { readonly of: 'free-constant' }
  /** Logarithms of input and line current, power factor and slip of a reading. */
  | { readonly of: 'input'; readonly reading: number }
  | { readonly of: 'current'; readonly reading: number }
  | { readonly of: 'power-factor'; readonly reading: number }
  | { readonly of: 'slip'; readonly reading: number }
  /** A reading's own unknowns: load, voltage ratio, rotor and winding hotter than reckoned. */
  | { readonly of: 'load'; readonly reading: number }
  | { readonly of: 'voltage'; readonly reading: number }
  | { readonly of: 'heat'; readonly reading: number };

/** One thing known about a machine or a reading: a value with its named doubts, and what it is compared with. */
export interface Observation {
  /** Stable name within the motor, in snake case: `stamped_efficiency`, `input_power_row_7`. */
  readonly name: string;
  /** True for stamps and readings, false for what is only typical of such machines. */
  readonly evidence: boolean;
  readonly target: Observed;
  readonly value: Quantity<'1'>;
  readonly u: number;
}

/** Makes an observation; its weight is that of its doubts together. */
export function observation(name: string, evidence: boolean, target: Observed, value: Quantity<'1'>): Observation {
  return { name, evidence, target, value, u: Math.max(standardUncertainty(value), 1e-6) };
}

/** A quantity as the logarithm of its ratio to a base, with its doubts as shares. */
export function logarithm(scope: MotorScope, quantity: Quantity, base: number, label: string): Quantity<'1'> {
  const result: Quantity<'1'> = {
    unit: '1',
    value: Math.log(quantity.value / base),
    parts: scaleParts(quantity.parts, 1 / quantity.value),
  };
  scope.trace?.set(result, {
    kind: 'solution',
    label: `logarithm of the ${label}`,
    tex: '\\ln (q / q_b)',
    residual: 0,
    source: 'Doubts as shares of the value',
    inputs: { value: quantity },
  });
  return result;
}

/** What a test found as the logarithm of its ratio to a base, with one doubt, a share of the value. */
export function testedLogarithm(
  scope: MotorScope,
  ratio: number,
  what: string,
  source: string,
  doubt: { readonly id: string; readonly label: string; readonly u: number },
): Quantity<'1'> {
  return leaf(scope, {
    value: Math.log(ratio),
    unit: '1',
    label: `logarithm of the ${what}, per unit of rated power`,
    origin: 'metered',
    source,
    doubts: [doubt],
  });
}

/** A quantity with one more independent doubt. */
export function withDoubt<U extends Unit>(
  scope: MotorScope,
  quantity: Quantity<U>,
  id: string,
  label: string,
  u: number,
): Quantity<U> {
  const index = scope.sources.number(id, label);
  const result: Quantity<U> = {
    unit: quantity.unit,
    value: quantity.value,
    parts: combineParts([
      [1, quantity.parts],
      [1, { at: [index], by: [u] }],
    ]),
  };
  const step = scope.trace?.get(quantity);
  if (step) scope.trace?.set(result, step);
  return result;
}
