/**
 * Money at the edge of the database: whole numbers of minor units (cents) as bigint. Rounding happens here and nowhere else.
 */

/** Digits after the decimal sign of a currency (ISO 4217, from the run time's own table): 2 for USD, 0 for JPY. */
export function minorDigits(currency: string): number {
  const known = digits.get(currency);
  if (known !== undefined) return known;
  const found = lookUpDigits(currency);
  digits.set(currency, found);
  return found;
}

/** The run time takes microseconds to look a currency up, and an import asks for every amount of every motor. */
const digits = new Map<string, number>();

function lookUpDigits(currency: string): number {
  try {
    return new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2;
  } catch {
    return 2;
  }
}

/**
 * An amount in minor units, rounded to the nearest, halves away from zero. Works on the shortest decimal form of the number, so
 * that 1.005 becomes 101 and not 100.
 * @throws RangeError when the amount is not finite, or beyond 9e15 minor units.
 */
export function toMinor(amount: number, currency: string): bigint {
  if (!Number.isFinite(amount)) throw new RangeError('An amount of money must be a finite number.');
  const shifted = Number(
    `${Math.abs(amount)}e${minorDigits(currency)}`.replace(
      /e(.+)e(.+)$/,
      (_, a: string, b: string) => `e${Number(a) + Number(b)}`,
    ),
  );
  const rounded = Math.round(shifted);
  if (!Number.isSafeInteger(rounded)) throw new RangeError('An amount of money is too large to be kept exactly.');
  const whole = BigInt(rounded);
  return amount < 0 ? -whole : whole;
}

/** The amount of whole minor units. */
export function fromMinor(minor: bigint, currency: string): number {
  return Number(`${minor.toString()}e-${minorDigits(currency)}`);
}
