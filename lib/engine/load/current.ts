import { apply } from '../formula/apply';
import * as L from '../generated/load';
import { LOAD } from './findings';
import type { LoadMethod } from './method';
import { withModelSpread } from './spread';

/** Saturation and the square law of the phasor sum leave about 4 points (common practice). */
const MODEL_SPREAD = 0.04;

/**
 * Load by current: the published ratio of amperes with the magnetising current taken out.
 *
 * Needs the line current, and the rated current by stamp or derivation. Its own sensitivity grows as the current nears the magnetising
 * current, so that below half load the estimate widens by itself and loses its weight.
 * Source: US DOE fact sheet on motor load and efficiency, current method (from memory); phasor sum of the equivalent circuit.
 */
export const currentMethod: LoadMethod = {
  id: 'current',
  title: 'Current',
  needs: ['current_a'],
  validity: 'Above about half load; below it the interval widens until the estimate says nothing.',
  source: 'US DOE fact sheet on motor load and efficiency, current method (from memory)',
  page: 'methods/load-by-current.md',
  estimate(scope, { machine, metered }) {
    const { current } = metered;
    if (!current) return { missing: ['current_a'], why: [], findings: [] };
    const voltage = metered.voltage ?? machine.plate.ratedVoltage;
    const given = { current, rated_current: machine.plate.ratedCurrent, voltage, rated_voltage: machine.plate.ratedVoltage };
    const ratio = apply(scope, L.load_from_current_ratio, given);
    const why = [`plain ratio of amperes ${(ratio.value * 100).toFixed(1)} %`];
    const magnetising =
      machine.plate.magnetisingShare.value *
      machine.plate.ratedCurrent.value *
      (voltage.value / machine.plate.ratedVoltage.value);
    if (current.value <= magnetising * 1.02) {
      return {
        missing: [],
        why: [...why, 'current not above the magnetising current'],
        findings: [LOAD.make('current-below-magnetising', { row: metered.row, current: current.value, magnetising })],
      };
    }
    const load = apply(scope, L.load_from_current, { ...given, magnetising_share: machine.plate.magnetisingShare });
    return {
      loadFraction: withModelSpread(
        scope,
        load,
        `row ${metered.row}:model:current`,
        'saturation and the phasor sum',
        MODEL_SPREAD,
      ),
      missing: [],
      why,
      findings: ratio.value < 0.6 ? [LOAD.make('current-low-load', { row: metered.row, ratio: ratio.value })] : [],
    };
  },
};
