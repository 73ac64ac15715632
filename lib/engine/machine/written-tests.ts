import type { MotorScope } from '../context';
import type { Plate } from '../motor';
import { PLATE } from '../nameplate/findings';
import type { Finding } from '../quantity/finding';
import type { Quantity } from '../quantity/quantity';
import type { CompletedPlate } from './model';
import { type Observation, observation, testedLogarithm, withDoubt } from './observation';
import { resistanceDoubt } from './resistance-doubt';
import type { Bases } from './test-evidence';

/** What a test that is written with the plate says of the machine, or why it cannot be so; nothing where there was none. */
type WrittenTest = (
  scope: MotorScope,
  plate: Plate,
  completed: CompletedPlate,
  bases: Bases,
  /** At rated load. */
  totalLossKw: number,
) => Observation | Finding | undefined;

const windingResistance: WrittenTest = (scope, plate, completed, bases, totalLossKw) => {
  if (plate.statorResistanceOhm === undefined) return undefined;
  const temperature = plate.statorResistanceTempC ?? 25;
  const perPhase = plate.statorResistanceOhm / 2;
  const statorLoss = (3 * perPhase * 1.2 * completed.ratedCurrent.value ** 2) / 1000;
  const rest = withoutRotor(completed, totalLossKw);
  if (statorLoss > 0.95 * rest || statorLoss < 0.08 * rest)
    return PLATE.make('resistance-contradicts-plate', { stator_loss: statorLoss, rest });
  const source = `resistance between terminals, as entered, at ${temperature} °C`;
  const value = testedLogarithm(scope, perPhase / bases.impedanceOhm, 'stator resistance', source, {
    id: 'test:resistance',
    label: 'measurement of the resistance and its temperature',
    u: resistanceDoubt(plate),
  });
  return observation('measured_resistance', true, { of: 'resistance', temperature }, value);
};

const friction: WrittenTest = (scope, { frictionWindageKw }, _, bases, totalLossKw) => {
  if (frictionWindageKw === undefined) return undefined;
  if (frictionWindageKw >= totalLossKw * 0.5)
    return PLATE.make('plate-value-impossible', { column: 'friction_windage_kw', value: frictionWindageKw });
  const value = testedLogarithm(scope, frictionWindageKw / bases.powerKw, 'friction and windage', 'test, as entered', {
    id: 'test:friction',
    label: 'test of friction and windage',
    u: 0.1,
  });
  return observation('measured_friction', true, { of: 'friction' }, value);
};

const freeCurrent: WrittenTest = (scope, plate, completed, bases) => {
  const voltage = freeVoltage(plate);
  const current = plate.noLoadCurrentA;
  if (voltage === undefined || current === undefined) return undefined;
  const share = current / completed.ratedCurrent.value / voltage;
  if (!(share > 0.1 && share < 0.9)) return PLATE.make('plate-value-impossible', { column: 'no_load_current_a', value: current });
  const value = testedLogarithm(scope, current / bases.currentA, 'no-load current', 'uncoupled test', {
    id: 'test:no-load-current',
    label: 'reading of the no-load current',
    u: 0.015,
  });
  return observation('no_load_current', true, { of: 'free-current', voltage }, atVoltage(scope, plate, value, 0.05));
};

const freeInput: WrittenTest = (scope, plate, completed, bases, totalLossKw) => {
  const voltage = freeVoltage(plate);
  const input = plate.noLoadPowerKw;
  if (voltage === undefined || input === undefined) return undefined;
  const rest = withoutRotor(completed, totalLossKw);
  const current = plate.noLoadCurrentA;
  const stator = current === undefined ? 0 : 0.4 * rest * (current / completed.ratedCurrent.value) ** 2;
  if (input - stator < 0.08 * rest || input > 1.05 * rest)
    return PLATE.make('no-load-contradicts-plate', { no_load_loss: input - stator, rest });
  const value = testedLogarithm(scope, input / bases.powerKw, 'no-load input', 'uncoupled test', {
    id: 'test:no-load-power',
    label: 'reading of the no-load power',
    u: 0.03,
  });
  return observation('no_load_power', true, { of: 'free-input', voltage }, atVoltage(scope, plate, value, 0.06));
};

/** Tests of this very motor: winding resistance, friction and windage, current and input of an uncoupled run. */
export const WRITTEN_TESTS: readonly WrittenTest[] = [windingResistance, friction, freeCurrent, freeInput];

/** The plate without the test values that a bench test measured anew. */
export function withoutTested(plate: Plate, byTest: readonly Observation[]): Plate {
  if (byTest.length === 0) return plate;
  const has = (name: string): boolean => byTest.some((each) => each.name === `tested_${name}`);
  return {
    ...plate,
    ...(has('resistance') && { statorResistanceOhm: undefined }),
    ...((has('friction') || has('constant')) && { frictionWindageKw: undefined, noLoadPowerKw: undefined }),
    ...(has('no_load_current') && { noLoadCurrentA: undefined }),
  };
}

/** Rated loss without that of the rotor, kW. */
function withoutRotor({ ratedSlip, ratedPower }: CompletedPlate, totalLossKw: number): number {
  return totalLossKw - ratedSlip.value * ratedPower.value;
}

/** Voltage of the uncoupled run over the rated one; nothing where it is too far from it to tell of the motor in service. */
function freeVoltage({ noLoadVoltageV, ratedVoltageV }: Plate): number | undefined {
  const voltage = (noLoadVoltageV ?? ratedVoltageV) / ratedVoltageV;
  return voltage < 0.3 || voltage > 1.25 ? undefined : voltage;
}

/** A value of the uncoupled run, with a doubt of `u` where its voltage was not written down. */
function atVoltage(scope: MotorScope, { noLoadVoltageV }: Plate, value: Quantity<'1'>, u: number): Quantity<'1'> {
  if (noLoadVoltageV !== undefined) return value;
  return withDoubt(scope, value, 'test:no-load-voltage', 'voltage of the uncoupled test', u);
}
