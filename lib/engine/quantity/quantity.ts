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

/** A value with its unit and its uncertainty by named source. Immutable; not to be copied by spreading, see {@link withValue}. */
export interface Quantity<U extends Unit = Unit> {
  readonly unit: U;
  readonly value: number;
  readonly parts: Parts;
}

/** A named, independent cause of doubt: a stamp's tolerance, a meter's class, a typical share. */
export interface Source {
  readonly id: string;
  readonly label: string;
  /** True where every error within limits is as likely as any other (a meter's class, rounding); else it is taken as normal. */
  readonly rectangular: boolean;
  /** Set where the cause is a meter's own error, which other motors read with it share. */
  readonly meter?: Meter | undefined;
}

/** What reads: the instrument as the sheet names it, and which of its ranges. */
export interface Meter {
  readonly instrument: string | undefined;
  readonly reads: MeteredKind;
}
export type MeteredKind = 'voltage' | 'current' | 'power' | 'power-factor' | 'speed' | 'frequency';

/**
 * The independent sources of one motor's evaluation, numbered in order of first use.
 * Asking twice for the same id gives the same number, which is what correlates two results from one stamp.
 */
export class Sources {
  readonly list: Source[] = [];
  readonly #index = new Map<string, number>();

  /** Number of the source with this id; registers it when new. */
  number(id: string, label: string, rectangular = false, meter?: Meter): number {
    const known = this.#index.get(id);
    if (known !== undefined) return known;
    const number = this.list.length;
    this.list.push({ id, label, rectangular, meter });
    this.#index.set(id, number);
    return number;
  }
}

/** Zeros of which {@link zeros} takes what is asked for; the half keeps them an array of doubles, which small whole numbers would not be. */
let NOUGHTS: number[] = [0.5];

/** So many zeros to add to, kept as doubles from the start: a list that changes its kind under way is copied, and slow to read ever after. */
function zeros(count: number): number[] {
  if (NOUGHTS.length <= count) NOUGHTS = Array.from({ length: 2 * count + 64 }, (_, i) => (i === 0 ? 0.5 : 0));
  return NOUGHTS.slice(1, count + 1);
}

/** Contributions that are all zero: an exact value. */
export const EXACT: Parts = { at: [], by: [] };

/** An exact quantity: a constant, a count, a setting taken as given. */
export function exact<U extends Unit>(value: number, unit: U): Quantity<U> {
  return { unit, value, parts: EXACT };
}

/** A value whose doubts are worked out when they are first asked for. */
export class Later<U extends Unit> implements Quantity<U> {
  private found: Parts | undefined = undefined;

  constructor(
    readonly unit: U,
    readonly value: number,
    private readonly workOut: () => Parts,
  ) {}

  get parts(): Parts {
    this.found ??= this.workOut();
    return this.found;
  }
}

/** Standard uncertainty (k = 1) of a quantity: root sum of squares of its independent parts (GUM 5.1.2). */
export function standardUncertainty(quantity: { readonly parts: Parts }): number {
  const { by } = quantity.parts;
  let sum = 0;
  for (let i = 0; i < by.length; i++) {
    const part = by[i] as number;
    sum += part * part;
  }
  return Math.sqrt(sum);
}

/** Covariance of two quantities of the same motor, through the sources that they share (GUM 5.2.2). */
export function covariance(a: { readonly parts: Parts }, b: { readonly parts: Parts }): number {
  const { at, by } = a.parts;
  const other = b.parts;
  let sum = 0;
  if (at === other.at) for (let i = 0; i < at.length; i++) sum += (by[i] as number) * (other.by[i] as number);
  else {
    for (let i = 0; i < at.length; i++) {
      const j = other.at.indexOf(at[i] as number);
      if (j >= 0) sum += (by[i] as number) * (other.by[j] as number);
    }
  }
  return sum;
}

/** Contribution of one source to a quantity, with its sign; 0 where it has none. */
export function contributionOf(source: number, { parts }: { readonly parts: Parts }): number {
  const at = parts.at.indexOf(source);
  return at < 0 ? 0 : (parts.by[at] ?? 0);
}

/** Contribution of one source alone. */
export function onePart(source: number, contribution: number): Parts {
  return { at: [source], by: [contribution] };
}

/** A quantity moved to another value with the doubts that it has. Copying its fields will not do: doubts may not be worked out yet. */
export function withValue<U extends Unit>(quantity: Quantity<U>, value: number): Quantity<U> {
  return { unit: quantity.unit, value, parts: quantity.parts };
}

/** A quantity times an exact factor. */
export function scaled<U extends Unit>(quantity: Quantity<U>, factor: number): Quantity<U> {
  return { unit: quantity.unit, value: quantity.value * factor, parts: scaleParts(quantity.parts, factor) };
}

/** Every contribution times a factor. */
export function scaleParts(parts: Parts, factor: number): Parts {
  if (factor === 0) return EXACT;
  const by = zeros(parts.by.length);
  for (let i = 0; i < by.length; i++) by[i] = (parts.by[i] as number) * factor;
  return { at: parts.at, by };
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
  const by = zeros(at.length);
  for (const [weight, parts] of terms) if (parts.at === at) addInto(by, weight, parts.by);
  return { at, by };
}

/** The same for the inputs of a formula: `slope` gives the weight of each, asked only where there is doubt. */
export function propagateParts(inputs: readonly { readonly parts: Parts }[], slope: (index: number) => number): Parts {
  const at = commonSources(inputs.length, (k) => (inputs[k] as { readonly parts: Parts }).parts);
  const by = at && zeros(at.length);
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

/**
 * The one list of sources that all doubtful parts share; figures of one solved point do, and need no looking up.
 * Every part is asked for, so that none is worked out while a sum is under way.
 */
function commonSources(count: number, partsOf: (index: number) => Parts): readonly number[] | undefined {
  let common: readonly number[] | undefined;
  let shared = true;
  for (let k = 0; k < count; k++) {
    const { at } = partsOf(k);
    if (at.length === 0) continue;
    if (common === undefined) common = at;
    else if (common !== at) shared = false;
  }
  return shared ? common : undefined;
}

function addInto(sum: number[], weight: number, by: readonly number[]): void {
  for (let i = 0; i < sum.length; i++) sum[i] = (sum[i] as number) + weight * (by[i] as number);
}

/** One input of a table: dense along the head of the list, or by places. */
interface TableRow {
  readonly by: readonly number[];
  readonly places?: readonly number[] | undefined;
}

/**
 * Contributions of several doubtful inputs over one list of sources, from which many results are worked out: each result is a weighted sum
 * of the rows, and all results share the list.
 */
export class PartsTable {
  private readonly at: readonly number[];
  private readonly rows: readonly TableRow[];

  constructor(inputs: readonly Parts[]) {
    // The longest comes first, so that what shares its list stands as it is.
    let head = EXACT.at;
    for (const { at } of inputs) if (at.length > head.length) head = at;
    let at = head;
    const place: number[] = [];
    this.rows = inputs.map((parts) => {
      if (parts.at === head || parts.at.length === 0) return parts;
      if (at === head) {
        at = [...head];
        for (let i = 0; i < head.length; i++) mark(place, head[i] as number, i);
      }
      return {
        by: parts.by,
        places: parts.at.map((source) => {
          const known = place[source];
          if (known !== undefined && known >= 0) return known;
          mark(place, source, at.length);
          (at as number[]).push(source);
          return at.length - 1;
        }),
      };
    });
    this.at = at;
  }

  /** Weighted sum of the rows; the weight of row k is `weights[from + k] * scale`. */
  sum(weights: ArrayLike<number>, from: number, scale: number): Parts {
    const { at, rows } = this;
    if (at.length === 0) return EXACT;
    const sum = zeros(at.length);
    for (let k = 0; k < rows.length; k++) {
      const { by, places } = rows[k] as TableRow;
      const weight = (weights[from + k] as number) * scale;
      if (weight === 0) continue;
      if (places) for (let i = 0; i < by.length; i++) addAt(sum, places[i] as number, weight * (by[i] as number));
      else for (let i = 0; i < by.length; i++) addAt(sum, i, weight * (by[i] as number));
    }
    return { at, by: sum };
  }
}

function mark(place: number[], source: number, at: number): void {
  while (place.length <= source) place.push(-1);
  place[source] = at;
}

function addAt(sum: number[], place: number, amount: number): void {
  sum[place] = (sum[place] as number) + amount;
}
