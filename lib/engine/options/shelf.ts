import * as $ from '../generated/money';

/** Motors that one kind of spare would serve: same rating, poles, frame and enclosure. */
export interface Shelf {
  /** For each motor what a new one at its failure, in place of what the policy does, is worth over the horizon; in currency. */
  readonly valuesAtFailure: readonly number[];
  /** Price of the new motor, without installing it; in currency. */
  readonly purchase: number;
  readonly failureRatePerYear: number;
  readonly discountRate: number;
  readonly horizonYears: number;
  /** From the order to the delivery of the next one, in years. */
  readonly restockYears: number;
  /** Room, care and insurance of a motor kept, as a share of its price a year. */
  readonly keepingPerYear: number;
}

/** What a number of spares on the shelf comes to. */
export interface ShelfWorth {
  readonly spares: number;
  /** Failures a year that may call for one: those of motors for which a new one at failure is worth something. */
  readonly callsPerYear: number;
  /** Chance that a failure finds the shelf empty. */
  readonly empty: number;
  /** Value of the replacements that the shelf makes possible, what the stock costs over the horizon, and what is left. */
  readonly gained: number;
  readonly cost: number;
  readonly value: number;
}

/**
 * Worth of keeping new motors on the shelf, where without one a failed motor is repaired because a new one would come too late.
 *
 * Each spare that is used is ordered again at once and paid for as the replacement at failure, so that the stock itself costs the interest
 * on its price, and its keeping. A failure that finds the shelf empty is repaired: Erlang's loss formula for calls at random.
 *
 * Units: currency, years. Valid for: spares that keep their value until the horizon (turned and dry, common practice); failures at a
 * constant rate. `undefined` where a price, a rate or the time to restock is not a number of at least 0. The stop that is shortened is not in it.
 * Source: A. K. Erlang, 1917 (loss formula, from memory); present values as in NIST Handbook 135; own derivation.
 */
export function shelfWorth(shelf: Shelf, spares: number): ShelfWorth | undefined {
  const { purchase, failureRatePerYear: rate, discountRate, horizonYears, restockYears, keepingPerYear } = shelf;
  if (![purchase, rate, discountRate, horizonYears, restockYears, keepingPerYear].every((value) => value >= 0)) return undefined;
  if (!Number.isInteger(spares) || spares < 0) return undefined;
  const worthIt = shelf.valuesAtFailure.filter((value) => value > 0);
  const callsPerYear = rate * worthIt.length;
  const empty = lost(callsPerYear * restockYears, spares);
  let gained = 0;
  for (const value of worthIt) gained += value;
  gained *= 1 - empty;
  const years = discountedYears(discountRate, horizonYears);
  const tiedUp = 1 - $.single_present_value.f(discountRate, horizonYears);
  const cost = spares * purchase * (tiedUp + keepingPerYear * years);
  return { spares, callsPerYear, empty, gained, cost, value: gained - cost };
}

/**
 * The number of spares that is worth most, none among them; of equals the fewer. `undefined` as in {@link shelfWorth}.
 * The chance of an empty shelf falls by less with each further spare, so the first that gains nothing ends the search.
 */
export function bestShelf(shelf: Shelf): ShelfWorth | undefined {
  let best = shelfWorth(shelf, 0);
  for (let spares = 1; best && spares <= shelf.valuesAtFailure.length; spares++) {
    const next = shelfWorth(shelf, spares);
    if (!next || next.value <= best.value) break;
    best = next;
  }
  return best;
}

/** Share of calls that find all of `servers` out, at `offered` calls in the time that one is out; by the usual recursion. */
function lost(offered: number, servers: number): number {
  let share = 1;
  for (let n = 1; n <= servers; n++) share = (offered * share) / (n + offered * share);
  return share;
}

/** Present value of one unit at the end of each year of the horizon; at no rate it is the horizon itself. */
export function discountedYears(discountRate: number, horizonYears: number): number {
  return discountRate > 0 ? $.uniform_present_value.f(discountRate, horizonYears) : horizonYears;
}
