import type { MotorScope } from '../context';
import { leaf } from '../formula/apply';
import { KILOWATTS_PER_HORSEPOWER } from '../formula/constants';
import type { Quantity } from '../quantity/quantity';

/**
 * Efficiency of an adjustable-speed drive at a share of its rated output: the listed size nearest in rating, linear between loads.
 * Valid for: 3 to 400 hp, 12.5 to 100 % of output. Source: US DOE Motor Systems Tip Sheet 11, table 1 (typical values, no standard test).
 */
export function driveEfficiency(scope: MotorScope, ratedPowerKw: number, outputFraction: number): Quantity<'1'> {
  const hp = ratedPowerKw / KILOWATTS_PER_HORSEPOWER;
  const rows = scope.tables.drives.rows;
  let nearest: number | undefined;
  for (const row of rows) {
    if (nearest === undefined || Math.abs(Math.log(row.ratedPowerHp / hp)) < Math.abs(Math.log(nearest / hp)))
      nearest = row.ratedPowerHp;
  }
  const points = rows.filter((row) => row.ratedPowerHp === nearest).sort((a, b) => a.loadPct - b.loadPct);
  const load = Math.min(Math.max(outputFraction * 100, points[0]?.loadPct ?? 0), points[points.length - 1]?.loadPct ?? 100);
  let pct = points[0]?.efficiencyPct ?? 95;
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1];
    const b = points[i];
    if (a && b && load >= a.loadPct)
      pct =
        a.efficiencyPct +
        ((b.efficiencyPct - a.efficiencyPct) * (Math.min(load, b.loadPct) - a.loadPct)) / (b.loadPct - a.loadPct);
  }
  return leaf(scope, {
    value: pct / 100,
    unit: '1',
    label: 'efficiency of the drive',
    origin: 'table',
    source: scope.tables.drives.title,
    doubts: [{ id: 'drive-efficiency', label: 'efficiency of the drive', u: 0.01 }],
  });
}
