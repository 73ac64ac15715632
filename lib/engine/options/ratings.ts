import { KILOWATTS_PER_HORSEPOWER } from '../formula/constants';
import { SAME_RATING } from '../same-rating';
import type { ReferenceTables } from '../tables';

const ladders = new WeakMap<ReferenceTables, { readonly hp: readonly number[]; readonly kw: readonly number[] }>();

/**
 * Standard ratings in kW, ascending: horsepower steps in studies by US standards and where the rating lies nearer to a horsepower step, else
 * kilowatt steps. Horsepower steps are converted by the fleet sheet's factor, and the rating alone decides, so that a sheet in kW and one in
 * hp give the same options.
 */
export function standardRatings(tables: ReferenceTables, standards: 'nema' | 'iec', ratedPowerKw: number): readonly number[] {
  let both = ladders.get(tables);
  if (!both) {
    const sorted = (list: number[]) => list.sort((a, b) => a - b);
    both = {
      hp: sorted(tables.horsepowerSteps.rows.map((row) => row.ratedPowerHp * KILOWATTS_PER_HORSEPOWER)),
      kw: sorted(tables.kilowattSteps.rows.map((row) => row.ratedPowerKw)),
    };
    ladders.set(tables, both);
  }
  return standards === 'nema' || distance(both.hp, ratedPowerKw) < distance(both.kw, ratedPowerKw) ? both.hp : both.kw;
}

/** Distance of a rating to the nearest step, as the size of the logarithm of their ratio. */
function distance(ladder: readonly number[], ratedPowerKw: number): number {
  return Math.min(...ladder.map((step) => Math.abs(Math.log(ratedPowerKw / step))));
}

/**
 * Ratings to weigh in place of the present one: below the load limit the two smallest standard ratings that carry the highest load with
 * the spare capacity; above rated load the next one up that does. Else none.
 *
 * Units: kW, fractions. Source: policy of the study; common practice for spare capacity.
 */
export function otherRatings(given: {
  readonly ladder: readonly number[];
  readonly ratedPowerKw: number;
  readonly loadFraction: number;
  readonly highestLoadKw: number;
  readonly resizeBelow: number;
  readonly spareCapacityPct: number;
}): readonly number[] {
  const needed = given.highestLoadKw * (1 + given.spareCapacityPct / 100);
  if (given.loadFraction > 1) {
    const up = given.ladder.find((rating) => rating > given.ratedPowerKw * (1 + SAME_RATING) && rating >= needed);
    return up === undefined ? [] : [up];
  }
  if (given.loadFraction >= given.resizeBelow) return [];
  return given.ladder
    .filter((rating) => rating < given.ratedPowerKw * (1 - SAME_RATING) && rating >= needed && rating > 0)
    .slice(0, 2);
}

/** A rating in kW as ids and labels show it: three significant digits, which keep neighbours of every ladder apart. */
export function shortRating(ratedPowerKw: number): number {
  return Number(ratedPowerKw.toPrecision(3));
}
