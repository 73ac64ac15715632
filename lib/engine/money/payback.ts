/** When flows have paid back the first one, and how fast the sum still rises there. */
interface PaybackTime {
  /** Years from the start, interpolated straight within the year. */
  readonly years: number;
  /** Rise of the sum in the year of payback, in currency a year; zero where nothing had to be paid back. */
  readonly slope: number;
}

/**
 * Time at which the discounted sum of flows first reaches zero; `undefined` when it never does.
 * With a rate of zero this is the simple payback of uneven flows.
 *
 * Units: flows in currency, index 0 at the start, then at each year's end; rate a fraction a year; result in years.
 * Valid for: rates above −1. Flows count as spread evenly over their year.
 * Source: W. R. Murphy and G. McKay, Energy Management, example 3.8 (straight interpolation within the year); ASTM E917.
 */
export function paybackTime(flows: readonly number[], rate: number): PaybackTime | undefined {
  let sum = flows[0] ?? 0;
  if (sum >= 0) return { years: 0, slope: 0 };
  let factor = 1;
  for (let year = 1; year < flows.length; year++) {
    factor /= 1 + rate;
    const flow = (flows[year] ?? 0) * factor;
    if (sum + flow >= 0) return { years: year - 1 - sum / flow, slope: flow };
    sum += flow;
  }
  return undefined;
}
