import * as L from '../../generated/lines';
import type { Machine } from '../../machine/model';
import { NORMAL_FACTOR } from '../../quantity/coverage';
import { combineParts, standardUncertainty } from '../../quantity/quantity';
import type { Line, Rotation } from './line';

/** Steps of a spectrum that must lie between two lines before they can be seen apart: a windowed line is about that wide (common practice). */
export const STEPS_APART = 2;
/** Steps that must lie between the supply line and its pole-pass sidebands, since the one is hundreds of times the other (common practice: 5 to 10). */
export const SIDEBAND_STEPS = 5;
/** Two lines whose multiples agree to this much move together: no speed parts them. */
const SAME_MULTIPLE = 1e-9;
/** Speeds asked for lie between this load and nearly none. */
const HIGHEST_LOAD = 1.25;
const LOWEST_LOAD = 0.02;

/** A speed, and the load that belongs to it, at which two lines can be told apart. */
export interface PartingPoint {
  readonly speedRpm: number;
  readonly loadFraction: number;
}

/** Two lines of one spectrum that cannot be told apart as things stand. */
export interface Coincidence {
  readonly first: Line;
  readonly second: Line;
  /** Distance, Hz, never negative, and its standard uncertainty. */
  readonly apartHz: number;
  readonly u: number;
  /** Distance that would be needed at this resolution, Hz. */
  readonly neededHz: number;
  /** A resolution that would part them at this speed, Hz; absent where the doubt about speed or dimensions is the hindrance. */
  readonly resolutionHz?: number | undefined;
  /** True when both follow supply and shaft alike, so that no speed parts them. */
  readonly together: boolean;
  /** The nearest speed that would part them at this resolution; absent where the motor's range holds none. */
  readonly partedAt?: PartingPoint | undefined;
}

/** Distance of two lines with the doubt of the difference: what both share, such as the speed, cancels. */
export function distance(first: Line, second: Line): { value: number; u: number } {
  const parts = combineParts([
    [1, second.frequency.parts],
    [-1, first.frequency.parts],
  ]);
  return { value: second.frequency.value - first.frequency.value, u: standardUncertainty({ parts }) };
}

/** Compares two lines at a resolution in Hz; undefined when they can be told apart. */
export function coincidence(
  pair: readonly [Line, Line],
  given: { readonly machine: Machine; readonly rotation: Rotation; readonly resolutionHz: number },
): Coincidence | undefined {
  const [first, second] = pair;
  const { value, u } = distance(first, second);
  const neededHz = STEPS_APART * given.resolutionHz + NORMAL_FACTOR * u;
  const apartHz = Math.abs(value);
  if (apartHz >= neededHz) return undefined;
  const clear = apartHz - NORMAL_FACTOR * u;
  const together = movesTogether(first, second);
  return {
    first,
    second,
    apartHz,
    u,
    neededHz,
    resolutionHz: clear > 0 && !isSame(apartHz, given.rotation) ? L.resolution_needed.f(clear, STEPS_APART) : undefined,
    together,
    partedAt: together ? undefined : partingPoint(first, second, given, neededHz),
  };
}

function isSame(apartHz: number, rotation: Rotation): boolean {
  return apartHz < SAME_MULTIPLE * rotation.supply.value;
}

function movesTogether(first: Line, second: Line): boolean {
  return (
    Math.abs(first.supplyMultiple.value - second.supplyMultiple.value) < SAME_MULTIPLE &&
    Math.abs(first.shaftMultiple.value - second.shaftMultiple.value) < SAME_MULTIPLE
  );
}

/**
 * The speed nearest to the present one at which two lines lie `neededHz` apart: their distance is a straight line over the shaft
 * frequency, so there are two candidates. Undefined when neither lies between 2 and 125 % load, or when the speed changes nothing.
 */
export function partingPoint(
  first: Line,
  second: Line,
  { machine, rotation }: { readonly machine: Machine; readonly rotation: Rotation },
  neededHz: number,
): PartingPoint | undefined {
  const slope = second.shaftMultiple.value - first.shaftMultiple.value;
  if (Math.abs(slope) < SAME_MULTIPLE) return undefined;
  const offset = (second.supplyMultiple.value - first.supplyMultiple.value) * rotation.supply.value;
  const synchronousRpm = (120 * rotation.supply.value) / rotation.poles;
  const slip = machine.plate.ratedSlip.value;
  const candidates = [neededHz, -neededHz]
    .map((apart) => (60 * (apart - offset)) / slope)
    .map((speedRpm) => ({ speedRpm, loadFraction: L.load_from_speed.f(synchronousRpm, speedRpm, slip) }))
    .filter(({ loadFraction }) => loadFraction >= LOWEST_LOAD && loadFraction <= HIGHEST_LOAD);
  const here = 60 * rotation.shaft.value;
  return candidates.sort((a, b) => Math.abs(a.speedRpm - here) - Math.abs(b.speedRpm - here))[0];
}

/** Every pair of lines of one spectrum that speak for different causes and cannot be told apart, nearest pairs first. */
export function coincidences(
  lines: readonly Line[],
  given: { readonly machine: Machine; readonly rotation: Rotation; readonly resolutionHz: number },
): readonly Coincidence[] {
  const found: Coincidence[] = [];
  lines.forEach((first, index) => {
    for (const second of lines.slice(index + 1)) {
      if (first.spectrum !== second.spectrum || first.cause === second.cause) continue;
      const pair = coincidence([first, second], given);
      if (pair) found.push(pair);
    }
  });
  return found.sort((a, b) => a.apartHz - b.apartHz);
}

/** Expected lines at which an observed one may lie: within one step of the spectrum and the 95 % doubt of the line's place. */
export function candidatesFor(observedHz: number, lines: readonly Line[], resolutionHz: number): readonly Line[] {
  const off = (line: Line) => Math.abs(line.frequency.value - observedHz);
  return lines
    .filter((line) => off(line) <= resolutionHz + NORMAL_FACTOR * standardUncertainty(line.frequency))
    .sort((a, b) => off(a) - off(b));
}
