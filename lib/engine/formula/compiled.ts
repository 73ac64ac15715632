import type { Unit } from '../quantity/unit';

/** What the generator writes for one formula: everything a user of the formula needs, and no parser. */
export interface Compiled {
  readonly id: string;
  readonly title: string;
  readonly unit: Unit;
  readonly symbol: string;
  readonly inputs: Readonly<Record<string, { readonly unit: Unit; readonly symbol: string; readonly meaning: string }>>;
  /** Order of the arguments of `f` and of the derivatives in `d`. */
  readonly names: readonly string[];
  readonly f: (...values: number[]) => number;
  readonly d: readonly ((...values: number[]) => number)[];
  /** Right-hand side in TeX. */
  readonly tex: string;
  /** The same with each input as `⟦name⟧`, for numbers to be put in. */
  readonly template: string;
  /** Spreadsheet formula; each input stands as `{name}`. */
  readonly cell: string;
  readonly expression: string;
  readonly valid: string;
  readonly source: string;
}
