import type { EfficiencyClass } from '../motor';
import type { ReferenceTables } from '../tables';
import { classEfficiency, type RatingQuery } from './class-efficiency';

/** A stamped efficiency that cannot be that of the stated class. */
export interface ClassContradiction {
  /** The class whose table value it is held against: the stated one, or the one above where the stamp is better than even that. */
  readonly against: EfficiencyClass;
  readonly pct: number;
  readonly table: string;
  /** Loss by the stamp over loss by that class, both at rated load. */
  readonly ratio: number;
}

/**
 * Between the nominal efficiency and the least that a maker guarantees there is 20 % of the loss (NEMA MG 1 12.58.2; IEC 60034-1 allows less), so that
 * much may be a least value written for the nominal one.
 */
const LEAST_GUARANTEED = 1.2;

/** Loss below that of the next class by more than a class lies above another (common practice: about a fifth). */
const A_CLASS_BETTER = 0.8;

const ABOVE: Partial<Readonly<Record<EfficiencyClass, EfficiencyClass>>> = {
  standard: 'energy-efficient',
  IE1: 'IE2',
  'energy-efficient': 'premium',
  IE2: 'IE3',
  IE3: 'IE4',
};

/**
 * Holds a stamped efficiency against the class that the sheet states for the same motor. Efficiency in per cent at rated load.
 * `undefined` where the two agree, or where no table holds the class at this rating. `standard` names no least efficiency, so it is held only against what is above it.
 */
export function classContradiction(
  tables: ReferenceTables,
  query: RatingQuery,
  stated: EfficiencyClass,
  stampedPct: number,
): ClassContradiction | undefined {
  const loss = (pct: number): number => 100 / pct - 1;
  const held = (against: EfficiencyClass | undefined, beyond: (ratio: number) => boolean): ClassContradiction | undefined => {
    const found = against && classEfficiency(tables, { ...query, efficiencyClass: against });
    if (!against || !found?.inside) return undefined;
    const ratio = loss(stampedPct) / loss(found.pct);
    return beyond(ratio) ? { against, pct: found.pct, table: found.table, ratio } : undefined;
  };
  return (
    (stated === 'standard' ? undefined : held(stated, (ratio) => ratio > LEAST_GUARANTEED)) ??
    held(ABOVE[stated], (ratio) => ratio < A_CLASS_BETTER)
  );
}
