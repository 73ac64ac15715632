import cdf from '@stdlib/stats-base-dists-normal-cdf';
import { type Parts, type Sources, standardUncertainty } from './quantity';

/** 95 % limits of a figure, in its unit. */
export interface Limits {
  readonly low: number;
  readonly high: number;
}

/** Chance that the limits of a figure hold: 95 %. */
const CHANCE = 0.95;

/** Standard uncertainties that hold {@link CHANCE} of a normal distribution on both sides together. */
export const NORMAL_FACTOR = 1.959963984540054;

/**
 * Standard uncertainty of a figure that bends to one side: where its 95 % limits are wider than first order says, that of a normal
 * distribution with limits as wide, since u of first order would hold too seldom there. Common practice; that u is the deviation of the
 * figure's own distribution and not that of first order is JCGM 101:2008, from memory.
 */
export function widened(quantity: { readonly parts: Parts }, limits: Limits | undefined): number {
  const firstOrder = standardUncertainty(quantity);
  return limits ? Math.max(firstOrder, (limits.high - limits.low) / (2 * NORMAL_FACTOR)) : firstOrder;
}

const STEPS = 200;

/** The factor is found to within this; below it, the chance itself is not told apart any more. */
const SETTLED = 1e-12;

let table: Float64Array | undefined;

/**
 * Coverage factor of 95 % for the sum of one rectangular error, which has `share` of the variance, and a normal rest; 1.96 where all is
 * normal, √3 · 0.95 = 1.645 where all is rectangular.
 *
 * In closed form: P(|R + N| ≤ k) with R even within ±a and N normal with deviation s is (s/a) [G((k+a)/s) − G((k−a)/s)] − 1, where
 * G(t) = t Φ(t) + φ(t). Solved for k at 200 shares once, straight lines between.
 * Source: JCGM 100:2008, G.1 and G.2 (convolution of distributions); JCGM 101:2008, 9.2 has cases of it.
 */
export function coverageFactor(share: number): number {
  table ??= Float64Array.from({ length: STEPS + 1 }, (_, i) => factorAt(i / STEPS));
  const at = Math.min(Math.max(share, 0), 1) * STEPS;
  const below = Math.min(Math.floor(at), STEPS - 1);
  const low = table[below] as number;
  return low + (at - below) * ((table[below + 1] as number) - low);
}

function factorAt(share: number): number {
  const a = Math.sqrt(3 * share);
  const s = Math.sqrt(1 - share);
  if (a === 0) return NORMAL_FACTOR;
  if (s === 0) return CHANCE * a;
  const held = (k: number): number => (s / a) * (integral((k + a) / s) - integral((k - a) / s)) - 1;
  const density = (k: number): number => (cdf((k + a) / s, 0, 1) - cdf((k - a) / s, 0, 1)) / a;
  // From below the chance bends downwards, so that no step of Newton's goes too far.
  let k = 1.5;
  for (let step = 1; Math.abs(step) > SETTLED; k += step) step = (CHANCE - held(k)) / density(k);
  return k;
}

/** Integral of the normal distribution function. */
function integral(t: number): number {
  return t * cdf(t, 0, 1) + Math.exp((-t * t) / 2) / Math.sqrt(2 * Math.PI);
}

/** The share of the variance that the largest rectangular error of a figure has. */
export function rectangularShare({ at, by }: Parts, sources: Sources): number {
  let sum = 0;
  let largest = 0;
  for (let i = 0; i < at.length; i++) {
    const square = (by[i] as number) ** 2;
    sum += square;
    if (square > largest && sources.list[at[i] as number]?.rectangular) largest = square;
  }
  return sum > 0 ? largest / sum : 0;
}
