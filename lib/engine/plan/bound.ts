import { bestOf, type Choice, onceIn } from './candidate';
import { primal, type Solve, term } from './solver';

/** An upper bound on what any choice is worth, with the price of each resource that proves it. */
export interface Bound {
  readonly value: number;
  /** Worth of one more unit of each resource. */
  readonly prices: readonly number[];
  readonly iterations: number;
}

const ITERATIONS = 200;

/** The bound is near enough once cutting planes leave less than this share of it open. */
const CLOSE = 1e-6;

/**
 * The least upper bound that prices of the resources can prove: by Lagrange duality that of the relaxation in which parts of a motor may be
 * chosen.
 *
 * At given prices each group decides alone, so that the bound is a sum; it is convex in the prices and is minimised by cutting planes.
 * Source: Martello and Toth, Knapsack Problems; J. E. Kelley 1960 for the cutting planes (both from memory).
 * Returns `undefined` when something that must be done has no way to be done, and when called off.
 */
export function boundOf(
  { groups, resources }: Choice,
  solve: Solve,
  watch: { readonly cancelled?: () => boolean; readonly progress?: (stage: 'bound', done: number, of: number) => void } = {},
): Bound | undefined {
  const at = (prices: readonly number[]): { value: number; slope: number[] } => {
    let value = 0;
    const slope = resources.map(({ limit }, r) => {
      value += limit * (prices[r] ?? 0);
      return limit;
    });
    for (const group of groups) {
      const best = bestOf(group, prices);
      value += best.worth;
      for (const { uses } of best.columns)
        for (const { resource, amount } of uses) slope[resource] = (slope[resource] ?? 0) - amount;
      for (const { resource, amount } of onceIn(group, best.columns[0]?.year ?? -1))
        slope[resource] = (slope[resource] ?? 0) - amount;
    }
    return { value, slope };
  };
  const most = highestPrices({ groups, resources });
  let prices: readonly number[] = resources.map(() => 0);
  let best: { value: number; prices: readonly number[] } | undefined;
  const cuts: string[] = [];
  for (let iteration = 1; iteration <= ITERATIONS; iteration++) {
    if (watch.cancelled?.()) return undefined;
    watch.progress?.('bound', iteration - 1, ITERATIONS);
    const here = at(prices);
    if (!Number.isFinite(here.value)) return undefined;
    if (!best || here.value < best.value) best = { value: here.value, prices };
    if (resources.length === 0) return { ...best, iterations: iteration };
    // The bound is nowhere below its tangent: theta ≥ value + slope · (p − prices).
    const level = here.slope.reduce((sum, slope, r) => sum - slope * (prices[r] ?? 0), here.value);
    cuts.push(` c${iteration}: + theta ${here.slope.map((slope, r) => term(-slope, `p${r}`)).join(' ')} >= ${level}`);
    const bounds = most.map((limit, r) => ` 0 <= p${r} <= ${limit}`).join('\n');
    const found = solve(`Minimize\n obj: theta\nSubject To\n${cuts.join('\n')}\nBounds\n theta free\n${bounds}\nEnd\n`);
    if (found.status !== 'optimal') break;
    if (best.value - found.objective <= CLOSE * Math.max(1, Math.abs(best.value))) return { ...best, iterations: iteration };
    prices = resources.map((_, r) => primal(found, `p${r}`));
  }
  return best && { ...best, iterations: ITERATIONS };
}

/** No unit of a resource can be worth more than the most that one unit of it brings anywhere; where something must be done, the whole. */
function highestPrices({ groups, resources }: Choice): number[] {
  const most = resources.map(() => 0);
  let whole = 1;
  for (const { members } of groups)
    for (const { columns } of members)
      for (const { value, uses } of columns) {
        whole += Math.abs(value);
        for (const { resource, amount } of uses)
          if (amount > 0) most[resource] = Math.max(most[resource] ?? 0, Math.abs(value) / amount);
      }
  const forced = groups.some(({ must, members }) => must || members.length > 1);
  return most.map((each) => (forced ? Math.max(10 * each, whole) : each + 1e-9));
}
