import { type Quantity, standardUncertainty } from './quantity/quantity';
import type { Figure } from './result';

/**
 * A quantity as a figure of the results; amounts and amounts a year both take the currency's code, as the results file has it.
 * Values are rounded to 10 significant digits, far below any doubt.
 */
export function figure(quantity: Quantity, currency: string): Figure {
  return {
    value: tidy(quantity.value),
    u: tidy(standardUncertainty(quantity)),
    unit: quantity.unit === 'currency/a' ? currency : quantity.unit.replace('currency', currency),
  };
}

/** Powers of ten are exact up to 10^22. */
const POWERS = Float64Array.from({ length: 23 }, (_, exponent) => 10 ** exponent);

/** Ten significant digits: keeps files short and free of noise in the last bits. */
export function tidy(value: number): number {
  if (value === 0) return 0;
  const decimals = 9 - Math.floor(Math.log10(Math.abs(value)));
  const power = POWERS[decimals];
  // Beyond the exact powers the slow way serves.
  if (power === undefined) return Number(value.toPrecision(10));
  return Math.round(value * power) / power;
}
