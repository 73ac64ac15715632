import type { Unit } from './unit';

/** Where a leaf value comes from; shown beside the figure as one small word. */
export type Origin = 'stamped' | 'metered' | 'derived' | 'table' | 'assumed' | 'setting';

/**
 * Contributions of the independent sources to the uncertainty of a value, at k = 1 and in the unit of the value (sensitivity times
 * standard uncertainty). Sparse: `at` holds the numbers of the sources in the motor's {@link Sources}, each once and in no order, `by` the
 * contribution of each. Two quantities that share a source are correlated through it.
 */
export interface Parts {
  readonly at: readonly number[];
  readonly by: readonly number[];
}

/** A value with its unit and its uncertainty by named source. Immutable. */
export interface Quantity<U extends Unit = Unit> {
  readonly unit: U;
  readonly value: number;
  readonly parts: Parts;
}

/** A named, independent cause of doubt: a stamp's tolerance, a meter's class, a typical share. */
export interface Source {
  readonly id: string;
  readonly label: string;
}

/**
 * The independent sources of one motor's evaluation, numbered in order of first use.
 * Asking twice for the same id gives the same number, which is what correlates two results from one stamp.
 */
export class Sources {
  readonly list: Source[] = [];
  readonly #index = new Map<string, number>();

  /** Number of the source with this id; registers it when new. */
  number(id: string, label: string): number {
    const known = this.#index.get(id);
    if (known !== undefined) return known;
    const number = this.list.length;
    this.list.push({ id, label });
    this.#index.set(id, number);
    return number;
  }
}

/** Contributions that are all zero: an exact value. */
export const EXACT: Parts = { at: [], by: [] };

/** An exact quantity: a constant, a count, a setting taken as given. */
export function exact<U extends Unit>(value: number, unit: U): Quantity<U> {
  return { unit, value, parts: EXACT };
}

/** Standard uncertainty (k = 1) of a quantity: root sum of squares of its independent parts (GUM 5.1.2). */
export function standardUncertainty(quantity: { readonly parts: Parts }): number {
  let sum = 0;
  for (const part of quantity.parts.by) sum += part * part;
  return Math.sqrt(sum);
}

/** Covariance of two quantities of the same motor, through the sources that they share (GUM 5.2.2). */
export function covariance(a: { readonly parts: Parts }, b: { readonly parts: Parts }): number {
  let sum = 0;
  a.parts.at.forEach((source, i) => {
    const j = b.parts.at.indexOf(source);
    if (j >= 0) sum += (a.parts.by[i] ?? 0) * (b.parts.by[j] ?? 0);
  });
  return sum;
}

/** Contribution of one source alone. */
export function onePart(source: number, contribution: number): Parts {
  return { at: [source], by: [contribution] };
}

/** A quantity times an exact factor. */
export function scaled<U extends Unit>(quantity: Quantity<U>, factor: number): Quantity<U> {
  return { unit: quantity.unit, value: quantity.value * factor, parts: scaleParts(quantity.parts, factor) };
}

/** Every contribution times a factor. */
export function scaleParts(parts: Parts, factor: number): Parts {
  return factor === 0 ? EXACT : { at: parts.at, by: parts.by.map((part) => part * factor) };
}

/**
 * Adds up weighted contributions source by source. One accumulator serves every sum: `place` says where a source stands in the sum under
 * way, so a sum costs what its terms hold and not what the motor's sources number.
 */
class PartSum {
  readonly #place: number[] = [];
  #at: number[] = [];
  #by: number[] = [];

  add(weight: number, parts: Parts): void {
    const { at, by } = parts;
    for (let i = 0; i < at.length; i++) {
      const source = at[i] as number;
      const amount = weight * (by[i] as number);
      const place = this.#place[source];
      if (place !== undefined && this.#at[place] === source) this.#by[place] = (this.#by[place] as number) + amount;
      else {
        while (this.#place.length <= source) this.#place.push(-1);
        this.#place[source] = this.#at.length;
        this.#at.push(source);
        this.#by.push(amount);
      }
    }
  }

  take(): Parts {
    const sum = this.#at.length === 0 ? EXACT : { at: this.#at, by: this.#by };
    this.#at = [];
    this.#by = [];
    return sum;
  }
}

const SUM = new PartSum();

/** Weighted sum of contributions; the first-order law of propagation. */
export function combineParts(terms: readonly (readonly [weight: number, parts: Parts])[]): Parts {
  const at = commonSources(terms.length, (k) => (terms[k] as readonly [number, Parts])[1]);
  if (at === undefined) {
    for (const [weight, parts] of terms) if (weight !== 0) SUM.add(weight, parts);
    return SUM.take();
  }
  const by = new Array<number>(at.length).fill(0);
  for (const [weight, parts] of terms) if (parts.at === at) addInto(by, weight, parts.by);
  return { at, by };
}

/** The same for the inputs of a formula: `slope` gives the weight of each, asked only where there is doubt. */
export function propagateParts(inputs: readonly { readonly parts: Parts }[], slope: (index: number) => number): Parts {
  const at = commonSources(inputs.length, (k) => (inputs[k] as { readonly parts: Parts }).parts);
  const by = at && new Array<number>(at.length).fill(0);
  for (let k = 0; k < inputs.length; k++) {
    const parts = (inputs[k] as { readonly parts: Parts }).parts;
    if (parts.at.length === 0) continue;
    const weight = slope(k);
    if (weight === 0) continue;
    if (by) addInto(by, weight, parts.by);
    else SUM.add(weight, parts);
  }
  return at && by ? { at, by } : SUM.take();
}

/** The one list of sources that all doubtful parts share; figures of one solved point do, and need no looking up. */
function commonSources(count: number, partsOf: (index: number) => Parts): readonly number[] | undefined {
  let common: readonly number[] | undefined;
  for (let k = 0; k < count; k++) {
    const { at } = partsOf(k);
    if (at.length === 0) continue;
    if (common === undefined) common = at;
    else if (common !== at) return undefined;
  }
  return common;
}

function addInto(sum: number[], weight: number, by: readonly number[]): void {
  for (let i = 0; i < sum.length; i++) sum[i] = (sum[i] as number) + weight * (by[i] as number);
}

/**
 * Contributions of several doubtful inputs over one list of sources, from which many results are worked out: each result is a weighted sum
 * of the rows, and all results share the list.
 */
export class PartsTable {
  readonly #at: readonly number[];
  readonly #rows: readonly (readonly number[])[];

  constructor(inputs: readonly Parts[]) {
    const first = inputs.find(({ at }) => at.length > 0);
    if (first && inputs.every(({ at }) => at.length === 0 || at === first.at)) {
      this.#at = first.at;
      this.#rows = inputs.map(({ by }) => by);
      return;
    }
    const at: number[] = [];
    const place: number[] = [];
    for (const parts of inputs)
      for (const source of parts.at) {
        while (place.length <= source) place.push(-1);
        if (place[source] !== -1) continue;
        place[source] = at.length;
        at.push(source);
      }
    this.#at = at;
    this.#rows = inputs.map((parts) => {
      if (parts.at.length === 0) return [];
      const row = new Array<number>(at.length).fill(0);
      for (let i = 0; i < parts.at.length; i++) row[place[parts.at[i] as number] as number] = parts.by[i] as number;
      return row;
    });
  }

  /** Weighted sum of the rows; the weight of row k is `weights[from + k] * scale`. */
  sum(weights: ArrayLike<number>, from: number, scale: number): Parts {
    if (this.#at.length === 0) return EXACT;
    const by = new Array<number>(this.#at.length).fill(0);
    for (let k = 0; k < this.#rows.length; k++) {
      const row = this.#rows[k] as readonly number[];
      const weight = (weights[from + k] as number) * scale;
      if (weight === 0 || row.length === 0) continue;
      for (let i = 0; i < by.length; i++) by[i] = (by[i] as number) + weight * (row[i] as number);
    }
    return { at: this.#at, by };
  }
}
