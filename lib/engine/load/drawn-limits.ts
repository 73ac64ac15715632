import type { Limits } from '../quantity/coverage';
import type { Sources } from '../quantity/quantity';
import { ESTIMATED, type Estimated, type Estimator } from './estimator';

/** Draws of a propagation of distributions, and the seed from which all begin. */
const DRAWS = 10_000;
const SEED = 20_260_101;

/**
 * 95 % limits by propagation of distributions: stamps, meters and typical values are drawn together, rectangular or normal as each is, and
 * the whole estimate is made anew for each draw. Seeded: the same motor has the same limits. `undefined` where hardly any draw
 * describes a possible motor.
 * Source: JCGM 101:2008, 5 and 7 (10,000 draws, probabilistically symmetric limits).
 */
export function drawnLimits(estimator: Estimator, sources: Sources): Readonly<Record<Estimated, Limits>> | undefined {
  const chance = drawing(SEED);
  const values: Readonly<Record<Estimated, number[]>> = { load: [], input: [], loss: [], efficiency: [] };
  const scores = new Float64Array(estimator.sources);
  for (let draw = 0; draw < DRAWS; draw++) {
    for (let i = 0; i < scores.length; i++)
      scores[i] = sources.list[i]?.rectangular ? ROOT3 * (2 * chance() - 1) : normal(chance);
    const unknowns = estimator.search(scores);
    const figures = unknowns && estimator.figures(unknowns, scores);
    if (figures) for (const of of ESTIMATED) values[of].push(figures[of]);
  }
  if (values.load.length < DRAWS / 2) return undefined;
  const limits = (of: Estimated): Limits => {
    const sorted = Float64Array.from(values[of]).sort();
    const at = (p: number): number => sorted[Math.round(p * (sorted.length - 1))] as number;
    return { low: at(0.025), high: at(0.975) };
  };
  return { load: limits('load'), input: limits('input'), loss: limits('loss'), efficiency: limits('efficiency') };
}

const ROOT3 = Math.sqrt(3);

/** Numbers even between 0 and 1, both left out: a Weyl sequence stirred as the last step of MurmurHash3 does (public domain, from memory). */
function drawing(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x9e3779b9) | 0;
    let bits = state ^ (state >>> 16);
    bits = Math.imul(bits, 0x85ebca6b);
    bits ^= bits >>> 13;
    bits = Math.imul(bits, 0xc2b2ae35);
    bits ^= bits >>> 16;
    return ((bits >>> 0) + 0.5) / 4_294_967_296;
  };
}

/** A standard normal number, by Box and Muller's formula (from memory). */
function normal(chance: () => number): number {
  return Math.sqrt(-2 * Math.log(chance())) * Math.cos(2 * Math.PI * chance());
}
