/**
 * Money as whole minor units (hundredths of the study's currency). Amounts are rounded here and nowhere else; rates and prices stay
 * plain numbers, and present values are rounded only on the way out.
 */

declare const MINOR: unique symbol;

/** A whole number of hundredths of the study's currency. Made by {@link toMoney} alone. */
export type Money = number & { readonly [MINOR]: true };

/** Largest amount of currency that is kept exactly in minor units. */
const LARGEST = Number.MAX_SAFE_INTEGER / 100;

/** Whether an amount of currency can be kept exactly: finite and below about 9e13. */
export function fitsMoney(amount: number): boolean {
  return Math.abs(amount) < LARGEST;
}

/**
 * An amount of currency in minor units, to the nearest, halves away from zero (1.005 becomes 101, as a person would round it).
 * @throws RangeError when {@link fitsMoney} says no: ask it first where an amount comes from outside.
 */
export function toMoney(amount: number): Money {
  if (!fitsMoney(amount)) throw new RangeError(`an amount of money must be finite and below ${LARGEST}`);
  // Decimal halves have no exact binary form, and a few sums and products leave them a little low: they round as written.
  const hundredths = Math.abs(amount) * 100;
  const size = Math.round(hundredths + Math.min(8 * Number.EPSILON * hundredths, 1e-6));
  return (amount < 0 && size > 0 ? -size : size) as Money;
}

/** The amount in currency, with at most two decimals. */
export function fromMoney(money: Money): number {
  return money / 100;
}

/** Sum of amounts; exact, since minor units are whole. */
export function sumMoney(amounts: Iterable<Money>): Money {
  let sum = 0;
  for (const amount of amounts) sum += amount;
  return sum as Money;
}

/** An amount of currency rounded to two decimals: the way of every cost and cash flow into the results. */
export function rounded(amount: number): number {
  return fromMoney(toMoney(amount));
}
