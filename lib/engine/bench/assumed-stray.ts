import { apply, leaf } from '../formula/apply';
import { CONSTANTS } from '../formula/constants';
import * as B from '../generated/bench';
import { exact, type Quantity } from '../quantity/quantity';
import type { AssumedStrayRow, Table } from '../tables';
import type { BenchScope } from './meters';
import type { BenchMethod } from './method';

/** What a method assumes at rated load. */
interface AssumedStray {
  readonly share: Quantity<'1'>;
  readonly basis: 'input' | 'output';
}

/**
 * Share of stray-load loss that a method without a dynamometer assumes at rated load.
 *
 * Units: fraction of rated output (IEEE 112) or of the input at rated load (IEC 60034-2-1). The assumed value stands for all motors of a
 * rating; it counts as rectangular between none and twice itself, since measured motors lie on both sides (own judgement).
 * Source: table of assumed stray-load loss.
 */
export function assumedStray(
  scope: BenchScope,
  method: BenchMethod,
  ratedPowerKw: number,
  table: Table<AssumedStrayRow>,
): AssumedStray | undefined {
  const row = method.family === 'ieee' ? ieeeRow(ratedPowerKw, table) : iecRow(ratedPowerKw, table);
  if (!row) return undefined;
  const value = row.share ?? sloping(row, ratedPowerKw);
  if (value === undefined) return undefined;
  const share = leaf(scope, {
    value,
    unit: '1',
    label: 'assumed share of stray-load loss',
    origin: 'table',
    source: `${table.title}: ${row.standard}`,
    doubts: [{ id: 'bench:assumed-stray', label: 'stray-load loss assumed, not measured', u: value / Math.sqrt(3) }],
  });
  return { share, basis: row.basis };
}

/** Bands in whole horsepower: a rating between two bands counts to the lower one up to the half. */
function ieeeRow(ratedPowerKw: number, table: Table<AssumedStrayRow>): AssumedStrayRow | undefined {
  const hp = ratedPowerKw / CONSTANTS.kilowatts_per_horsepower.value;
  return table.rows.find((row) => row.standard === 'ieee-112' && hp < (row.ratedPowerHpMax ?? Number.POSITIVE_INFINITY) + 0.5);
}

function iecRow(ratedPowerKw: number, table: Table<AssumedStrayRow>): AssumedStrayRow | undefined {
  return table.rows.find(
    (row) => row.standard === 'iec-60034-2-1' && ratedPowerKw <= (row.ratedPowerKwMax ?? Number.POSITIVE_INFINITY),
  );
}

function sloping(row: AssumedStrayRow, ratedPowerKw: number): number | undefined {
  if (row.shareAt1Kw === undefined || row.fallPerDecade === undefined) return undefined;
  return B.stray_assigned_share.f(ratedPowerKw, 1, row.shareAt1Kw, row.fallPerDecade);
}

/** Stray-load loss at rated load from the assumed share. */
export function ratedStray(
  scope: BenchScope,
  assumed: AssumedStray,
  ratedPowerKw: number,
  ratedInput: Quantity<'kW'>,
): Quantity<'kW'> {
  return assumed.basis === 'output'
    ? apply(scope, B.stray_share_of_output, { rated_power: exact(ratedPowerKw, 'kW'), share: assumed.share })
    : apply(scope, B.stray_share_of_input, { rated_input: ratedInput, share: assumed.share });
}
