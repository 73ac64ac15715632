/** Where a figure is just reached: at a value, everywhere in the range, nowhere in it, or not to be said. */
export type BreakEven =
  | { readonly kind: 'at'; readonly value: number; readonly rising: boolean }
  | { readonly kind: 'always' }
  | { readonly kind: 'never' }
  /** The figure could not be worked out at an end of the range. */
  | { readonly kind: 'unknown' };

/** Share of the range, and of the larger margin at its ends, to which the value is found. */
const TOLERANCE = 1e-11;

/**
 * The value at which a margin turns from negative to positive (`rising`) or back: by false position with halving, which ends after a
 * step or two where the margin is a straight line, as it is in prices and costs.
 *
 * Units: those of the input. Valid for: a margin that crosses zero at most once between the ends; it may be absent inside the range.
 * Source: false position with the Illinois step (G. Dahlquist and Å. Björck, Numerical Methods, from memory).
 */
export function breakEven(margin: (at: number) => number | undefined, low: number, high: number): BreakEven {
  let [a, b] = [low, high];
  const atLow = margin(low);
  const atHigh = margin(high);
  if (atLow === undefined || atHigh === undefined) return { kind: 'unknown' };
  if (atLow >= 0 && atHigh >= 0) return { kind: 'always' };
  if (atLow < 0 && atHigh < 0) return { kind: 'never' };
  const rising = atHigh > atLow;
  let [fa, fb] = [atLow, atHigh];
  const width = TOLERANCE * Math.abs(high - low);
  const least = TOLERANCE * Math.max(Math.abs(atLow), Math.abs(atHigh));
  for (let step = 0; step < 100 && Math.abs(b - a) > width; step++) {
    const next = step % 3 === 2 ? (a + b) / 2 : (a * fb - b * fa) / (fb - fa);
    const found = margin(next);
    if (found === undefined) return { kind: 'unknown' };
    if (Math.abs(found) <= least) return { kind: 'at', value: next, rising };
    if (Math.sign(found) === Math.sign(fb)) {
      [b, fb] = [next, found];
      fa /= 2;
    } else {
      [a, fa] = [next, found];
      fb /= 2;
    }
  }
  return { kind: 'at', value: (a + b) / 2, rising };
}
