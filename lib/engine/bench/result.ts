import type { LossSet } from '../machine/model';
import type { Finding } from '../quantity/finding';
import { type Quantity, standardUncertainty } from '../quantity/quantity';
import type { Figure } from '../result';
import { tidy } from '../result-figure';
import { type CircuitResult, circuitResult, type ReverseRotationResult, reverseResult } from './direct-result';
import type { BenchEvaluation } from './evaluate';
import { fitAt } from './least-squares';
import type { CorrectedPoint, TestedPoint } from './load-point';
import type { LoadSide } from './load-side';
import { measuredLosses } from './measured';
import type { BenchMethodId } from './method';
import type { NoLoad } from './no-load';
import { celsius, plain } from './shown';
import type { BenchLoad } from './test';
import type { MeasuredLosses } from './tested';

/** The five losses and their sum as figures, kW. */
interface BenchLossFigures {
  readonly stator: Figure;
  readonly rotor: Figure;
  readonly core: Figure;
  readonly friction_windage: Figure;
  readonly stray: Figure;
  readonly total: Figure;
}

/** Performance at one standard load. */
export interface BenchPointResult {
  readonly load_fraction: number;
  readonly input_power: Figure;
  readonly shaft_power: Figure;
  readonly efficiency: Figure;
  readonly power_factor: Figure;
  readonly current: Figure;
  readonly speed: Figure;
  readonly losses: BenchLossFigures;
}

/** One column of the no-load computation. */
interface NoLoadColumn {
  readonly row: number;
  readonly voltage: Figure;
  readonly current: Figure;
  readonly input_power: Figure;
  readonly winding_temp: Figure;
  readonly resistance: Figure;
  readonly stator: Figure;
  readonly constant_loss: Figure;
  readonly voltage_ratio_squared: number;
  readonly leads_extrapolation: boolean;
}

/** One column of the load computation, as tested and as corrected. */
interface LoadColumnResult {
  readonly row: number;
  readonly voltage: Figure;
  readonly current: Figure;
  readonly input_power: Figure;
  readonly speed: Figure;
  readonly slip: Figure;
  readonly winding_temp: Figure;
  readonly resistance: Figure;
  readonly stator: Figure;
  readonly core: Figure;
  readonly friction_windage: Figure;
  readonly gap_power: Figure;
  readonly rotor: Figure;
  readonly torque?: Figure;
  readonly torque_squared?: Figure;
  readonly shaft_power_by_torque?: Figure;
  readonly residual_loss?: Figure;
  readonly on_line?: boolean;
  readonly corrected?: {
    readonly winding_temp: Figure;
    readonly slip: Figure;
    readonly input_power: Figure;
    readonly shaft_power: Figure;
    readonly efficiency: Figure;
    readonly power_factor: Figure;
    readonly losses: BenchLossFigures;
  };
}

/** A bench test as it is written and stored: plain data (contract of the bench test sheet). */
export interface BenchResult {
  readonly schema: 1;
  readonly tag: string;
  readonly test: string;
  readonly method: BenchMethodId;
  readonly method_title: string;
  readonly accepted: boolean;
  readonly findings: readonly Finding[];
  readonly stray_load_loss?: {
    readonly slope: Figure;
    readonly intercept: Figure;
    readonly correlation: number;
    readonly limit: number;
    readonly discarded_point?: number;
  };
  readonly core_loss?: Figure;
  readonly friction_windage?: Figure;
  readonly constant_loss?: Figure;
  readonly no_load_current?: Figure;
  readonly winding_temp_specified?: Figure;
  readonly torque_correction?: Figure;
  /** Elements for each phase of the star at the specified temperature; methods F and F1. */
  readonly circuit?: CircuitResult;
  /** The direct test of stray-load loss; methods E and F. */
  readonly reverse_rotation?: ReverseRotationResult;
  readonly points: readonly BenchPointResult[];
  readonly measured: MeasuredLosses;
  readonly columns: { readonly no_load: readonly NoLoadColumn[]; readonly load: readonly LoadColumnResult[] };
  readonly lines: { readonly no_load?: RegressionLine; readonly stray?: RegressionLine };
}

/** A fitted line with its 95 % band, for drawing and for the report. */
export interface RegressionLine {
  readonly x_unit: string;
  readonly y_unit: string;
  readonly slope: number;
  readonly intercept: number;
  readonly points: readonly {
    readonly row: number;
    readonly x: number;
    readonly y: number;
    readonly u: number;
    readonly used: boolean;
  }[];
  /** The line and its standard uncertainty at abscissae from zero to the last point. */
  readonly band: readonly { readonly x: number; readonly y: number; readonly u: number }[];
}

function lossFigures(losses: LossSet): BenchLossFigures {
  return {
    stator: plain(losses.stator),
    rotor: plain(losses.rotor),
    core: plain(losses.core),
    friction_windage: plain(losses.frictionWindage),
    stray: plain(losses.stray),
    total: plain(losses.total),
  };
}

function pointResult(load: BenchLoad): BenchPointResult {
  return {
    load_fraction: load.loadFraction,
    input_power: plain(load.inputPower),
    shaft_power: plain(load.shaftPower),
    efficiency: plain(load.efficiency),
    power_factor: plain(load.powerFactor),
    current: plain(load.current),
    speed: plain(load.speed),
    losses: lossFigures(load.losses),
  };
}

function noLoadColumns(noLoad: NoLoad | undefined): NoLoadColumn[] {
  return (noLoad?.points ?? []).map((point) => ({
    row: point.row,
    voltage: plain(point.voltage),
    current: plain(point.current),
    input_power: plain(point.inputPower),
    winding_temp: celsius(point.winding.temperature),
    resistance: plain(point.winding.resistance),
    stator: plain(point.stator),
    constant_loss: plain(point.constant),
    voltage_ratio_squared: tidy(point.voltageRatio.value ** 2),
    leads_extrapolation: point.low,
  }));
}

function loadColumn(tested: TestedPoint, corrected: CorrectedPoint | undefined, discarded: number | undefined): LoadColumnResult {
  const { dynamometer } = tested;
  return {
    row: tested.row,
    voltage: plain(tested.voltage),
    current: plain(tested.current),
    input_power: plain(tested.inputPower),
    speed: plain(tested.speed),
    slip: plain(tested.slip),
    winding_temp: celsius(tested.winding.temperature),
    resistance: plain(tested.winding.resistance),
    stator: plain(tested.stator),
    core: plain(tested.core),
    friction_windage: plain(tested.frictionWindage),
    gap_power: plain(tested.gapPower),
    rotor: plain(tested.rotor),
    ...(dynamometer && {
      torque: plain(dynamometer.torque),
      torque_squared: plain(dynamometer.torqueSquared),
      shaft_power_by_torque: plain(dynamometer.shaftPower),
      residual_loss: plain(dynamometer.residual),
      on_line: tested.row !== discarded,
    }),
    ...(corrected && {
      corrected: {
        winding_temp: celsius(corrected.temperature),
        slip: plain(corrected.slip),
        input_power: plain(corrected.inputPower),
        shaft_power: plain(corrected.shaftPower),
        efficiency: plain(corrected.efficiency),
        power_factor: plain(corrected.powerFactor),
        losses: lossFigures(corrected.losses),
      },
    }),
  };
}

function loadColumns(load: LoadSide | undefined): LoadColumnResult[] {
  if (!load) return [];
  return load.tested.map((tested) =>
    loadColumn(
      tested,
      load.corrected.find((each) => each.tested.row === tested.row),
      load.line?.discarded,
    ),
  );
}

const BAND_STEPS = 24;

function band(line: NonNullable<LoadSide['line']>['fit'], to: number): RegressionLine['band'] {
  return Array.from({ length: BAND_STEPS + 1 }, (_, i) => {
    const x = (to * i) / BAND_STEPS;
    // The no-load line is a line over the square of the voltage ratio.
    const at: Quantity<'1'> = { unit: '1', value: line.powers.includes(2) ? Math.sqrt(x) : x, parts: { at: [], by: [] } };
    const y = fitAt(line, at, 'W');
    return { x: tidy(x), y: tidy(y.value), u: tidy(standardUncertainty(y)) };
  });
}

function strayRegression(load: LoadSide | undefined): RegressionLine | undefined {
  const line = load?.line;
  if (!line) return undefined;
  const points = load.tested.flatMap(({ row, dynamometer }) =>
    dynamometer
      ? [
          {
            row,
            x: tidy(dynamometer.torqueSquared.value),
            y: tidy(dynamometer.residual.value),
            u: tidy(standardUncertainty(dynamometer.residual)),
            used: row !== line.discarded,
          },
        ]
      : [],
  );
  return {
    x_unit: '(N m)²',
    y_unit: 'W',
    slope: tidy(line.slope.value),
    intercept: tidy(line.intercept.value),
    points,
    band: band(line.fit, Math.max(...points.map((point) => point.x))),
  };
}

function noLoadRegression(noLoad: NoLoad | undefined): RegressionLine | undefined {
  const line = noLoad?.separated?.line;
  if (!line) return undefined;
  const points = noLoad.points.map((point) => ({
    row: point.row,
    x: tidy(point.voltageRatio.value ** 2),
    y: tidy(point.constant.value),
    u: tidy(standardUncertainty(point.constant)),
    used: point.low,
  }));
  return {
    x_unit: '1',
    y_unit: 'kW',
    slope: tidy(line.coefficients[1] ?? 0),
    intercept: tidy(line.coefficients[0] ?? 0),
    points,
    band: band(line, Math.max(...points.filter((point) => point.used).map((point) => point.x))),
  };
}

/** A worked-out test as plain data. */
export function benchResult(evaluation: BenchEvaluation): BenchResult {
  const { test, method, noLoad, load, specified } = evaluation;
  const line = load?.line;
  const separated = noLoad?.separated;
  const strayLine = strayRegression(load);
  const noLoadLine = noLoadRegression(noLoad);
  return {
    schema: 1,
    tag: test.tag,
    test: test.test,
    method: method.id,
    method_title: method.title,
    accepted: evaluation.accepted,
    findings: evaluation.findings,
    ...(line && {
      stray_load_loss: {
        slope: plain(line.slope),
        intercept: plain(line.intercept),
        correlation: tidy(line.correlation),
        limit: method.correlation,
        ...(line.discarded !== undefined && { discarded_point: line.discarded }),
      },
    }),
    ...(separated && { core_loss: plain(separated.core), friction_windage: plain(separated.frictionWindage) }),
    ...(noLoad && { constant_loss: plain(noLoad.constant), no_load_current: plain(noLoad.current) }),
    ...(specified && { winding_temp_specified: celsius(specified) }),
    ...(load?.correction && { torque_correction: plain(load.correction) }),
    ...(load?.circuit && { circuit: circuitResult(load.circuit) }),
    ...(load?.reverse && { reverse_rotation: reverseResult(load.reverse) }),
    points: (load?.loads ?? []).map(pointResult),
    measured: measuredLosses(evaluation),
    columns: { no_load: noLoadColumns(noLoad), load: loadColumns(load) },
    lines: { ...(noLoadLine && { no_load: noLoadLine }), ...(strayLine && { stray: strayLine }) },
  };
}
