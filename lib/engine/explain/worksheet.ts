import type { StudyContext } from '../context';
import { evaluateMotor } from '../evaluate';
import type { Step } from '../formula/apply';
import type { Motor } from '../motor';
import type { Basis } from '../options/flow-counts';
import type { Option, OptionWorkings } from '../options/option';
import type { Worth } from '../options/worth';
import type { Quantity } from '../quantity/quantity';

/** What a value may be moved by in a workbook: an assumption of the study by its name, or a factor on hours or on listed prices. */
export type Mover =
  | { readonly kind: 'assumption'; readonly label: string; readonly source: string }
  | { readonly kind: 'hours' }
  | { readonly kind: 'cost' };

/** One line of working: a value as it is, or a formula of the sheets over other lines. */
export interface WorkLine {
  readonly title: string;
  readonly value: number;
  readonly unit: string;
  readonly source: string;
  readonly formula?:
    | { readonly id: string; readonly cell: string; readonly inputs: Readonly<Record<string, number>> }
    | undefined;
  readonly mover?: Mover | undefined;
}

/** Product of lines. */
export type Product = readonly number[];

/** The lines that one basis of a cash flow is worth; running splits into its parts. */
export interface WorthLines {
  readonly whole: Product;
  readonly energy?: Product | undefined;
  readonly demand?: Product | undefined;
  readonly powerFactor?: Product | undefined;
}

/** The working of one option, by numbers of lines. */
export interface OptionWorksheet {
  readonly option: Option;
  readonly cost: number;
  readonly energySaved?: number | undefined;
  readonly moneySaved?: number | undefined;
  /** Absent where the option has no value. */
  readonly flow?:
    | {
        readonly workings: OptionWorkings;
        readonly netCost: number;
        readonly firstYear: number;
        readonly worths: { readonly [B in Basis]?: WorthLines };
      }
    | undefined;
}

/** The money of one motor's options, down to the powers and prices that it rests on. */
export interface MotorWorksheet {
  readonly motor: Motor;
  readonly decided: string;
  readonly lines: readonly WorkLine[];
  readonly options: readonly OptionWorksheet[];
}

/** Formulas that a workbook carries on; what comes out of the machine's circuit is a value to it. */
const CARRIED = /^(money|options)\./;

/**
 * Evaluates a motor and writes down the money of its options as formulas over lines: each quantity once, inputs before what rests on them.
 * Powers at the operating points, efficiencies and expected failures are values; prices, hours, energies, costs, savings are formulas.
 */
export function motorWorksheet(motor: Motor, study: StudyContext): MotorWorksheet {
  const trace = new Map<Quantity, Step>();
  const evaluation = evaluateMotor(motor, study, trace);
  const book = new Lines(trace);
  return {
    motor,
    decided: evaluation.decision.option,
    options: evaluation.options.map((option) => worked(option, book)),
    lines: book.lines,
  };
}

function worked(option: Option, book: Lines): OptionWorksheet {
  const { workings, figures } = option;
  const line = (quantity: Quantity | undefined) => quantity && book.lineOf(quantity);
  return {
    option,
    cost: book.lineOf(figures.cost),
    energySaved: line(figures.energy_saved),
    moneySaved: line(figures.money_saved),
    flow: workings && {
      workings,
      netCost: book.lineOf(workings.netCost),
      firstYear: book.lineOf(workings.firstYear),
      worths: worthLines(workings, book),
    },
  };
}

function worthLines({ plan, worths }: OptionWorkings, book: Lines): { readonly [B in Basis]?: WorthLines } {
  const found: { [B in Basis]?: WorthLines } = {};
  for (const { basis } of plan.terms) {
    const worth = worths[basis];
    if (worth && !found[basis]) found[basis] = book.worth(worth);
  }
  return found;
}

/** Collects lines, each quantity once. */
class Lines {
  readonly lines: WorkLine[] = [];
  readonly #numbers = new Map<Quantity, number>();
  readonly #trace: ReadonlyMap<Quantity, Step>;

  constructor(trace: ReadonlyMap<Quantity, Step>) {
    this.#trace = trace;
  }

  lineOf(quantity: Quantity): number {
    const known = this.#numbers.get(quantity);
    if (known !== undefined) return known;
    const step = this.#trace.get(quantity);
    const line = this.#line(quantity, step);
    const number = this.lines.length;
    this.lines.push(line);
    this.#numbers.set(quantity, number);
    return number;
  }

  worth({ quantity, energy, demand, powerFactor }: Worth): WorthLines {
    if (energy === undefined && demand === undefined) return { whole: [this.lineOf(quantity)] };
    return { whole: [this.lineOf(quantity)], ...this.#parts(quantity, !!powerFactor) };
  }

  #parts(quantity: Quantity, reactive: boolean): Omit<WorthLines, 'whole'> {
    const step = this.#trace.get(quantity);
    if (step?.kind !== 'formula') return {};
    const input = (name: string): Quantity => {
      const found = step.inputs[name];
      if (!found) throw new Error(`${step.formula.id} was applied without ${name}`);
      return found;
    };
    switch (step.formula.id) {
      case 'money.running_cost':
        return { energy: [this.lineOf(input('energy'))], demand: [this.lineOf(input('demand'))] };
      case 'money.running_cost_with_power_factor':
        return {
          ...this.#parts(input('running'), false),
          ...(reactive && { powerFactor: [this.lineOf(input('power_factor'))] }),
        };
      case 'options.cost_after_repair': {
        const parts = this.#parts(input('cost'), reactive);
        const ratio = this.lineOf(input('ratio'));
        const times = (product: Product | undefined) => product && [...product, ratio];
        return { energy: times(parts.energy), demand: times(parts.demand), powerFactor: times(parts.powerFactor) };
      }
      default:
        return {};
    }
  }

  #line(quantity: Quantity, step: Step | undefined): WorkLine {
    const { value, unit } = quantity;
    if (step?.kind === 'formula' && CARRIED.test(step.formula.id)) {
      const inputs: Record<string, number> = {};
      for (const [name, from] of Object.entries(step.inputs)) inputs[name] = this.lineOf(from);
      const { id, cell, title, source } = step.formula;
      return { title, value, unit, source, formula: { id, cell, inputs } };
    }
    const hours: Mover | undefined = unit === 'h/a' ? { kind: 'hours' } : undefined;
    if (!step) return { title: 'constant', value, unit, source: 'as the relation or the sheet states it', mover: hours };
    if (step.kind === 'formula')
      return { title: step.formula.title, value, unit, source: 'operating point, as evaluated', mover: hours };
    if (step.kind === 'solution') return { title: step.label, value, unit, source: step.source, mover: hours };
    return { title: step.label, value, unit, source: step.source, mover: hours ?? moverOf(step, unit) };
  }
}

function moverOf({ label, source }: Extract<Step, { kind: 'leaf' }>, unit: string): Mover | undefined {
  if (unit === 'currency') {
    const priced = /^(invented )?price list: /.test(source) || label === 'quoted_price' || label === 'quoted_repair';
    return priced ? { kind: 'cost' } : undefined;
  }
  return source.startsWith('setting ') || source.startsWith('tariff of ') ? { kind: 'assumption', label, source } : undefined;
}
