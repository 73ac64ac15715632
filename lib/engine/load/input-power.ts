import type { MotorScope } from '../context';
import { apply, leaf, solved } from '../formula/apply';
import * as L from '../generated/load';
import * as N from '../generated/nameplate';
import type { Machine } from '../machine/model';
import { type Conditions, operatingPoint } from '../machine/operate';
import { withoutDoubt } from '../machine/without-doubt';
import { combineParts, exact, type Quantity, Sources } from '../quantity/quantity';
import type { LoadMethod } from './method';

/**
 * Load by input power: the load at which the shaft power and the five losses add up to the measured input.
 *
 * Needs input power (or volts, amperes and power factor). Valid from no load to about 150 %; its doubt is that of the meter and of the
 * losses. The published form divides the measured by the rated input; it serves as the first guess, and the balance of losses takes out
 * its error at part load.
 * Source: US DOE fact sheet on motor load and efficiency (from memory); energy balance of IEEE 112-2017.
 */
export const inputPowerMethod: LoadMethod = {
  id: 'input-power',
  title: 'Input power',
  needs: ['input_power_kw'],
  validity: 'No load to about 150 % load; three-phase power, or volts, amperes and power factor.',
  source: 'US DOE fact sheet on motor load and efficiency, input power method (from memory); losses after IEEE 112-2017',
  page: 'methods/load-by-input-power.md',
  estimate(scope, { machine, metered }) {
    const { inputPower } = metered;
    if (!inputPower) return { missing: ['input_power_kw'], why: [], findings: [] };
    const conditions: Conditions = {
      voltageRatio: metered.voltageRatio,
      windingTemperature: metered.windingTemperature,
      ambient: metered.ambient,
    };
    const ratio = apply(scope, L.load_from_input_ratio, {
      input_power: inputPower,
      rated_input_power: apply(scope, N.rated_input_power, {
        rated_power: machine.plate.ratedPower,
        efficiency: machine.plate.efficiency,
      }),
    });
    const loadFraction = balanceLoad(scope, machine, inputPower, ratio.value, conditions);
    return { loadFraction, missing: [], why: [`plain ratio of inputs ${(ratio.value * 100).toFixed(1)} %`], findings: [] };
  },
};

/** Spread of the loss model itself beside its parameters, in load fraction (common practice). */
const MODEL_SPREAD = 0.004;

/**
 * Solves `shaft power + losses = input power` for the load fraction, by Newton steps on the exact model, and carries the doubts by the
 * implicit-function rule: every doubt of the losses at this load counts against that of the meter, over the slope of input against load.
 */
export function balanceLoad(
  scope: MotorScope,
  machine: Machine,
  inputPower: Quantity<'kW'>,
  guess: number,
  conditions: Conditions,
): Quantity<'1'> {
  const quiet: MotorScope = { ...scope, sources: new Sources(), trace: undefined };
  const bare = withoutDoubt(machine);
  const calm: Conditions = {
    voltageRatio: exact(conditions.voltageRatio.value, '1'),
    windingTemperature: conditions.windingTemperature && exact(conditions.windingTemperature.value, 'K'),
    ambient: exact(conditions.ambient?.value ?? 25, 'K'),
  };
  const inputAt = (x: number) => operatingPoint(quiet, bare, exact(x, '1'), calm).inputPower.value;
  const rated = machine.plate.ratedPower.value;
  let x = guess;
  let slope = rated;
  let residual = Number.POSITIVE_INFINITY;
  for (let i = 0; i < 12; i++) {
    const at = inputAt(x);
    residual = at - inputPower.value;
    slope = (inputAt(x + 1e-4) - at) / 1e-4;
    if (Math.abs(residual) < 1e-11 * rated) break;
    x -= residual / slope;
  }
  const model = operatingPoint({ ...scope, trace: undefined }, machine, exact(x, '1'), conditions).inputPower;
  const spread = leaf(
    { sources: scope.sources },
    {
      value: 0,
      unit: '1',
      label: 'loss model',
      origin: 'assumed',
      source: 'common practice',
      doubts: [{ id: 'model:losses', label: 'simplifications of the loss model', u: MODEL_SPREAD }],
    },
  );
  const result: Quantity<'1'> = {
    unit: '1',
    value: x,
    parts: combineParts([
      [1 / slope, inputPower.parts],
      [-1 / slope, model.parts],
      [1, spread.parts],
    ]),
  };
  return solved(
    scope,
    result,
    {
      label: 'Load at which shaft power and losses add up to the measured input',
      tex: 'x P_r + P_1(x) + P_2(x) + P_{fe} + P_{fw} + P_{LL}(x) = P_{in}',
      residual: residual / rated,
      source: 'Energy balance; losses after IEEE 112-2017 clause 5',
    },
    {
      input_power: inputPower,
      rated_power: machine.plate.ratedPower,
      stator_loss_rated: machine.rated.stator,
      rotor_loss_rated: machine.rated.rotor,
      core_loss_rated: machine.rated.core,
      friction_windage: machine.rated.frictionWindage,
      stray_loss_rated: machine.rated.stray,
      voltage_ratio: conditions.voltageRatio,
    },
  );
}
