import { apply } from '../formula/apply';
import * as B from '../generated/bench';
import type { Finding } from '../quantity/finding';
import { exact, type Quantity } from '../quantity/quantity';
import { assumedStray, ratedStray } from './assumed-stray';
import { dynamometerCorrection } from './dynamometer';
import { BENCH } from './findings';
import { correctedPoint, specifiedAt, type TestedPoint, testedPoint } from './load-point';
import type { LoadSide, Prepared } from './load-side';
import type { BenchScope } from './meters';
import { rotorConstant } from './method';
import { windingsOf } from './resistance';
import { reverseRotation, strayOfCurrent } from './reverse-rotation';
import { polesOf } from './slip';
import { currentAt, loadCurves, performanceAt, reachedLoads } from './standard-loads';
import { strayLine } from './stray-line';
import { usablePoints } from './usable-points';

/** How the stray-load loss of a point and of a standard load follows. */
interface StrayLaw {
  readonly ofPoint: (point: TestedPoint) => Quantity<'kW'>;
  readonly atLoad: (at: { readonly torque: Quantity<'N m'>; readonly current: Quantity<'A'> }) => Quantity<'kW'>;
}

/** Repetitions by which current and input at rated load settle; each adds about three digits. */
const SETTLING = 8;

/**
 * The load side of a test with measured load points: methods B, E, E1, 2-1-1B, 2-1-1C.
 *
 * Points are tested, brought to temperature, and carried to the standard loads; stray-load loss comes from the line over torque squared,
 * from the reverse-rotation test, or is assumed.
 */
export function measuredLoads(scope: BenchScope, prepared: Prepared): LoadSide {
  const { test, plate, method, frequencyHz, reference, noLoad } = prepared;
  const nothing = { tested: [], corrected: [], loads: [] };
  const torqueRead = method.stray === 'line' && test.sections.load.some((point) => point.torqueNm !== undefined);
  const needed = ['voltageV', 'currentA', 'inputPowerKw', 'speedRpm'] as const;
  const { points, findings } = usablePoints('load', test.sections.load, torqueRead ? [...needed, 'torqueNm'] : needed);
  const poles = polesOf(plate, points, frequencyHz);
  if (poles === undefined) return { ...nothing, findings: [...findings, BENCH.make('poles-unknown', {})] };
  if (method.stray === 'line' && !torqueRead) {
    return { ...nothing, findings: [...findings, BENCH.make('torque-missing', {})] };
  }
  if (points.length < method.loadPoints)
    findings.push(BENCH.make('load-points-too-few', { points: points.length, least: method.loadPoints }));
  const { windings, findings: assumed } = windingsOf(scope, 'load', points, reference, prepared.specified, method.copper);
  findings.push(...assumed);
  const correction =
    method.stray === 'line'
      ? dynamometerCorrection(scope, {
          points: test.sections.dynamometer,
          noLoad,
          method,
          reference,
          fallback: prepared.specified,
          poles,
          frequencyHz,
        })
      : undefined;
  if (method.stray === 'line' && !correction) findings.push(BENCH.make('dynamometer-not-corrected', {}));
  const tested = points.flatMap((point, i) => {
    const winding = windings[i];
    return (winding && testedPoint(scope, { point, winding, noLoad, method, poles, frequencyHz, correction })) ?? [];
  });
  const impossible = impossiblePoints(tested, poles, frequencyHz, points);
  findings.push(...impossible);
  if (impossible.length > 0 || tested.length < 3) return { ...nothing, tested, correction, findings };
  return withStray(scope, prepared, { tested, findings, correction, poles });
}

function impossiblePoints(
  tested: readonly TestedPoint[],
  poles: number,
  frequencyHz: number,
  points: readonly { readonly row: number; readonly frequencyHz?: number | undefined }[],
): Finding[] {
  return tested.flatMap((point) => {
    const hertz = points.find((each) => each.row === point.row)?.frequencyHz ?? frequencyHz;
    if (point.slip.value <= 0) {
      const evidence = { row: point.row, speed: point.speed.value, synchronous: (120 * hertz) / poles };
      return [BENCH.make('bench-speed-above-synchronous', evidence)];
    }
    const shaft = point.dynamometer?.shaftPower.value;
    if (shaft === undefined || shaft < point.inputPower.value) return [];
    return [BENCH.make('output-exceeds-input', { row: point.row, shaft_power: shaft, input_power: point.inputPower.value })];
  });
}

interface Tested {
  readonly tested: readonly TestedPoint[];
  readonly findings: Finding[];
  readonly correction: Quantity<'N m'> | undefined;
  readonly poles: number;
}

function withStray(scope: BenchScope, prepared: Prepared, given: Tested): LoadSide {
  const { method, reference, test, noLoad } = prepared;
  const { tested, findings, correction } = given;
  if (method.stray === 'line') {
    const { line, findings: said } = strayLine(scope, tested, method);
    findings.push(...said);
    if (!line) return { tested, corrected: [], correction, loads: [], findings: [...findings, BENCH.make('torque-missing', {})] };
    const { slope } = line;
    const law: StrayLaw = {
      ofPoint: ({ dynamometer }) =>
        dynamometer ? apply(scope, B.stray_of_torque, { slope, torque: dynamometer.torque }) : exact(0, 'kW'),
      atLoad: ({ torque }) => apply(scope, B.stray_of_torque, { slope, torque }),
    };
    const side = corrected(scope, prepared, given, law);
    const stray = side.loads.find((load) => load.loadFraction === 1)?.losses.stray.value;
    if (stray !== undefined && stray > 0 && Math.abs(line.intercept.value) > 500 * stray) {
      findings.push(BENCH.make('stray-intercept-large', { intercept: line.intercept.value, stray: 1000 * stray }));
    }
    return { ...side, line, correction, findings };
  }
  if (method.stray === 'reverse-rotation') {
    const { found, findings: said } = reverseRotation(scope, test.sections, reference, method.copper);
    findings.push(...said);
    if (!found) return { tested, corrected: [], loads: [], findings };
    const of = (current: Quantity<'A'>) => strayOfCurrent(scope, found, current, noLoad.current);
    return {
      ...corrected(scope, prepared, given, { ofPoint: (p) => of(p.current), atLoad: ({ current }) => of(current) }),
      reverse: found,
    };
  }
  return assumedSide(scope, prepared, given);
}

/** With stray-load loss assumed at rated load: current and input there depend on it and are found by repetition. */
function assumedSide(scope: BenchScope, prepared: Prepared, given: Tested): LoadSide {
  const { plate, method, noLoad } = prepared;
  const assumed = assumedStray(scope, method, plate.ratedPowerKw, prepared.assumedStray);
  if (!assumed) return { tested: given.tested, corrected: [], loads: [], findings: given.findings };
  const words = assumed.basis === 'output' ? 'output' : 'input';
  given.findings.push(BENCH.make('stray-loss-assumed', { stray_pct: 100 * assumed.share.value, words }));
  const highest = [...given.tested].sort((a, b) => b.inputPower.value - a.inputPower.value)[0];
  let side: LoadSide = { tested: given.tested, corrected: [], loads: [], findings: given.findings };
  if (!highest) return side;
  let ratedInput = highest.inputPower;
  let ratedCurrent = highest.current;
  for (let i = 0; i < SETTLING; i++) {
    const rated = ratedStray(scope, assumed, plate.ratedPowerKw, ratedInput);
    const of = (current: Quantity<'A'>): Quantity<'kW'> => {
      const ratio = apply(scope, B.rotor_current_ratio, {
        current,
        rated_current: ratedCurrent,
        no_load_current: noLoad.current,
      });
      return apply(scope, B.stray_by_current, { rated_stray: rated, ratio });
    };
    const law: StrayLaw = { ofPoint: (point) => of(point.current), atLoad: ({ current }) => of(current) };
    side = corrected(scope, prepared, { ...given, findings: i === SETTLING - 1 ? given.findings : [] }, law);
    const curves = loadCurves(scope, side.corrected, plate.ratedPowerKw);
    if (!curves) return side;
    ratedCurrent = currentAt(curves, 1);
    ratedInput = atRated(scope, prepared, given.poles, curves, law).inputPower;
  }
  return side;
}

function atRated(
  scope: BenchScope,
  prepared: Prepared,
  poles: number,
  curves: NonNullable<ReturnType<typeof loadCurves>>,
  law: StrayLaw,
) {
  const { ratedPowerKw, ratedVoltageV } = prepared.plate;
  return performanceAt(scope, {
    curves,
    load: 1,
    ratedPowerKw,
    ratedVoltageV,
    frequencyHz: prepared.frequencyHz,
    poles,
    strayAt: law.atLoad,
  });
}

/** Points brought to temperature with their stray-load loss, and carried to the standard loads. */
function corrected(scope: BenchScope, prepared: Prepared, given: Tested, law: StrayLaw): LoadSide {
  const { plate, method, specified, coolant, frequencyHz } = prepared;
  const constant = rotorConstant(method, plate.rotorConductor);
  const points = given.tested.map((tested) =>
    correctedPoint(scope, {
      tested,
      temperature: specifiedAt(scope, tested, method, specified, coolant),
      stray: law.ofPoint(tested),
      method,
      rotorConstant: constant,
    }),
  );
  const side = { tested: given.tested, corrected: points, findings: given.findings };
  const curves = loadCurves(scope, points, plate.ratedPowerKw);
  if (!curves) return { ...side, loads: [] };
  const { reached, notReached } = reachedLoads(curves.lowest, curves.highest);
  if (curves.highest < method.loadTo - 0.1) {
    given.findings.push(BENCH.make('load-range-short', { highest_pct: 100 * curves.highest, wanted_pct: 100 * method.loadTo }));
  }
  for (const load of notReached) given.findings.push(BENCH.make('load-not-tested', { load_pct: 100 * load }));
  const { ratedPowerKw, ratedVoltageV } = plate;
  const loads = reached.map((load) =>
    performanceAt(scope, { curves, load, ratedPowerKw, ratedVoltageV, frequencyHz, poles: given.poles, strayAt: law.atLoad }),
  );
  return { ...side, loads };
}
