/** So many numbers at a time: four pages of memory for some thirty arrays, and little to hold on to where one of them is kept for long. */
const CHUNK = 2048;

let chunk = new Float64Array(0);
let used = 0;

/**
 * An array of zeros cut from a larger one. A motor asks for some sixty short-lived arrays of a dozen numbers to two hundred; asking the system for
 * memory of its own for each takes longer than working out what goes into it. What is kept holds on to the whole of the larger one: fits that are
 * kept are copied for that reason, while a machine on offer that is kept is not.
 */
export function doubles(count: number): Float64Array {
  if (used + count > chunk.length) {
    chunk = new Float64Array(Math.max(CHUNK, count));
    used = 0;
  }
  used += count;
  return chunk.subarray(used - count, used);
}

/** A short-lived copy of `count` numbers, see {@link doubles}. */
export function copied(from: ArrayLike<number>, start = 0, count = from.length): Float64Array {
  const copy = doubles(count);
  for (let i = 0; i < count; i++) copy[i] = from[start + i] as number;
  return copy;
}
