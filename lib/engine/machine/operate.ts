import type { MotorScope } from '../context';
import { apply, leaf } from '../formula/apply';
import * as M from '../generated/machine';
import * as N from '../generated/nameplate';
import { exact, type Quantity } from '../quantity/quantity';
import type { LossSet, Machine, OperatingPoint } from './model';

/** Constant of copper in the temperature rule of resistance, as a temperature. */
export const COPPER = 234.5;

/** Conditions of an operating point beside its load. */
export interface Conditions {
  /** Terminal voltage over rated voltage; 1 when not known. */
  readonly voltageRatio: Quantity<'1'>;
  /** Winding temperature in °C when it was measured (resistance or embedded detector). */
  readonly windingTemperature?: Quantity<'K'> | undefined;
  /** Ambient temperature in °C; 25 assumed when not measured. */
  readonly ambient?: Quantity<'K'> | undefined;
}

/** Ambient temperature where none was read: 25 °C with 6 K of doubt (common practice). */
export function assumedAmbient(scope: MotorScope): Quantity<'K'> {
  return leaf(scope, {
    value: 25,
    unit: 'K',
    label: 'ambient temperature, °C',
    origin: 'assumed',
    source: 'common practice: 25 °C where no ambient was read',
    doubts: [{ id: 'ambient', label: 'ambient temperature assumed', u: 6 }],
  });
}

/**
 * Losses, input, efficiency and speed of a machine at a load.
 *
 * Units: load fraction 1 = rated output; losses in kW.
 * Valid for: 0 to about 130 % load, terminal voltage within 10 % of rated, sinusoidal supply.
 * Source: the five losses of IEEE 112-2017 clause 5 and IEC 60034-2-1 clause 6, each scaled as its formula sheet says.
 */
export function operatingPoint(
  scope: MotorScope,
  machine: Machine,
  loadFraction: Quantity<'1'>,
  conditions: Conditions,
): OperatingPoint {
  const { plate } = machine;
  const voltageRatio = conditions.voltageRatio;
  const shaftPower = apply(scope, M.shaft_power_at_load, { load_fraction: loadFraction, rated_power: plate.ratedPower });
  const slip = apply(scope, M.slip_at_load, {
    rated_slip: plate.ratedSlip,
    load_fraction: loadFraction,
    voltage_ratio: voltageRatio,
  });
  const losses = lossesAt(scope, machine, { loadFraction, shaftPower, slip }, conditions);
  return {
    loadFraction,
    shaftPower,
    slip,
    losses,
    inputPower: apply(scope, M.input_power, { shaft_power: shaftPower, total_loss: losses.total }),
    efficiency: apply(scope, M.efficiency, { shaft_power: shaftPower, total_loss: losses.total }),
    speed: apply(scope, N.speed_from_slip, { synchronous_speed: plate.synchronousSpeed, slip }),
  };
}

function lossesAt(
  scope: MotorScope,
  machine: Machine,
  point: { loadFraction: Quantity<'1'>; shaftPower: Quantity<'kW'>; slip: Quantity<'1'> },
  conditions: Conditions,
): LossSet {
  const { plate, rated } = machine;
  const load_fraction = point.loadFraction;
  const voltage_ratio = conditions.voltageRatio;
  const temperature =
    conditions.windingTemperature ??
    apply(scope, M.winding_temperature, {
      ambient: conditions.ambient ?? assumedAmbient(scope),
      rise: machine.ratedRise,
      load_fraction,
      magnetising_share: plate.magnetisingShare,
    });
  const stator = apply(scope, M.stator_loss_at_load, {
    rated_stator_loss: rated.stator,
    current_ratio_squared: apply(scope, M.current_ratio_squared, {
      load_fraction,
      magnetising_share: plate.magnetisingShare,
      voltage_ratio,
    }),
    temperature,
    reference_temperature: machine.referenceTemperature,
    material: exact(COPPER, 'K'),
  });
  const core = apply(scope, M.core_loss_at_voltage, { rated_core_loss: rated.core, voltage_ratio });
  const stray = apply(scope, M.stray_loss_at_load, { rated_stray_loss: rated.stray, load_fraction, voltage_ratio });
  const frictionWindage = rated.frictionWindage;
  const rotor = apply(scope, M.rotor_loss, {
    slip: point.slip,
    shaft_power: point.shaftPower,
    friction_windage: frictionWindage,
    stray,
  });
  const total = apply(scope, M.total_loss, { stator, rotor, core, friction_windage: frictionWindage, stray });
  return { stator, rotor, core, frictionWindage, stray, total };
}
