/** So many numbers at a time: a page of memory or two for some thirty arrays, and little to hold on to where one of them is kept for long. */
const CHUNK = 4096;

let chunk = new Float64Array(0);
let used = 0;

/**
 * An array of zeros cut from a larger one. A fleet asks for tens of thousands of short-lived arrays of a hundred numbers or two; asking the
 * system for memory of its own for each takes longer than working out what goes into it.
 */
export function doubles(count: number): Float64Array {
  if (used + count > chunk.length) {
    chunk = new Float64Array(Math.max(CHUNK, count));
    used = 0;
  }
  used += count;
  return chunk.subarray(used - count, used);
}
