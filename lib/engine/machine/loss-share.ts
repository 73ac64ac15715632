import type { MotorScope } from '../context';
import type { LossShareRow, ReferenceTables } from '../tables';

type Component = LossShareRow['component'];

const known = new WeakMap<ReferenceTables['lossShares'], Map<Component, { value: number; u: number }>>();

/** Typical share of one loss: middle of the published range, a third of its width as standard uncertainty (common practice). */
export function lossShare(scope: MotorScope, component: Component): { value: number; u: number } {
  const table = scope.tables.lossShares;
  let rows = known.get(table);
  if (!rows) {
    rows = new Map();
    for (const row of table.rows) {
      if (row.ratedPowerKw !== undefined || row.minPct === undefined || row.maxPct === undefined) continue;
      rows.set(row.component, { value: (row.minPct + row.maxPct) / 200, u: (row.maxPct - row.minPct) / 300 });
    }
    known.set(table, rows);
  }
  const found = rows.get(component);
  if (!found) throw new Error(`the table of loss shares has no general range for ${component}`);
  return found;
}
