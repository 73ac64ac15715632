import { RATED_AMBIENT } from '../circuit/parameters';
import { atLoad, type Solution, solveAtPower, type Terminals } from '../circuit/solve';
import type { MotorScope } from '../context';
import { solved } from '../formula/apply';
import type { Machine, OperatingPoint } from '../machine/model';
import { type Conditions, slipAtLoad } from '../machine/operate';
import type { DrivenMachine, Plate } from '../motor';
import { combineParts, exact, Later, type Quantity, scaleParts } from '../quantity/quantity';

/** Two speed ratios nearer than this tell no slope: rounding would rule it. */
const APART = 1e-5;

/** How the driven machine answers to another speed. */
export interface LoadLaw {
  /** Torque goes with speed to this power. */
  readonly exponent: Quantity<'1'>;
  /** True when a drive holds the speed: the new motor gives the same shaft power. */
  readonly speedHeld: boolean;
  /** True when the flow is made by running and stopping: a faster motor runs for less time. */
  readonly onOff: boolean;
}

const TURBO: ReadonlySet<DrivenMachine> = new Set(['pump', 'fan', 'blower', 'mixer']);

/** The load law of a motor's driven machine: as stated, else torque with the square of speed for pumps, fans, blowers and mixers, else constant. */
export function loadLaw(plate: Plate): LoadLaw {
  const turbo = plate.drivenMachine !== undefined && TURBO.has(plate.drivenMachine);
  return {
    exponent: exact(plate.loadTorqueExponent ?? (turbo ? 2 : 0), '1'),
    speedHeld: plate.flowControl === 'drive' || plate.driveFed === true,
    onOff: plate.flowControl === 'on-off',
  };
}

/**
 * Speed of a new motor over that of the old one where its torque meets the load.
 *
 * Solves r n = ns (1 − s(P r^(k+1) / Pr)) for r by the secant rule: n and P speed and shaft power of the old motor, ns, s(x) and Pr synchronous
 * speed, slip at a load and rating of the new one, k the torque exponent. The doubt follows by the implicit-function rule.
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
  const power = law.exponent.value + 1;
  const n = old.speed.value;
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
  const loadAt = (ratio: number) => (old.shaftPower.value * ratio ** power) / ratedPower.value;
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
    if (Math.abs(change) < 1e-8) break;
  }
  const perPower = ratio ** power / ratedPower.value;
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
          torque_exponent: law.exponent,
        }
      : {},
  );
}
