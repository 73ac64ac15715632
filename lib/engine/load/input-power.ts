import { apply } from '../formula/apply';
import * as L from '../generated/load';
import * as N from '../generated/nameplate';
import { logarithm, withDoubt } from '../machine/observation';
import { invert, type Measurable, sideOf } from './invert';
import type { LoadMethod } from './method';
import { INPUT_MODEL } from './model-doubt';

const INPUT: Measurable = {
  of: 'input',
  logarithm: true,
  label: 'Load at which the machine takes the measured input',
  tex: 'x P_r + P_1(x) + P_2(x) + P_{fe}(x) + P_{fw}(x) + P_{LL}(x) = P_{in}',
};

/**
 * Load by input power: the load at which the machine of the plate takes the measured input.
 *
 * Needs input power (or volts, amperes and power factor). Valid from free running to about 150 %; its doubt is that of the meter and of the
 * losses. The published form divides the measured by the rated input; it serves as the first guess.
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
    const ratio = apply(scope, L.load_from_input_ratio, {
      input_power: inputPower,
      rated_input_power: apply(scope, N.rated_input_power, {
        rated_power: machine.plate.ratedPower,
        efficiency: machine.plate.efficiency,
      }),
    });
    const measured = withDoubt(
      scope,
      logarithm(scope, inputPower, machine.model.base.powerKw, 'input power'),
      `row ${metered.row}:model:input`,
      'what the circuit leaves out of the input',
      INPUT_MODEL,
    );
    const loadFraction = invert(scope, machine, metered, measured, INPUT, ratio.value);
    return {
      loadFraction,
      outOfRange: loadFraction ? undefined : sideOf(machine, metered, 'input', inputPower.value / machine.model.base.powerKw),
      missing: [],
      why: [`plain ratio of inputs ${(ratio.value * 100).toFixed(1)} %`],
      findings: [],
    };
  },
};
