import { type Limits, NORMAL_FACTOR } from './quantity/coverage';
import { type Quantity, standardUncertainty } from './quantity/quantity';
import type { Figure } from './result';

/**
 * A quantity as a figure of the results; amounts and amounts a year both take the currency's code, as the results file has it.
 * Values are rounded to 10 significant digits, far below any doubt. `limits` are 95 % limits in the unit of the quantity.
 */
export function figure(
  quantity: Quantity,
  currency: string,
  limits?: Limits | undefined,
  u = standardUncertainty(quantity),
): Figure {
  const half = NORMAL_FACTOR * u;
  const slight = limits ? SLIGHT * (limits.high - limits.low) : 0;
  const told =
    limits !== undefined &&
    (Math.abs(limits.low - quantity.value + half) > slight || Math.abs(limits.high - quantity.value - half) > slight);
  // Limits that go without saying stay undefined, which no file shows: one form for all figures is made and written faster than two.
  return {
    value: tidy(quantity.value),
    u: tidy(u),
    unit: quantity.unit === 'currency/a' ? currency : quantity.unit.replace('currency', currency),
    low: told ? tidy(limits.low) : undefined,
    high: told ? tidy(limits.high) : undefined,
  };
}

/** Limits that differ from value ± 1.96 u by less than this share of their width go without saying. */
const SLIGHT = 0.02;

/** Powers of ten are exact up to 10^22. */
const POWERS = Float64Array.from({ length: 23 }, (_, exponent) => 10 ** exponent);

/** Ten significant digits: keeps files short and free of noise in the last bits. */
export function tidy(value: number): number {
  return toDigits(value, 10);
}

/** Four significant digits, for what goes into a doubt alone. */
export function briefly(value: number): number {
  return toDigits(value, 4);
}

function toDigits(value: number, digits: number): number {
  if (value === 0) return 0;
  const decimals = digits - 1 - Math.floor(Math.log10(Math.abs(value)));
  const power = POWERS[decimals];
  // Beyond the exact powers the slow way serves.
  if (power === undefined) return Number(value.toPrecision(digits));
  return Math.round(value * power) / power;
}
