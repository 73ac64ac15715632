import { apply } from '../formula/apply';
import * as B from '../generated/bench';
import * as M from '../generated/machine';
import type { LossSet } from '../machine/model';
import { exact, type Quantity } from '../quantity/quantity';
import { type BenchScope, METER, read } from './meters';
import { type BenchMethod, REFERENCE_COOLANT, WINDAGE_EXPONENT } from './method';
import type { NoLoad } from './no-load';
import { atTemperature, type Winding } from './resistance';
import { slipOf } from './slip';
import type { BenchPoint } from './test';

/** A load point as tested, before the stray-load loss is known. */
export interface TestedPoint {
  readonly row: number;
  readonly voltage: Quantity<'V'>;
  readonly current: Quantity<'A'>;
  readonly inputPower: Quantity<'kW'>;
  readonly speed: Quantity<'r/min'>;
  readonly slip: Quantity<'1'>;
  readonly winding: Winding;
  /** Temperature of the cooling air where it was noted with the point, °C. */
  readonly coolant: Quantity<'K'> | undefined;
  readonly stator: Quantity<'kW'>;
  readonly core: Quantity<'kW'>;
  readonly frictionWindage: Quantity<'kW'>;
  readonly gapPower: Quantity<'kW'>;
  readonly rotor: Quantity<'kW'>;
  /** Of a dynamometer test only. */
  readonly dynamometer?: {
    readonly torque: Quantity<'N m'>;
    readonly torqueSquared: Quantity<'(N m)²'>;
    readonly shaftPower: Quantity<'kW'>;
    readonly residual: Quantity<'W'>;
  };
}

/** A load point brought to the specified temperature, with its efficiency. */
export interface CorrectedPoint {
  readonly tested: TestedPoint;
  readonly temperature: Quantity<'K'>;
  readonly slip: Quantity<'1'>;
  readonly inputPower: Quantity<'kW'>;
  readonly shaftPower: Quantity<'kW'>;
  readonly efficiency: Quantity<'1'>;
  readonly powerFactor: Quantity<'1'>;
  readonly losses: LossSet;
}

interface ToTest {
  readonly point: BenchPoint;
  readonly winding: Winding;
  readonly noLoad: NoLoad;
  readonly method: BenchMethod;
  readonly poles: number;
  readonly frequencyHz: number;
  readonly correction: Quantity<'N m'> | undefined;
}

/**
 * The columns of one load point at the temperature of the test.
 *
 * Units: kW, N·m, r/min, °C. IEEE 112 takes core loss at rated voltage and friction and windage at no load for every load; method 2-1-1B
 * takes core loss at the voltage behind the stator resistance and friction and windage at the speed of the load.
 * `undefined` where the test gives no separated no-load loss. Source: IEEE 112-2017 clauses 5.4 to 5.7, IEC 60034-2-1:2014 clause 6.1.3
 * (both from memory).
 */
export function testedPoint(scope: BenchScope, given: ToTest): TestedPoint | undefined {
  const { point, winding, noLoad, method } = given;
  const voltage = read(scope, METER.voltage, point);
  const current = read(scope, METER.current, point);
  const inputPower = read(scope, METER.power, point);
  const speed = read(scope, METER.speed, point);
  const { separated } = noLoad;
  if (!voltage || !current || !inputPower || !speed || !separated) return undefined;
  const slip = slipOf(scope, speed, point.frequencyHz ?? given.frequencyHz, given.poles);
  const stator = apply(scope, M.stator_loss_from_resistance, { resistance: winding.resistance, current });
  const iec = method.family === 'iec';
  const core = iec ? separated.coreAt(innerVoltage(scope, { voltage, current, inputPower, winding })) : separated.core;
  const frictionWindage = iec
    ? apply(scope, B.windage_at_slip, { no_load: separated.frictionWindage, slip, exponent: exact(WINDAGE_EXPONENT, '1') })
    : separated.frictionWindage;
  const gapPower = apply(scope, B.gap_power, { input_power: inputPower, stator, core });
  const rotor = apply(scope, B.rotor_loss_of_gap, { slip, gap_power: gapPower });
  const coolant = read(scope, METER.ambient, point);
  const tested = {
    row: point.row,
    coolant,
    voltage,
    current,
    inputPower,
    speed,
    slip,
    winding,
    stator,
    core,
    frictionWindage,
    gapPower,
    rotor,
  };
  const shown = method.stray === 'line' ? read(scope, METER.torque, point) : undefined;
  if (!shown) return tested;
  const torque = given.correction ? apply(scope, B.corrected_torque, { shown, correction: given.correction }) : shown;
  const shaftPower = apply(scope, B.shaft_power_from_torque, { torque, speed });
  const residual = apply(scope, B.residual_loss, {
    input_power: inputPower,
    shaft_power: shaftPower,
    stator,
    rotor,
    core,
    friction_windage: frictionWindage,
  });
  return { ...tested, dynamometer: { torque, torqueSquared: apply(scope, B.torque_squared, { torque }), shaftPower, residual } };
}

function innerVoltage(
  scope: BenchScope,
  at: { voltage: Quantity<'V'>; current: Quantity<'A'>; inputPower: Quantity<'kW'>; winding: Winding },
): Quantity<'V'> {
  const { voltage, current } = at;
  const power_factor = apply(scope, B.bench_power_factor, { input_power: at.inputPower, voltage, current });
  return apply(scope, B.inner_voltage, { voltage, current, resistance: at.winding.resistance, power_factor });
}

/** Specified temperature of a point: the test's for IEEE 112; for IEC 60034-2-1 the point's own, moved to the reference coolant. */
export function specifiedAt(
  scope: BenchScope,
  tested: TestedPoint,
  method: BenchMethod,
  specified: Quantity<'K'>,
  coolant: Quantity<'K'>,
): Quantity<'K'> {
  if (method.family === 'ieee') return specified;
  return apply(scope, B.temperature_at_coolant, {
    winding: tested.winding.temperature,
    coolant: tested.coolant ?? coolant,
    reference: exact(REFERENCE_COOLANT, 'K'),
  });
}

interface ToCorrect {
  readonly tested: TestedPoint;
  readonly temperature: Quantity<'K'>;
  readonly stray: Quantity<'kW'>;
  readonly method: BenchMethod;
  readonly rotorConstant: number;
}

/**
 * A load point brought to the specified temperature: stator loss with the resistance, slip with the rotor's conductor, and with them the
 * rotor loss; then shaft power as input less the five losses.
 *
 * Units: kW. IEEE 112 keeps the measured input; IEC 60034-2-1 moves the input by the change of stator and rotor loss.
 * Source: IEEE 112-2017 clause 6.4, IEC 60034-2-1:2014 clause 6.1.3 (both from memory).
 */
export function correctedPoint(scope: BenchScope, given: ToCorrect): CorrectedPoint {
  const { tested, temperature, stray } = given;
  const winding = atTemperature(scope, temperature, tested.winding, given.method.copper);
  const stator = apply(scope, M.stator_loss_from_resistance, { resistance: winding.resistance, current: tested.current });
  const slip = apply(scope, B.slip_at_temperature, {
    slip: tested.slip,
    measured_at: tested.winding.temperature,
    wanted_at: temperature,
    material: exact(given.rotorConstant, 'K'),
  });
  const gap = apply(scope, B.gap_power, { input_power: tested.inputPower, stator, core: tested.core });
  const rotor = apply(scope, B.rotor_loss_of_gap, { slip, gap_power: gap });
  const { core, frictionWindage } = tested;
  const total = apply(scope, M.total_loss, { stator, rotor, core, friction_windage: frictionWindage, stray });
  const inputPower =
    given.method.family === 'ieee'
      ? tested.inputPower
      : apply(scope, B.input_at_reference, {
          input_power: tested.inputPower,
          stator: tested.stator,
          stator_reference: stator,
          rotor: tested.rotor,
          rotor_reference: rotor,
        });
  const shaftPower = apply(scope, B.output_less_losses, { input_power: inputPower, total_loss: total });
  return {
    tested,
    temperature,
    slip,
    inputPower,
    shaftPower,
    efficiency: apply(scope, M.efficiency, { shaft_power: shaftPower, total_loss: total }),
    powerFactor: apply(scope, B.bench_power_factor, {
      input_power: inputPower,
      voltage: tested.voltage,
      current: tested.current,
    }),
    losses: { stator, rotor, core, frictionWindage, stray, total },
  };
}
