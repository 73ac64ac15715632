/** Sum of a list, in its order; 0 of an empty one. */
export function sum(list: readonly number[]): number {
  return list.reduce((total, each) => total + each, 0);
}

/** Mean of a list; NaN of an empty one, so ask for its length first. */
export function mean(list: readonly number[]): number {
  return sum(list) / list.length;
}
