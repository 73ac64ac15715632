import { apply } from '../formula/apply';
import * as B from '../generated/bench';
import * as M from '../generated/machine';
import type { Quantity } from '../quantity/quantity';
import { type BenchScope, METER, read } from './meters';
import type { BenchMethod } from './method';
import type { NoLoad } from './no-load';
import { atTemperature, type Winding, windingAt } from './resistance';
import { slipOf } from './slip';
import type { BenchPoint } from './test';

interface Given {
  readonly points: readonly BenchPoint[];
  readonly noLoad: NoLoad;
  readonly method: BenchMethod;
  readonly reference: Winding;
  readonly fallback: Quantity<'K'>;
  readonly poles: number;
  readonly frequencyHz: number;
}

/**
 * Torque that the dynamometer does not show: its own friction and that of the coupling.
 *
 * Units: N·m. Coupled at the lowest dynamometer torque the motor develops T_A, uncoupled T_B; what is left of T_A when T_B and the torque
 * shown are taken off is missing from every reading. Without an uncoupled row T_B is the friction and windage of the no-load test.
 * `undefined` where the section is empty. Source: IEEE 112-2017 clause 5.6.1 (from memory).
 */
export function dynamometerCorrection(scope: BenchScope, given: Given): Quantity<'N m'> | undefined {
  const { points, noLoad } = given;
  const coupled = points.find((point) => point.torqueNm !== undefined);
  const developed = coupled && developedTorque(scope, coupled, given);
  const shown = coupled && read(scope, METER.torque, coupled);
  if (!developed || !shown || !noLoad.separated) return undefined;
  const free = points.find((point) => point.torqueNm === undefined);
  const uncoupled =
    (free && developedTorque(scope, free, given)) ??
    apply(scope, B.torque_from_power, { power: noLoad.separated.frictionWindage, speed: developed.speed });
  return apply(scope, B.dynamometer_correction, {
    coupled: developed.torque,
    uncoupled: 'torque' in uncoupled ? uncoupled.torque : uncoupled,
    shown,
  });
}

function developedTorque(scope: BenchScope, point: BenchPoint, given: Given) {
  const [voltage, current, inputPower, speed] = [
    read(scope, METER.voltage, point),
    read(scope, METER.current, point),
    read(scope, METER.power, point),
    read(scope, METER.speed, point),
  ];
  if (!voltage || !current || !inputPower || !speed || !given.noLoad.separated) return undefined;
  const winding =
    windingAt(scope, point, given.reference, given.method.copper) ??
    atTemperature(scope, given.fallback, given.reference, given.method.copper);
  const stator = apply(scope, M.stator_loss_from_resistance, { resistance: winding.resistance, current });
  const gap_power = apply(scope, B.gap_power, { input_power: inputPower, stator, core: given.noLoad.separated.coreAt(voltage) });
  const slip = slipOf(scope, speed, point.frequencyHz ?? given.frequencyHz, given.poles);
  const power = apply(scope, B.developed_power, { slip, gap_power });
  return { torque: apply(scope, B.torque_from_power, { power, speed }), speed };
}
