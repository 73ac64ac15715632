import { indicatorResult } from '../condition/result';
import type { Evaluation } from '../evaluate';
import type { Step } from '../formula/apply';
import { CONSTANTS } from '../formula/constants';
import { type Origin, type Quantity, standardUncertainty } from '../quantity/quantity';
import type { IndicatorResult } from '../result';
import { INDICATOR_PATH } from './figures';
import { type LimitsFound, limitsOf } from './limits-of';

/** One step of a derivation, plain data: what the panel and the command line show. */
export interface DerivationStep {
  /** Number within the derivation; the figure asked for is 0. */
  readonly id: number;
  readonly kind: 'formula' | 'leaf' | 'solution';
  readonly title: string;
  /** Id of the formula, such as `load.load_from_slip`; absent for what no closed form gives. */
  readonly formula?: string;
  readonly value: number;
  readonly u: number;
  readonly unit: string;
  readonly origin: Origin;
  readonly source: string;
  /** Equation in TeX, with symbols. */
  readonly tex?: string;
  /** The same with the numbers put in. */
  readonly texNumbers?: string;
  /** The expression with numbers put in, as text. */
  readonly textNumbers?: string;
  /** The expression with names, as text. */
  readonly text?: string;
  readonly valid?: string;
  /** What an iterative solution leaves, relative; absent for closed forms. */
  readonly residual?: number;
  readonly inputs: readonly { readonly name: string; readonly meaning: string; readonly step: number }[];
}

/** A figure's derivation: steps reachable from it, each once, and the sources of its doubt by weight. */
export interface Derivation {
  readonly figure: string;
  readonly steps: readonly DerivationStep[];
  /** Share of each source in the variance of the figure, largest first. */
  readonly doubts: readonly { readonly label: string; readonly share: number; readonly u: number }[];
  /** 95 % limits in the figure's unit, where they are more than value ± 1.96 u. */
  readonly limits?: LimitsFound | undefined;
  /** Of a condition indicator: its limit and what is left to it. */
  readonly verdict?: Verdict | undefined;
}

/** What an indicator is held against, and how it stands; without `band` and `margin` where no verdict may be given, and `findings` say why. */
export type Verdict = Pick<IndicatorResult, 'band' | 'margin' | 'limit' | 'source' | 'status' | 'findings'>;

/**
 * How a figure came about: every step from the figure down to stamps and meters, recorded while the same code ran.
 * The evaluation must have been made with a trace. `undefined` when the quantity was not recorded.
 */
export function derive(evaluation: Evaluation, path: string, quantity: Quantity): Derivation | undefined {
  const trace = evaluation.scope.trace;
  if (!trace) return undefined;
  const steps: DerivationStep[] = [];
  const numbers = new Map<Quantity, number>();
  const currency = evaluation.scope.settings.currency;
  const visit = (target: Quantity): number => {
    const known = numbers.get(target);
    if (known !== undefined) return known;
    const id = numbers.size;
    numbers.set(target, id);
    const place = steps.length;
    // The slot is taken before the inputs are visited, so that steps stand in the order of reading: a result above what it is made of.
    steps.push(PENDING);
    const step = trace.get(target);
    steps[place] = stepOf(id, target, step, inputsOf(step, visit), currency);
    return id;
  };
  visit(quantity);
  return {
    figure: path,
    steps: steps.sort((a, b) => a.id - b.id),
    doubts: doubtsOf(evaluation, quantity),
    limits: limitsOf(evaluation, path, quantity),
    verdict: verdictOf(evaluation, path),
  };
}

function verdictOf({ condition, scope }: Evaluation, path: string): Verdict | undefined {
  const judged = condition.indicators.find(({ id }) => `${INDICATOR_PATH}${id}` === path);
  if (!judged) return undefined;
  const { band, margin, limit, source, status, findings } = indicatorResult(judged, scope.settings.currency);
  return { band, margin, limit, source, status, findings };
}

const PENDING: DerivationStep = {
  id: -1,
  kind: 'leaf',
  title: '',
  value: 0,
  u: 0,
  unit: '1',
  origin: 'derived',
  source: '',
  inputs: [],
};

function inputsOf(step: Step | undefined, visit: (quantity: Quantity) => number): DerivationStep['inputs'] {
  if (!step || step.kind === 'leaf') return [];
  const meanings = step.kind === 'formula' ? step.formula.inputs : {};
  return Object.entries(step.inputs).map(([name, quantity]) => ({
    name,
    meaning: meanings[name]?.meaning ?? name.replaceAll('_', ' '),
    step: visit(quantity),
  }));
}

function stepOf(
  id: number,
  quantity: Quantity,
  step: Step | undefined,
  inputs: DerivationStep['inputs'],
  currency: string,
): DerivationStep {
  const base = {
    id,
    value: quantity.value,
    u: standardUncertainty(quantity),
    unit: quantity.unit.replace('currency', currency),
    inputs,
  };
  if (!step) return { ...base, kind: 'leaf', title: 'constant', origin: 'assumed', source: 'constant of the relation' };
  if (step.kind === 'leaf') return { ...base, kind: 'leaf', title: step.label, origin: step.origin, source: step.source };
  if (step.kind === 'solution') {
    return {
      ...base,
      kind: 'solution',
      title: step.label,
      origin: 'derived',
      source: step.source,
      tex: step.tex,
      residual: step.residual,
    };
  }
  const { formula } = step;
  const numbersFor = (name: string) => shortNumber(step.inputs[name]?.value ?? 0);
  const symbol = formula.symbol;
  return {
    ...base,
    kind: 'formula',
    title: formula.title,
    formula: formula.id,
    origin: 'derived',
    source: formula.source,
    valid: formula.valid,
    tex: `${symbol} = ${formula.tex}`,
    texNumbers: `${symbol} = ${formula.template.replaceAll(/⟦(\w+)⟧/g, (_, name: string) => numbersFor(name))} = ${shortNumber(quantity.value)}`,
    text: formula.expression,
    textNumbers: formula.expression.replaceAll(/[A-Za-z_]\w*/g, (name) =>
      name in formula.inputs ? numbersFor(name) : constant(name),
    ),
  };
}

/** The number of a named constant; a function's name stays. */
function constant(name: string): string {
  return name in CONSTANTS ? `${CONSTANTS[name as keyof typeof CONSTANTS].value}` : name;
}

/** Six significant digits, without an exponent where a person would not write one; negative numbers in brackets. */
function shortNumber(value: number): string {
  const text = Number(value.toPrecision(6)).toString();
  return value < 0 ? `(${text})` : text;
}

function doubtsOf(evaluation: Evaluation, quantity: Quantity): Derivation['doubts'] {
  const variance = standardUncertainty(quantity) ** 2;
  if (variance === 0) return [];
  return quantity.parts.at
    .map((source, index) => {
      const part = quantity.parts.by[index] ?? 0;
      return { label: evaluation.scope.sources.list[source]?.label ?? '', u: Math.abs(part), share: part ** 2 / variance };
    })
    .filter((doubt) => doubt.share > 0.0005)
    .sort((a, b) => b.share - a.share);
}
