import type { MotorScope } from '../context';
import { NORMAL_FACTOR } from '../quantity/coverage';
import type { Finding } from '../quantity/finding';
import { type Quantity, standardUncertainty } from '../quantity/quantity';
import type { Band } from '../result';
import type { LimitRow } from '../tables';
import { CONDITION } from './findings';
import type { Limit, Margin } from './limit-model';
import { PRACTICE } from './practice';

/** From this share of an upper limit on, and up to its inverse above a lower one, a value is `near` (common practice). */
export const NEAR = 0.8;

/** The limit with this id: the user's value where the study sets one, else that of the table of limits, else that of common practice. */
export function limitOf(scope: MotorScope, id: string): Limit {
  const practice = PRACTICE[id];
  if (practice) return inForce(scope, practice);
  const row = limitRow(scope, id);
  return inForce(scope, {
    id,
    value: numberOf(row),
    high: row.valueHigh,
    unit: row.unit,
    source: row.source,
    status: row.status,
  });
}

/** A limit from elsewhere (a zone, a class, a formula), unless the study sets another value under its id. */
export function inForce(scope: MotorScope, limit: Limit): Limit {
  const own = scope.settings.limits[limit.id];
  if (!own) return limit;
  return { id: limit.id, value: own.value, unit: limit.unit, source: `set in the study: ${own.reason}`, status: 'practice' };
}

type LimitTable = MotorScope['tables']['limits'];
type Row = LimitTable['rows'][number];
const byId = new WeakMap<LimitTable, Map<string, Row>>();

/** The row of the table of limits with this id. Throws when there is none: the tables are checked before the engine sees them. */
export function limitRow(scope: MotorScope, id: string): Row {
  const table = scope.tables.limits;
  let index = byId.get(table);
  if (!index) {
    index = new Map(table.rows.map((row) => [row.id, row]));
    byId.set(table, index);
  }
  const row = index.get(id);
  if (!row) throw new Error(`the table of limits has no row ${id}`);
  return row;
}

function numberOf(row: LimitRow): number {
  if (row.value === undefined) throw new Error(`limit ${row.id} is a formula, not a number`);
  return row.value;
}

/** True when a value is above an edge by more than the noise of arithmetic, so that 10 % of 460 V counts as on the limit, not over it. */
export function exceeds(value: number, edge: number): boolean {
  return value - edge > 1e-9 * Math.abs(edge);
}

/** A verdict, what is left to the limit at which `beyond` begins, and what there is to say of it. */
interface BandedValue {
  readonly band: Band;
  readonly margin: Margin;
  readonly findings: Finding[];
}

/**
 * Band of a value against an upper limit: `beyond` above it, `near` from 80 % of it, `within` below. On the limit itself counts as near.
 * A value whose 95 % interval straddles the limit is `near` at least and says so by a finding.
 */
export function bandBelow(value: Quantity, limit: Limit, indicator: string): BandedValue {
  return bandAt(value, limit, indicator, {
    beyond: exceeds(value.value, limit.value),
    near: !exceeds(NEAR * limit.value, value.value),
  });
}

/** Band of a value against a lower limit: `beyond` below it, `near` up to 1/80 % of it, `within` above. */
export function bandAbove(value: Quantity, limit: Limit, indicator: string): BandedValue {
  return bandAt(value, limit, indicator, {
    beyond: exceeds(limit.value, value.value),
    near: !exceeds(value.value, limit.value / NEAR),
  });
}

/**
 * Band of a value whose edges the indicator has settled itself. `limit` is the edge at which `beyond` begins; a 95 % interval that
 * straddles it makes `near` at least, with a finding. A value beyond the limit stays beyond, however doubtful: the safe side.
 */
export function bandAt(
  value: Quantity,
  limit: Limit,
  indicator: string,
  is: { readonly beyond: boolean; readonly near: boolean },
): BandedValue {
  const u = standardUncertainty(value);
  const distance = Math.abs(value.value - limit.value);
  const straddles = distance < NORMAL_FACTOR * u;
  const findings = straddles
    ? [CONDITION.make('limit-straddled', { indicator, value: value.value, limit: limit.value, unit: limit.unit, u })]
    : [];
  return {
    band: is.beyond ? 'beyond' : is.near || straddles ? 'near' : 'within',
    margin: { value: is.beyond ? -distance : distance, u, unit: value.unit },
    findings,
  };
}
