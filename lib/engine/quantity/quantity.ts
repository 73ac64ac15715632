import type { Unit } from './unit';

/** Where a leaf value comes from; shown beside the figure as one small word. */
export type Origin = 'stamped' | 'metered' | 'derived' | 'table' | 'assumed' | 'setting';

/**
 * Contribution of each independent source to the uncertainty of a value, at k = 1 and in the unit of the value
 * (sensitivity times standard uncertainty). The index is the source's number in the motor's {@link Sources};
 * a missing entry is zero. Two quantities that share an entry are correlated through it.
 */
export type Parts = readonly number[];

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
export const EXACT: Parts = [];

/** An exact quantity: a constant, a count, a setting taken as given. */
export function exact<U extends Unit>(value: number, unit: U): Quantity<U> {
  return { unit, value, parts: EXACT };
}

/** Standard uncertainty (k = 1) of a quantity: root sum of squares of its independent parts (GUM 5.1.2). */
export function standardUncertainty(quantity: { readonly parts: Parts }): number {
  const { parts } = quantity;
  let sum = 0;
  for (let i = 0; i < parts.length; i++) sum += (parts[i] as number) * (parts[i] as number);
  return Math.sqrt(sum);
}

/** Covariance of two quantities of the same motor, through the sources that they share (GUM 5.2.2). */
export function covariance(a: { readonly parts: Parts }, b: { readonly parts: Parts }): number {
  const length = Math.min(a.parts.length, b.parts.length);
  let sum = 0;
  for (let i = 0; i < length; i++) sum += (a.parts[i] ?? 0) * (b.parts[i] ?? 0);
  return sum;
}

/** Weighted sum of part vectors; the first-order law of propagation. */
export function combineParts(terms: readonly (readonly [weight: number, parts: Parts])[]): Parts {
  let length = 0;
  for (const [, parts] of terms) if (parts.length > length) length = parts.length;
  if (length === 0) return EXACT;
  const sum: number[] = [];
  for (let i = 0; i < length; i++) sum.push(0);
  for (const [weight, parts] of terms) {
    if (weight === 0) continue;
    for (let i = 0; i < parts.length; i++) sum[i] = (sum[i] as number) + weight * (parts[i] as number);
  }
  return sum;
}
