/**
 * Ratings that differ by less than this share are one rating, stamped in horsepower here and in kilowatts there: of the pairs that stand for
 * one another the furthest apart differ by 1.7 % (15 hp and 11 kW, 150 hp and 110 kW), and neighbours on one ladder by 7 % or more.
 */
export const SAME_RATING = 0.02;

/** Whether two ratings are one, as {@link SAME_RATING} has it. Units: both in the same unit, above 0. */
export function isSameRating(a: number, b: number): boolean {
  return Math.abs(a / b - 1) < SAME_RATING;
}
