/**
 * A system of equations without a closed solution, stated once: steps that follow from each other, of which some must vanish.
 * From this come the native functions that a search runs on, all derivatives at the solution, and the typeset equations
 * (see `scripts/generate.ts`).
 */
export interface SystemDeclaration {
  readonly title: string;
  /** Unknowns of the search, with the TeX of their symbols. */
  readonly state: Readonly<Record<string, string>>;
  /** What may be doubtful: derivatives by these are written. */
  readonly inputs: Readonly<Record<string, string>>;
  /** What is taken as known. */
  readonly given: Readonly<Record<string, string>>;
  /** Symbol and smooth expression of each step, over all that stands before it. */
  readonly steps: Readonly<Record<string, readonly [symbol: string, expression: string]>>;
  /** Steps whose values and slopes by the state the search needs; those of the results come after them. */
  readonly search: readonly string[];
  readonly results: readonly string[];
  /** Range in which the equations hold. */
  readonly valid: string;
  readonly source: string;
}

/** States a system; keeps the literal names. */
export function system<const D extends SystemDeclaration>(declaration: D): D {
  return declaration;
}

/** One equation for the reader. */
export interface Equation {
  readonly name: string;
  readonly symbol: string;
  /** Right-hand side in TeX. */
  readonly tex: string;
}
