import type { MotorScope } from '../context';
import type { Finding } from '../quantity/finding';
import { type Quantity, standardUncertainty } from '../quantity/quantity';
import type { Band } from '../result';
import type { LimitRow, RowStatus } from '../tables';
import { CONDITION } from './findings';

/** A limit in force: the table's, or the user's with a reason. */
export interface Limit {
  readonly id: string;
  readonly value: number;
  readonly unit: string;
  readonly source: string;
  readonly status: RowStatus;
}

/** From this share of an upper limit on, and up to its inverse above a lower one, a value is `near` (common practice). */
export const NEAR = 0.8;

/** The limit with this id: the user's value where the study sets one, else the table's. */
export function limitOf(scope: MotorScope, id: string): Limit {
  const row = rowsById(scope.tables.limits).get(id);
  if (!row) throw new Error(`the table of limits has no row ${id}`);
  const own = scope.settings.limits[id];
  if (own) return { id, value: own.value, unit: row.unit, source: `set in the study: ${own.reason}`, status: 'practice' };
  return { id, value: numberOf(row), unit: row.unit, source: row.source, status: row.status };
}

type LimitTable = MotorScope['tables']['limits'];
const byId = new WeakMap<LimitTable, Map<string, LimitTable['rows'][number]>>();

function rowsById(table: LimitTable): Map<string, LimitTable['rows'][number]> {
  let index = byId.get(table);
  if (!index) {
    index = new Map(table.rows.map((row) => [row.id, row]));
    byId.set(table, index);
  }
  return index;
}

function numberOf(row: LimitRow): number {
  if (row.value === undefined) throw new Error(`limit ${row.id} is a formula, not a number`);
  return row.value;
}

/**
 * Band of a value against an upper limit: `beyond` above it, `near` from 80 % of it, `within` below. On the limit itself counts as near.
 * A value whose 95 % interval straddles the limit is `near` at least and says so by a finding.
 */
export function bandBelow(value: Quantity, limit: Limit, indicator: string): { band: Band; findings: Finding[] } {
  return decide(value, limit, indicator, value.value > limit.value, value.value >= NEAR * limit.value);
}

/** Band of a value against a lower limit: `beyond` below it, `near` up to 1/80 % of it, `within` above. */
export function bandAbove(value: Quantity, limit: Limit, indicator: string): { band: Band; findings: Finding[] } {
  return decide(value, limit, indicator, value.value < limit.value, value.value <= limit.value / NEAR);
}

function decide(
  value: Quantity,
  limit: Limit,
  indicator: string,
  beyond: boolean,
  near: boolean,
): { band: Band; findings: Finding[] } {
  const u = standardUncertainty(value);
  const straddles = Math.abs(value.value - limit.value) < 1.96 * u;
  const findings = straddles
    ? [CONDITION.make('limit-straddled', { indicator, value: value.value, limit: limit.value, unit: limit.unit, u })]
    : [];
  return { band: beyond ? 'beyond' : near || straddles ? 'near' : 'within', findings };
}
