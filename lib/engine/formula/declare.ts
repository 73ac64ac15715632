import type { Unit } from '../quantity/unit';

/** An input of a formula: its unit, the symbol it is set with, and what it means. */
interface FormulaInput<U extends Unit = Unit> {
  readonly unit: U;
  /** TeX of the symbol. */
  readonly symbol: string;
  readonly meaning: string;
}

/**
 * A closed-form relation, stated once. From this come the native function, its partial derivatives, the typeset formula, the
 * spreadsheet formula and the unit check (see `scripts/generate.ts`), and the derivation shown to the reader.
 */
export interface FormulaDeclaration<
  I extends Record<string, FormulaInput> = Record<string, FormulaInput>,
  O extends Unit = Unit,
> {
  readonly title: string;
  readonly unit: O;
  readonly symbol: string;
  readonly inputs: I;
  /** Smooth expression over the inputs and the named constants of `constants.ts`; branches belong in code. */
  readonly expression: string;
  /** Range in which the relation holds. */
  readonly valid: string;
  readonly source: string;
  /** Inputs at which the relation may be evaluated: the generator's checks use them. */
  readonly example: { readonly [K in keyof I]: number };
}

/** States one formula; keeps the literal types of units, so that a wrong unit does not compile where the formula is applied. */
export function formula<const I extends Record<string, FormulaInput>, const O extends Unit>(
  declaration: FormulaDeclaration<I, O>,
): FormulaDeclaration<I, O> {
  return declaration;
}

/** States one input of a formula. */
export function input<const U extends Unit>(unit: U, symbol: string, meaning: string): FormulaInput<U> {
  return { unit, symbol, meaning };
}
