import type { MotorScope } from '../context';
import { leaf } from '../formula/apply';
import { KILOWATTS_PER_HORSEPOWER } from '../formula/constants';
import type { Quantity } from '../quantity/quantity';

/** Drives of one size differ by about a quarter of their loss, and by a point at least (common practice); neighbouring sizes of the table do by 11 to 24 %. */
const SPREAD_OF_LOSS = 0.25;
const LEAST_SPREAD = 0.01;

/** Where the table has no drive at all. */
const UNLISTED = 0.95;

/** A listed point: output over rated output, and efficiency there. */
interface Point {
  readonly output: number;
  readonly efficiency: number;
}

/** Points of the listed size nearest in rating, by rising output. */
function listed(scope: MotorScope, ratedPowerKw: number): readonly Point[] {
  const hp = ratedPowerKw / KILOWATTS_PER_HORSEPOWER;
  const rows = scope.tables.drives.rows;
  let nearest: number | undefined;
  for (const row of rows) {
    if (nearest === undefined || Math.abs(Math.log(row.ratedPowerHp / hp)) < Math.abs(Math.log(nearest / hp)))
      nearest = row.ratedPowerHp;
  }
  return rows
    .filter((row) => row.ratedPowerHp === nearest)
    .map((row) => ({ output: row.loadPct / 100, efficiency: row.efficiencyPct / 100 }))
    .sort((a, b) => a.output - b.output);
}

function efficiencyOf(scope: MotorScope, value: number): Quantity<'1'> {
  return leaf(scope, {
    value,
    unit: '1',
    label: 'efficiency of the drive',
    origin: 'table',
    source: scope.tables.drives.title,
    doubts: [
      {
        id: 'drive-efficiency',
        label: 'efficiency of the drive',
        u: Math.max(LEAST_SPREAD, SPREAD_OF_LOSS * (1 - value)),
      },
    ],
  });
}

/**
 * Efficiency of an adjustable-speed drive at a share of its rated output: the listed size nearest in rating, linear between loads, the outermost beyond.
 * Valid for: 3 to 400 hp, 1.6 to 100 % of output. Source: US DOE Motor Systems Tip Sheet 11, table 1 (typical values, no standard test).
 */
export function driveEfficiency(scope: MotorScope, ratedPowerKw: number, outputFraction: number): Quantity<'1'> {
  return efficiencyOf(scope, atOutput(listed(scope, ratedPowerKw), outputFraction));
}

/** The same at what the drive takes, over its rated output. */
export function driveEfficiencyAtInput(scope: MotorScope, ratedPowerKw: number, inputFraction: number): Quantity<'1'> {
  const points = listed(scope, ratedPowerKw);
  return efficiencyOf(scope, atOutput(points, outputAt(points, inputFraction)));
}

/** Change of efficiency with output between two points. */
function slopeOf(a: Point, b: Point): number {
  return (b.efficiency - a.efficiency) / (b.output - a.output);
}

function atOutput(points: readonly Point[], output: number): number {
  let found = points[0]?.efficiency ?? UNLISTED;
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1];
    const b = points[i];
    if (a && b && output >= a.output) found = a.efficiency + slopeOf(a, b) * (Math.min(output, b.output) - a.output);
  }
  return found;
}

/** Output of a drive that takes so much: input times the efficiency at that very output, which is linear in it between two points. */
function outputAt(points: readonly Point[], input: number): number {
  let found = points[0]?.output ?? input;
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1];
    const b = points[i];
    if (!a || !b || input < a.output / a.efficiency) break;
    const slope = slopeOf(a, b);
    const output = (input * (a.efficiency - slope * a.output)) / (1 - input * slope);
    found = input < b.output / b.efficiency ? output : b.output;
  }
  return found;
}
