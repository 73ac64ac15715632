import { RATED_AMBIENT } from '../circuit/parameters';
import { atLoad, type Solution, solveAtPower, type Terminals } from '../circuit/solve';
import type { MotorScope } from '../context';
import { leaf, solved } from '../formula/apply';
import type { Machine, OperatingPoint } from '../machine/model';
import { type Conditions, slipAtLoad } from '../machine/operate';
import type { DrivenMachine, Plate } from '../motor';
import type { Finding } from '../quantity/finding';
import { combineParts, exact, Later, type Quantity, scaleParts } from '../quantity/quantity';
import type { Settings } from '../settings';
import { OPTIONS } from './findings';
import { exponentBetween, type LoadPoint, onCurve } from './load-curve';

/** Two speed ratios nearer than this tell no slope: rounding would rule it. */
const APART = 1e-5;

/** How the driven machine answers to another speed. */
export interface LoadLaw {
  /** Torque goes with speed to this power; with a curve, where the motor turns at rated speed. */
  readonly exponent: Quantity<'1'>;
  /** Torque by given points, which takes the place of the power. */
  readonly curve?: LoadCurve | undefined;
  /** True when a drive holds the speed: the new motor gives the same shaft power. */
  readonly speedHeld: boolean;
  /** True when the flow is made by running and stopping: a faster motor runs for less time. */
  readonly onOff: boolean;
}

/** Points of a load's torque with the speed that they are a share of, and the name by which the settings know them. */
interface LoadCurve {
  readonly name: string;
  readonly points: readonly LoadPoint[];
  /** r/min. */
  readonly ratedSpeed: number;
}

const TURBO: ReadonlySet<DrivenMachine> = new Set(['pump', 'fan', 'blower', 'mixer']);

/**
 * The load law of a motor's driven machine: by the points of the curve that it names, else as stated, else torque with the square of speed for
 * pumps, fans, blowers and mixers, else constant. `ratedSpeed` in r/min is what the speeds of a curve are a share of.
 */
export function loadLaw(plate: Plate, curves?: Settings['loadCurves'], ratedSpeed = plate.ratedSpeedRpm): LoadLaw {
  const turbo = plate.drivenMachine !== undefined && TURBO.has(plate.drivenMachine);
  const points = plate.loadCurve === undefined || !curves ? undefined : pointsOf(curves, plate.loadCurve);
  const curve =
    plate.loadCurve !== undefined && points && ratedSpeed !== undefined
      ? { name: plate.loadCurve, points, ratedSpeed }
      : undefined;
  const atRated = curve && exponentBetween(curve.points, 100, 100);
  return {
    exponent: exact(atRated ?? plate.loadTorqueExponent ?? (turbo ? 2 : 0), '1'),
    ...(curve && { curve }),
    speedHeld: plate.flowControl === 'drive' || plate.driveFed === true,
    onOff: plate.flowControl === 'on-off',
  };
}

/** A curve by its name; a name such as `constructor` is none. */
function pointsOf(curves: Settings['loadCurves'], name: string): readonly LoadPoint[] | undefined {
  return Object.hasOwn(curves, name) ? curves[name] : undefined;
}

/** Says so where the sheet names a curve that the settings don't have, or states a power of the speed as well. */
export function lawFindings(plate: Plate, curves: Settings['loadCurves']): Finding[] {
  const name = plate.loadCurve;
  if (name === undefined) return [];
  if (!pointsOf(curves, name))
    return [OPTIONS.make('load-curve-unknown', { curve: name, known: Object.keys(curves).join(', ') })];
  const { loadTorqueExponent: exponent } = plate;
  return exponent === undefined ? [] : [OPTIONS.make('load-law-twice', { curve: name, exponent })];
}

/** Says so where a speed lies beyond the points of the curve. Units: r/min. */
export function beyondCurve({ curve, speedHeld }: LoadLaw, speeds: readonly number[]): Finding | undefined {
  if (!curve || speedHeld) return undefined;
  const share = speeds.map((speed) => (100 * speed) / curve.ratedSpeed).find((pct) => onCurve(curve.points, pct).beyond);
  return share === undefined
    ? undefined
    : OPTIONS.make('load-curve-left', {
        curve: curve.name,
        speed_pct: share,
        from_pct: curve.points[0]?.speedPct ?? 0,
        to_pct: curve.points.at(-1)?.speedPct ?? 0,
      });
}

/** Power of the speed with which torque goes from one speed (r/min) to another; that of the law where no curve rules. */
export function exponentOf(scope: MotorScope, law: LoadLaw, speed: number, ratio: number): Quantity<'1'> {
  const { curve } = law;
  if (!curve) return law.exponent;
  const value = exponentOnCurve(curve, speed, ratio);
  if (value === undefined) return law.exponent;
  return leaf(scope, {
    value,
    unit: '1',
    label: `mean power of the speed on load curve ${curve.name} between the two speeds`,
    origin: 'derived',
    source: `settings, load_curves.${curve.name}; column load_curve`,
  });
}

function exponentOnCurve({ points, ratedSpeed }: LoadCurve, speed: number, ratio: number): number | undefined {
  const pct = (100 * speed) / ratedSpeed;
  return exponentBetween(points, pct, pct * ratio);
}

/**
 * Speed of a new motor over that of the old one where its torque meets the load.
 *
 * Solves r n = ns (1 − s(P r^(k+1) / Pr)) for r by the secant rule: n and P speed and shaft power of the old motor, ns, s(x) and Pr synchronous
 * speed, slip at a load and rating of the new one, k the torque exponent; with a curve, its mean between the two speeds. The doubt follows by the
 * implicit-function rule; that the curve is entered at a slightly other speed when n moves is left out, being of second order.
 *
 * Units: ratio. Valid for: up to the breakdown torque of the new motor; `undefined` beyond it.
 * Source: exact per-phase circuit; affinity laws; own derivation.
 */
export function speedRatio(
  scope: MotorScope,
  old: OperatingPoint,
  machine: Machine,
  law: LoadLaw,
  conditions: Conditions,
): Quantity<'1'> | undefined {
  const { synchronousSpeed, ratedPower } = machine.plate;
  const n = old.speed.value;
  const { curve } = law;
  const powerAt = curve
    ? (ratio: number) => 1 + (exponentOnCurve(curve, n, ratio) ?? law.exponent.value)
    : () => law.exponent.value + 1;
  const power = powerAt(1);
  const ns = synchronousSpeed.value;
  const at: Terminals = {
    load: 0,
    voltage: conditions.voltageRatio.value,
    frequency: conditions.frequencyRatio ?? 1,
    ambient: conditions.ambient?.value ?? RATED_AMBIENT,
    winding: conditions.windingTemperature?.value,
    hotter: 0,
    negativeSequence: 0,
    near: undefined,
  };
  const loadAt = (ratio: number) => (old.shaftPower.value * ratio ** powerAt(ratio)) / ratedPower.value;
  let near: Solution | undefined;
  const slipAt = (ratio: number): number | undefined => {
    near = solveAtPower(machine.model.circuit, atLoad(at, loadAt(ratio), near));
    return near?.slip;
  };
  let ratio = 1;
  let slope = n;
  let before: { readonly ratio: number; readonly slip: number } | undefined;
  for (let step = 0; step < 30; step++) {
    const slip = slipAt(ratio);
    if (slip === undefined) return undefined;
    // At first slip is taken to go with the load; then the chord through the last two points is as good as the tangent, at half the solves.
    if (!before) slope = n + (ns * slip * power) / ratio;
    else if (Math.abs(ratio - before.ratio) > APART) slope = n + (ns * (slip - before.slip)) / (ratio - before.ratio);
    before = { ratio, slip };
    const change = (ratio * n - ns * (1 - slip)) / slope;
    ratio -= change;
    if (Math.abs(change) < 1e-10) break;
  }
  const perPower = ratio ** powerAt(ratio) / ratedPower.value;
  const loadFraction = new Later('1', loadAt(ratio), () => scaleParts(old.shaftPower.parts, perPower));
  const slip = slipAtLoad(scope, machine, loadFraction, conditions);
  if (!slip) return undefined;
  const found = ratio;
  const bySpeed = slope;
  const quantity = new Later('1', found, () =>
    combineParts([
      [-found / bySpeed, old.speed.parts],
      [(1 - slip.value) / bySpeed, synchronousSpeed.parts],
      [-ns / bySpeed, slip.parts],
    ]),
  );
  return solved(
    scope,
    quantity,
    {
      label: 'speed of the new motor over that of the old one',
      tex: "r\\, n = n_s' \\left(1 - s'(P\\, r^{k+1}/P_r')\\right)",
      residual: Math.abs(ratio * n - ns * (1 - slip.value)) / ns,
      source: 'Slip of the new motor’s circuit; affinity laws of fans and pumps',
    },
    scope.trace
      ? {
          old_speed: old.speed,
          shaft_power: old.shaftPower,
          new_synchronous_speed: synchronousSpeed,
          new_rated_slip: machine.plate.ratedSlip,
          new_rated_power: ratedPower,
          voltage_ratio: conditions.voltageRatio,
          torque_exponent: exponentOf(scope, law, n, ratio),
        }
      : {},
  );
}
