import type { MotorWorksheet, Product, WorkLine } from '@/lib/engine';
import type { Assumptions } from './assumptions';
import { type Cell, filled } from './cells';

export const WORKING = 'Working';

/** Column of the values. */
const VALUE = 'D';

/** Every line of working of every motor, inputs above what rests on them. */
export class WorkingSheet {
  readonly #assumptions: Assumptions;
  readonly #currency: string;
  readonly #write: (cells: readonly Cell[]) => void;
  #rows = 1;

  constructor(currency: string, assumptions: Assumptions, write: (cells: readonly Cell[]) => void) {
    this.#assumptions = assumptions;
    this.#currency = currency;
    this.#write = write;
    write(['Site', 'Tag', 'What', 'Value', 'Unit', 'Formula', 'Source']);
  }

  /** Writes the lines of a motor. @returns the address of a product of them. */
  add({ motor, lines }: MotorWorksheet): (product: Product) => string {
    const first = this.#rows + 1;
    const address = (line: number) => `$${VALUE}$${first + line}`;
    for (const line of lines) {
      this.#rows += 1;
      this.#write([
        motor.site,
        motor.tag,
        line.title,
        this.#value(line, address),
        line.unit.replace('currency', this.#currency),
        line.formula?.id ?? '',
        line.source,
      ]);
    }
    return (product) => product.map((line) => `${WORKING}!${address(line)}`).join('*');
  }

  #value(line: WorkLine, address: (line: number) => string): Cell {
    const { formula, mover, value } = line;
    if (formula) {
      const inputs = Object.fromEntries(Object.entries(formula.inputs).map(([name, from]) => [name, address(from)]));
      return { formula: filled(formula.cell, inputs), result: value };
    }
    if (mover === undefined) return value;
    if (mover.kind === 'assumption') return { formula: this.#assumptions.nameOf(mover, line), result: value };
    return { formula: `${value} * ${mover.kind === 'hours' ? 'hours_factor' : 'cost_factor'}`, result: value };
  }
}
