import { apply } from '../formula/apply';
import * as L from '../generated/load';
import * as M from '../generated/machine';
import type { Finding } from '../quantity/finding';
import { exact, type Quantity } from '../quantity/quantity';
import { BENCH } from './findings';
import { coefficient, type Fit, fitAt, fitPowers } from './least-squares';
import { type BenchScope, METER, read } from './meters';
import type { BenchMethod } from './method';
import { type Winding, windingsOf } from './resistance';
import type { BenchPlate, BenchPoint } from './test';
import { usablePoints } from './usable-points';

/** One column of the no-load computation. */
interface NoLoadPoint {
  readonly row: number;
  readonly voltage: Quantity<'V'>;
  readonly current: Quantity<'A'>;
  readonly inputPower: Quantity<'kW'>;
  readonly winding: Winding;
  readonly voltageRatio: Quantity<'1'>;
  readonly stator: Quantity<'kW'>;
  /** Power less stator loss: core loss with friction and windage. */
  readonly constant: Quantity<'kW'>;
  /** The point leads the extrapolation to zero voltage. */
  readonly low: boolean;
}

/** What the no-load test gives. */
export interface NoLoad {
  readonly points: readonly NoLoadPoint[];
  /** Core loss with friction and windage at rated voltage. */
  readonly constant: Quantity<'kW'>;
  /** Line current at rated voltage. */
  readonly current: Quantity<'A'>;
  /** Absent where the voltage was not varied enough to tell core loss from friction. */
  readonly separated?: {
    readonly frictionWindage: Quantity<'kW'>;
    readonly core: Quantity<'kW'>;
    /** Line of the low points: constant loss over the square of the voltage ratio. */
    readonly line: Fit;
    /** Core loss at a line-to-line voltage. */
    readonly coreAt: (voltage: Quantity<'V'>) => Quantity<'kW'>;
  };
}

/** Points at or above this fraction of rated voltage lead the curve of core loss around it. */
const NEAR_RATED = 0.55;
/** A single point this close to rated voltage may stand for it. */
const AT_RATED = 0.05;

/**
 * Core loss, friction and windage from an uncoupled run at several voltages.
 *
 * Units: V line to line, A line, kW. Valid for: a motor that runs free, with its rotor loss neglected.
 * Power less stator loss is core loss with friction and windage; over the square of the voltage the low points lie on a straight line,
 * whose value at zero voltage is friction and windage. What is above it at a higher voltage is core loss, read from a smooth curve
 * (quadratic in the square of the voltage) through the points from 55 % of rated voltage.
 * Errors: too few or equal voltages and negative losses are findings. Source: IEEE 112-2017 clause 5.5; IEC 60034-2-1:2014 clause 6.1.3.2
 * (both from memory).
 */
export function separateNoLoad(
  scope: BenchScope,
  given: readonly BenchPoint[],
  plate: BenchPlate,
  method: BenchMethod,
  reference: Winding,
  fallback: Quantity<'K'>,
): { noLoad?: NoLoad; findings: Finding[] } {
  const { points, findings } = usablePoints('no-load', given, ['voltageV', 'currentA', 'inputPowerKw']);
  if (points.length === 0)
    return { findings: [...findings, BENCH.make('no-load-points-too-few', { points: 0, least: method.noLoadPoints })] };
  const { windings, findings: assumed } = windingsOf(scope, 'no-load', points, reference, fallback, method.copper);
  findings.push(...assumed);
  const lowest = risingCurrentFrom(points);
  const columns = points.flatMap((point, i) => column(scope, point, windings[i], plate, method, lowest) ?? []);
  columns.sort((a, b) => b.voltage.value - a.voltage.value);
  const negative = columns.find((entry) => entry.constant.value <= 0);
  if (negative)
    return {
      findings: [...findings, BENCH.make('constant-loss-negative', { row: negative.row, loss: negative.constant.value })],
    };
  const dropped = columns.filter((entry) => entry.voltage.value < lowest);
  if (dropped.length > 0) {
    const rows = dropped.map((entry) => entry.row).join(', ');
    findings.push(BENCH.make('low-voltage-points-left-out', { rows, voltage: lowest }));
  }
  const kept = columns.filter((entry) => !dropped.includes(entry));
  const curves = nearRated(scope, kept);
  if (!curves) {
    const nearest = kept.reduce(
      (best, e) => (Math.abs(e.voltageRatio.value - 1) < Math.abs(best - 1) ? e.voltageRatio.value : best),
      0,
    );
    return { findings: [...findings, BENCH.make('no-load-far-from-rated', { nearest_pct: 100 * nearest })] };
  }
  const noLoad: NoLoad = { points: columns, constant: curves.constantAt(exact(1, '1')), current: curves.current };
  if (method.stray === 'none' && kept.length < 3) return { noLoad, findings };
  return separate(scope, { noLoad, kept, findings, plate, method, constantAt: curves.constantAt });
}

/** Voltage of the least current: below it the current rises as the voltage falls, and the points do not count. */
function risingCurrentFrom(points: readonly BenchPoint[]): number {
  let at = Number.POSITIVE_INFINITY;
  let least = Number.POSITIVE_INFINITY;
  for (const { voltageV = 0, currentA = 0 } of points) {
    if (currentA < least || (currentA === least && voltageV < at)) {
      least = currentA;
      at = voltageV;
    }
  }
  return at;
}

function column(
  scope: BenchScope,
  point: BenchPoint,
  winding: Winding | undefined,
  plate: BenchPlate,
  method: BenchMethod,
  lowest: number,
): NoLoadPoint | undefined {
  const voltage = read(scope, METER.voltage, point);
  const current = read(scope, METER.current, point);
  const inputPower = read(scope, METER.power, point);
  if (!voltage || !current || !inputPower || !winding) return undefined;
  const stator = apply(scope, M.stator_loss_from_resistance, { resistance: winding.resistance, current });
  const voltageRatio = apply(scope, L.voltage_ratio, { voltage, rated_voltage: exact(plate.ratedVoltageV, 'V') });
  const constant = apply(scope, M.no_load_loss, { no_load_power: inputPower, no_load_stator_loss: stator });
  const low = voltageRatio.value <= method.lowVoltage && voltage.value >= lowest;
  return { row: point.row, voltage, current, inputPower, winding, voltageRatio, stator, constant, low };
}

/** Constant loss around rated voltage as a curve, and the current at rated voltage. */
function nearRated(scope: BenchScope, points: readonly NoLoadPoint[]) {
  const near = points.filter((point) => point.voltageRatio.value >= NEAR_RATED);
  const one = exact(1, '1');
  const top = Math.max(...near.map((point) => point.voltageRatio.value));
  const bottom = Math.min(...near.map((point) => point.voltageRatio.value));
  const different = new Set(near.map((point) => point.voltageRatio.value)).size;
  if (different === 0 || top < 1 - AT_RATED || bottom > 1 + AT_RATED) return undefined;
  const degree = different >= 4 ? 2 : different >= 2 ? 1 : 0;
  const powers = degree === 0 ? [2] : [0, 2, 4].slice(0, degree + 1);
  const loss = fitPowers(
    scope,
    'bench:constant-loss',
    powers,
    near.map((point) => ({ x: point.voltageRatio, y: point.constant })),
  );
  const amperes = fitPowers(
    scope,
    'bench:no-load-current',
    degree === 0 ? [1] : [0, 1, 2].slice(0, degree + 1),
    near.map((point) => ({ x: point.voltageRatio, y: point.current })),
  );
  if (!loss || !amperes) return undefined;
  return { constantAt: (ratio: Quantity<'1'>) => fitAt(loss, ratio, 'kW'), current: fitAt(amperes, one, 'A') };
}

interface ToSeparate {
  readonly noLoad: NoLoad;
  readonly kept: readonly NoLoadPoint[];
  readonly findings: Finding[];
  readonly plate: BenchPlate;
  readonly method: BenchMethod;
  readonly constantAt: (ratio: Quantity<'1'>) => Quantity<'kW'>;
}

function separate(scope: BenchScope, given: ToSeparate): { noLoad: NoLoad; findings: Finding[] } {
  const { noLoad, kept, findings, plate, method } = given;
  const refuse = (finding: Finding) => ({ noLoad, findings: [...findings, finding] });
  const voltages = new Set(kept.map((point) => point.voltage.value)).size;
  if (voltages < 3) return refuse(BENCH.make('no-load-voltages-equal', { voltages }));
  if (kept.length < method.noLoadPoints)
    findings.push(BENCH.make('no-load-points-too-few', { points: kept.length, least: method.noLoadPoints }));
  const highest = Math.max(...kept.map((point) => point.voltageRatio.value));
  if (highest < method.noLoadFrom - 0.03) {
    findings.push(BENCH.make('no-load-range-short', { highest_pct: 100 * highest, wanted_pct: 100 * method.noLoadFrom }));
  }
  let low = kept.filter((point) => point.low);
  if (new Set(low.map((point) => point.voltage.value)).size < 3) {
    low = kept.slice(-3);
    const evidence = {
      lowest_pct: 100 * (kept.at(-1)?.voltageRatio.value ?? 1),
      limit_pct: 100 * method.lowVoltage,
      used: low.length,
    };
    findings.push(BENCH.make('no-load-without-low-points', evidence));
  }
  const line = fitPowers(
    scope,
    'bench:friction',
    [0, 2],
    low.map((point) => ({ x: point.voltageRatio, y: point.constant })),
  );
  if (!line)
    return refuse(BENCH.make('no-load-voltages-equal', { voltages: new Set(low.map((point) => point.voltage.value)).size }));
  const frictionWindage = coefficient(line, 0, 'kW');
  if (frictionWindage.value < 0) return refuse(BENCH.make('friction-negative', { loss: frictionWindage.value }));
  const rated = exact(plate.ratedVoltageV, 'V');
  const coreAt = (voltage: Quantity<'V'>) => {
    const ratio = apply(scope, L.voltage_ratio, { voltage, rated_voltage: rated });
    return apply(scope, M.other_part, { sum: given.constantAt(ratio), part: frictionWindage });
  };
  const core = coreAt(rated);
  if (core.value <= 0) return refuse(BENCH.make('core-negative', { loss: core.value }));
  const used = new Set(low.map((point) => point.row));
  const points = noLoad.points.map((point) => ({ ...point, low: used.has(point.row) }));
  return { noLoad: { ...noLoad, points, separated: { frictionWindage, core, line, coreAt } }, findings };
}
