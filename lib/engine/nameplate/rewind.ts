import type { MotorScope } from '../context';
import { leaf } from '../formula/apply';
import { KILOWATTS_PER_HORSEPOWER } from '../formula/constants';
import type { Plate } from '../motor';
import type { Finding } from '../quantity/finding';
import type { Quantity } from '../quantity/quantity';
import { PLATE } from './findings';

/** Rating that divides small from large in published repair losses: 40 hp, in kW. */
const LARGE_KW = 40 * KILOWATTS_PER_HORSEPOWER * 0.98;

/** Average change in points: measured at an accredited shop, or assumed of shops at large by rating. */
function averagePoints(scope: MotorScope, accredited: boolean, ratedPowerKw: number): number {
  const motors = ratedPowerKw < LARGE_KW ? 'below 40 hp' : '40 hp and above';
  const row = scope.tables.rewindChange.rows.find((each) =>
    accredited ? each.study === 'EASA/AEMT 2019-2020' : each.study === 'US DOE rulemaking assumption' && each.motors === motors,
  );
  if (row?.avgPoints === undefined) throw new Error('the table of rewind changes lacks the average of a study');
  return row.avgPoints;
}

/**
 * Change of efficiency by one rewind, as a fraction (−0.01 is one point): the average of the table, for an accredited shop with the spread
 * of 0.2 points of EASA/AEMT 2019-2020 (read), for an unknown one with half of it as standard uncertainty.
 */
export function rewindChange(scope: MotorScope, ratedPowerKw: number, id: string, label: string): Quantity<'1'> {
  const accredited = scope.settings.repairShop === 'accredited';
  const points = averagePoints(scope, accredited, ratedPowerKw);
  return leaf(scope, {
    value: points / 100,
    unit: '1',
    label,
    origin: 'table',
    source: accredited ? 'table of rewind changes: accredited shop' : 'table of rewind changes: shop not known (from memory)',
    doubts: [{ id, label, u: accredited ? 0.002 : Math.abs(points) / 200 }],
  });
}

/** Change by the rewinds that a motor has behind it; counted once, since controlled rewinds in a row showed no further loss (2003 study, from memory). */
export function pastRewinds(
  scope: MotorScope,
  plate: Plate,
  prefix: string,
): { change: Quantity<'1'>; findings: Finding[] } | undefined {
  const rewinds = plate.rewindCount ?? (plate.lastRewindYear === undefined ? 0 : 1);
  if (rewinds < 1) return undefined;
  const change = rewindChange(
    scope,
    plate.ratedPowerKw,
    `${prefix}rewound-before`,
    `${prefix}efficiency lost in earlier rewinds`,
  );
  return { change, findings: [PLATE.make('rewound-before', { rewinds, points: change.value * 100 })] };
}
