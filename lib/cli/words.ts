/** A number with its noun, such as `1 row` and `2 rows`. */
export function count(number: number, noun: string): string {
  return `${number} ${noun}${number === 1 ? '' : 's'}`;
}
