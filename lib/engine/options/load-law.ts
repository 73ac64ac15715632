import type { MotorScope } from '../context';
import { solved } from '../formula/apply';
import type { Machine, OperatingPoint } from '../machine/model';
import type { DrivenMachine, Plate } from '../motor';
import { combineParts, exact, type Quantity } from '../quantity/quantity';

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
 * Solves r n = ns (1 − s P r^(k+1) / (Pr u²)) for r by Newton steps: n and P speed and shaft power of the old motor, ns, s and Pr
 * synchronous speed, rated slip and rating of the new one, k the torque exponent, u terminal over rated voltage. The doubt follows by the
 * implicit-function rule.
 *
 * Units: ratio. Valid for: slip in proportion to load, to about 130 % load.
 * Source: slip line of the US DOE fact sheet on motor load and efficiency; affinity laws; own derivation.
 */
export function speedRatio(
  scope: MotorScope,
  old: OperatingPoint,
  machine: Machine,
  law: LoadLaw,
  voltageRatio: Quantity<'1'>,
): Quantity<'1'> {
  const { synchronousSpeed, ratedSlip, ratedPower } = machine.plate;
  const power = law.exponent.value + 1;
  const slip = (ratedSlip.value * old.shaftPower.value) / (ratedPower.value * voltageRatio.value ** 2);
  const n = old.speed.value;
  const ns = synchronousSpeed.value;
  let ratio = 1;
  let residual = 0;
  let slope = n;
  for (let step = 0; step < 30; step++) {
    residual = ratio * n - ns * (1 - slip * ratio ** power);
    slope = n + ns * slip * power * ratio ** (power - 1);
    const change = residual / slope;
    ratio -= change;
    if (Math.abs(change) < 1e-13) break;
  }
  const drop = ns * slip * ratio ** power;
  const quantity: Quantity<'1'> = {
    unit: '1',
    value: ratio,
    parts: combineParts([
      [-ratio / slope, old.speed.parts],
      [(1 - slip * ratio ** power) / slope, synchronousSpeed.parts],
      [-drop / ratedSlip.value / slope, ratedSlip.parts],
      [old.shaftPower.value === 0 ? 0 : -drop / old.shaftPower.value / slope, old.shaftPower.parts],
      [(2 * drop) / voltageRatio.value / slope, voltageRatio.parts],
    ]),
  };
  return solved(
    scope,
    quantity,
    {
      label: 'speed of the new motor over that of the old one',
      tex: "r\\, n = n_s' \\left(1 - s' \\frac{P\\, r^{k+1}}{P_r' u^2}\\right)",
      residual: Math.abs(residual) / ns,
      source: 'Slip in proportion to load; affinity laws of fans and pumps',
    },
    scope.trace
      ? {
          old_speed: old.speed,
          shaft_power: old.shaftPower,
          new_synchronous_speed: synchronousSpeed,
          new_rated_slip: ratedSlip,
          new_rated_power: ratedPower,
          voltage_ratio: voltageRatio,
          torque_exponent: law.exponent,
        }
      : {},
  );
}
