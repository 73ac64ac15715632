import type { MotorScope } from '../context';
import { mean } from '../numbers';
import type { LossShareRow, ReferenceTables } from '../tables';

type Component = LossShareRow['component'];
/** A share of the total loss at rated load, and its standard uncertainty as a fraction of it. */
interface Share {
  readonly value: number;
  readonly relative: number;
}
interface Stated extends Share {
  /** Ends of the range published for motors of any rating, fractions. */
  readonly range: readonly [least: number, most: number];
}

const known = new WeakMap<ReferenceTables['lossShares'], Map<Component, Stated>>();

/** Ratings between which friction and windage rises, kW. */
const SMALL_KW = 1;
const LARGE_KW = 1000;
/** The rating at which the middle of the range is taken to hold, 75 kW as one text has it, as a part of the way between the two. */
const MIDDLE_ALONG = Math.log(75 / SMALL_KW) / Math.log(LARGE_KW / SMALL_KW);

/**
 * Typical share of one loss in the total at rated load: the geometric mean of the texts that were read (the middle, where one gives a range).
 *
 * Its doubt is how far all texts lie apart, remembered ones too, as the standard deviation of their logarithms, and a third of the width of the general range at
 * least: stray-load loss is 10 to 20 % by one of them and 27 % of a motor of 100 hp by another.
 * Units: fractions. Valid for: cage motors at rated load. Source: table of loss shares; the rule for the doubt is common practice.
 */
export function lossShare(scope: MotorScope, component: Component): Share {
  return stated(scope, component);
}

/**
 * Typical share of friction and windage by rating in kW, at 4 poles: evenly on logarithmic scales, by half of what the published range would rise if its ends were those of
 * 1 and 1,000 kW.
 *
 * The fans of large motors take a greater part of a smaller loss: 7, 8 and 14 % at 25, 50 and 100 hp by one table, 9.3 and 10 % at 18.5 and 75 kW by two other texts. The
 * general range names no ratings, so that half of it may as well lie between motors of one rating (common practice).
 */
export function frictionShare(scope: MotorScope, ratedPowerKw: number): Share {
  const { range, relative } = stated(scope, 'friction-windage');
  const along = Math.log(ratedPowerKw / SMALL_KW) / Math.log(LARGE_KW / SMALL_KW);
  const spread = Math.sqrt(range[1] / range[0]);
  const middle = (range[0] + range[1]) / 2;
  return { value: middle * spread ** (Math.min(1, Math.max(0, along)) - MIDDLE_ALONG), relative };
}

function stated({ tables: { lossShares: table } }: MotorScope, component: Component): Stated {
  let all = known.get(table);
  if (!all) {
    all = new Map();
    known.set(table, all);
  }
  const kept = all.get(component);
  if (kept) return kept;
  const rows = table.rows.filter((row) => row.component === component);
  const general = rows.find(
    ({ ratedPowerKw, minPct, maxPct }) => ratedPowerKw === undefined && minPct !== undefined && maxPct !== undefined,
  );
  if (general?.minPct === undefined || general.maxPct === undefined)
    throw new Error(`the table of loss shares has no general range for ${component}`);
  const range = [general.minPct / 100, general.maxPct / 100] as const;
  const shares = rows.flatMap(({ typicalPct, minPct, maxPct, status }) => {
    const pct = typicalPct ?? (minPct === undefined || maxPct === undefined ? undefined : (minPct + maxPct) / 2);
    return pct === undefined ? [] : [{ logarithm: Math.log(pct / 100), read: status === 'read' }];
  });
  const logarithms = shares.map(({ logarithm }) => logarithm);
  const middle = mean(logarithms);
  const scatter = Math.sqrt(logarithms.reduce((sum, each) => sum + (each - middle) ** 2, 0) / Math.max(1, logarithms.length - 1));
  const third = (range[1] - range[0]) / 3 / ((range[0] + range[1]) / 2);
  const typical = mean(shares.filter(({ read }) => read).map(({ logarithm }) => logarithm));
  const result: Stated = { value: Math.exp(typical), relative: Math.max(scatter, third), range };
  all.set(component, result);
  return result;
}
