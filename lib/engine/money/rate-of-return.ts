import { netPresentValue } from './present-value';

/** The rate of return of a series of flows, or why there is none. */
export type RateOfReturn =
  | { readonly kind: 'one'; readonly rate: number }
  | { readonly kind: 'none' }
  /** The flow takes in first and pays out later: the rate is what that costs, and worth comes from a high one, not a low one. */
  | { readonly kind: 'loan'; readonly rate: number }
  | { readonly kind: 'several'; readonly rates: readonly number[] };

/** Rates that are looked through: from almost total loss to a hundredfold a year. */
const LOWEST = -0.99;
const HIGHEST = 100;

/**
 * Internal rate of return: the rate at which the present value of the flows is zero.
 *
 * Flows that change sign once have exactly one rate (rule of signs), found by bisection with Newton steps. Flows that change sign more
 * often are looked through from −99 % to 10,000 % a year on a grid, and each root found is reported; the positive one stands alone where
 * the running sum of the flows changes sign once, since then no other positive rate can exist. Where the present value rises with the rate,
 * the flow is that of a loan: compared with a discount rate its rate would say the opposite of the present value, so it is told apart.
 *
 * Units: flows in currency, index 0 at the start, then at each year's end; rate a fraction a year.
 * Valid for: any flows; `none` when they never change sign or their rate lies outside the range.
 * Source: W. R. Murphy and G. McKay, Energy Management, example 3.11; rule of signs of Descartes;
 * C. J. Norstrom, 1972 (from memory), for the running sum; D. Teichroew, A. A. Robichek and M. Montalbano, 1965 (from memory), for investment
 * and loan.
 */
export function rateOfReturn(flows: readonly number[]): RateOfReturn {
  const changes = signChanges(flows);
  if (changes === 0) return { kind: 'none' };
  const rates = changes === 1 ? rootsBetween(flows, [LOWEST, HIGHEST]) : rootsBetween(flows, grid());
  const [first] = rates;
  if (first === undefined) return { kind: 'none' };
  if (rates.length === 1) return told(flows, first);
  const positive = rates.filter((rate) => rate > 0);
  const [only] = positive;
  if (only !== undefined && positive.length === 1 && signChanges(runningSum(flows)) === 1) return told(flows, only);
  return { kind: 'several', rates };
}

function told(flows: readonly number[], rate: number): RateOfReturn {
  return { kind: valueAndSlope(flows, rate).slope > 0 ? 'loan' : 'one', rate };
}

function runningSum(flows: readonly number[]): number[] {
  let sum = 0;
  return flows.map((flow) => {
    sum += flow;
    return sum;
  });
}

function signChanges(flows: readonly number[]): number {
  let changes = 0;
  let last = 0;
  for (const flow of flows) {
    const sign = Math.sign(flow);
    if (sign === 0) continue;
    if (last !== 0 && sign !== last) changes += 1;
    last = sign;
  }
  return changes;
}

let points: readonly number[] | undefined;

/** Steps of 1.5 % in the discount factor: about 400 rates, dense where rates of return usually lie. */
function grid(): readonly number[] {
  if (points) return points;
  const list: number[] = [];
  for (let growth = 1 + LOWEST; growth < 1 + HIGHEST; growth *= 1.015) list.push(growth - 1);
  points = list;
  return list;
}

function rootsBetween(flows: readonly number[], rates: readonly number[]): number[] {
  const roots: number[] = [];
  let low = rates[0] ?? LOWEST;
  let valueLow = netPresentValue(flows, low);
  for (const high of rates.slice(1)) {
    const valueHigh = netPresentValue(flows, high);
    if (valueLow === 0) roots.push(low);
    else if (valueLow * valueHigh < 0) roots.push(root(flows, { low, high, valueLow }));
    low = high;
    valueLow = valueHigh;
  }
  return roots;
}

function root(flows: readonly number[], bracket: { low: number; high: number; valueLow: number }): number {
  let { low, high } = bracket;
  let rate = low < 0.1 && high > 0.1 ? 0.1 : (low + high) / 2;
  for (let step = 0; step < 200 && high - low > 1e-13 * (1 + Math.abs(rate)); step++) {
    const { value, slope } = valueAndSlope(flows, rate);
    if (value === 0) return rate;
    if (value > 0 === bracket.valueLow > 0) low = rate;
    else high = rate;
    const newton = rate - value / slope;
    const inside = newton > low && newton < high;
    if (inside && Math.abs(newton - rate) < 1e-14 * (1 + Math.abs(rate))) return newton;
    // A Newton step that leaves the bracket, or every eighth step, halves the bracket in terms of growth instead.
    rate = inside && step % 8 !== 7 ? newton : Math.sqrt((1 + low) * (1 + high)) - 1;
  }
  return rate;
}

function valueAndSlope(flows: readonly number[], rate: number): { value: number; slope: number } {
  const growth = 1 + rate;
  let value = 0;
  let slope = 0;
  for (let year = flows.length - 1; year >= 0; year--) {
    slope = (slope - value / growth) / growth;
    value = value / growth + (flows[year] ?? 0);
  }
  return { value, slope };
}
