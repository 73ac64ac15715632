import {
  combineParts,
  EXACT,
  type Meter,
  type Origin,
  type Parts,
  propagateParts,
  type Quantity,
  type Sources,
} from '../quantity/quantity';
import type { Unit } from '../quantity/unit';
import type { Compiled } from './compiled';

/** How a quantity came about: a formula applied to quantities, a leaf, or a statement of a solution found otherwise. */
export type Step =
  | { readonly kind: 'formula'; readonly formula: Compiled; readonly inputs: Readonly<Record<string, Quantity>> }
  | { readonly kind: 'leaf'; readonly label: string; readonly origin: Origin; readonly source: string }
  | {
      readonly kind: 'solution';
      readonly label: string;
      readonly tex: string;
      readonly residual: number;
      readonly source: string;
      readonly inputs: Readonly<Record<string, Quantity>>;
    };

/**
 * What an evaluation carries along: the motor's sources of uncertainty and, only when someone asks how a figure came about,
 * a record of each step. The numbers are the same either way, since the same code runs.
 */
export interface Scope {
  readonly sources: Sources;
  readonly trace?: Map<Quantity, Step> | undefined;
}

/** The quantities that a compiled formula asks for, with their units checked by the compiler. */
type FormulaInputs<F extends Compiled> = { readonly [K in keyof F['inputs']]: Quantity<F['inputs'][K]['unit']> };

/** Applies a formula: value from the native function, uncertainty by first-order propagation through its partial derivatives (GUM 5.1). */
export function apply<F extends Compiled>(scope: Scope, formula: F, inputs: FormulaInputs<F>): Quantity<F['unit']> {
  const given = inputs as Readonly<Record<string, Quantity>>;
  const quantities: Quantity[] = [];
  for (const name of formula.names) {
    const quantity = given[name];
    if (!quantity) throw new Error(`formula ${formula.id} was applied without ${name}`);
    quantities.push(quantity);
  }
  const result: Quantity<F['unit']> = new Applied(formula, quantities);
  scope.trace?.set(result, { kind: 'formula', formula, inputs: given });
  return result;
}

/** A formula's result; its doubts are worked out when they are first asked for, which for most steps between is never. */
class Applied<U extends Unit> implements Quantity<U> {
  readonly unit: U;
  readonly value: number;
  private found: Parts | undefined = undefined;

  constructor(
    private readonly formula: Compiled & { readonly unit: U },
    private quantities: readonly Quantity[],
  ) {
    this.unit = formula.unit;
    this.value = call(formula.f, quantities);
  }

  get parts(): Parts {
    if (this.found === undefined) {
      const { formula, quantities } = this;
      this.found = propagateParts(quantities, (index) => call(formula.d[index] ?? zero, quantities));
      this.quantities = [];
    }
    return this.found;
  }
}

const zero = (): number => 0;

/**
 * Calls a native function with the values of its inputs, in order. Written out by the number of inputs, since spreading an array
 * into the call takes several times as long as the formula itself.
 */
function call(f: (...values: number[]) => number, q: readonly Quantity[]): number {
  switch (q.length) {
    case 1:
      return f(at(q, 0));
    case 2:
      return f(at(q, 0), at(q, 1));
    case 3:
      return f(at(q, 0), at(q, 1), at(q, 2));
    case 4:
      return f(at(q, 0), at(q, 1), at(q, 2), at(q, 3));
    case 5:
      return f(at(q, 0), at(q, 1), at(q, 2), at(q, 3), at(q, 4));
    case 6:
      return f(at(q, 0), at(q, 1), at(q, 2), at(q, 3), at(q, 4), at(q, 5));
    default:
      return f(...q.map((quantity) => quantity.value));
  }
}

/** Outside of {@link call}, since making a function on each call costs more than the formulas do. */
function at(q: readonly Quantity[], index: number): number {
  return (q[index] as Quantity).value;
}

/** A value that comes from outside the formulas: a stamp, a meter, a table, a setting, an assumption. */
export interface Leaf<U extends Unit = Unit> {
  readonly value: number;
  readonly unit: U;
  readonly label: string;
  readonly origin: Origin;
  /** Where the value stands, for the reader: "nameplate", "reading in row 7", a table and its clause. */
  readonly source: string;
  /** Independent causes of doubt: id, words, standard uncertainty in the unit of the value, and whether errors are even within limits. */
  readonly doubts?: readonly {
    readonly id: string;
    readonly label: string;
    readonly u: number;
    readonly rectangular?: boolean;
    readonly meter?: Meter;
  }[];
}

/** Makes a leaf quantity and registers its sources. */
export function leaf<U extends Unit>(scope: Scope, given: Leaf<U>): Quantity<U> {
  const at: number[] = [];
  const by: number[] = [];
  for (const doubt of given.doubts ?? []) {
    if (doubt.u === 0) continue;
    at.push(scope.sources.number(doubt.id, doubt.label, doubt.rectangular, doubt.meter));
    by.push(doubt.u);
  }
  const parts: Parts = at.length === 0 ? EXACT : { at, by };
  const quantity: Quantity<U> = { unit: given.unit, value: given.value, parts };
  scope.trace?.set(quantity, { kind: 'leaf', label: given.label, origin: given.origin, source: given.source });
  return quantity;
}

/** A weighted mean as a quantity; the weights are taken as given. */
export function weightedMean<U extends Unit>(
  scope: Scope,
  unit: U,
  terms: readonly { readonly name: string; readonly quantity: Quantity<U>; readonly weight: number }[],
  statement: { readonly label: string; readonly tex: string; readonly source: string },
): Quantity<U> {
  const total = terms.reduce((sum, term) => sum + term.weight, 0);
  const value = terms.reduce((sum, term) => sum + term.weight * term.quantity.value, 0) / total;
  const parts = combineParts(terms.map((term) => [term.weight / total, term.quantity.parts] as const));
  const result: Quantity<U> = { unit, value, parts };
  scope.trace?.set(result, {
    kind: 'solution',
    ...statement,
    residual: 0,
    inputs: Object.fromEntries(terms.map((term) => [term.name, term.quantity])),
  });
  return result;
}

/** Records how a quantity was found when no closed formula gives it. */
export function solved<U extends Unit>(
  scope: Scope,
  quantity: Quantity<U>,
  statement: { readonly label: string; readonly tex: string; readonly residual: number; readonly source: string },
  inputs: Readonly<Record<string, Quantity>>,
): Quantity<U> {
  scope.trace?.set(quantity, { kind: 'solution', ...statement, inputs });
  return quantity;
}
