import { apply } from '../formula/apply';
import * as L from '../generated/load';
import { logarithm, withDoubt } from '../machine/observation';
import { LOAD } from './findings';
import { freeRunning, invert, type Measurable } from './invert';
import type { LoadMethod } from './method';
import { CURRENT_MODEL } from './model-doubt';

const CURRENT: Measurable = {
  of: 'current',
  logarithm: true,
  label: 'Load at which the machine draws the measured current',
  tex: 'I_1(x) = I',
};

/**
 * Load by current: the load at which the machine of the plate draws the measured current at its voltage.
 *
 * Needs the line current, and the rated current or power factor by stamp; typical reactive current widens it much. Its own sensitivity grows
 * as the current nears the magnetising current, so that below half load the estimate widens by itself and loses its weight.
 * Source: US DOE fact sheet on motor load and efficiency, current method (from memory); exact per-phase circuit.
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
    const { plate, model } = machine;
    const ratio = apply(scope, L.load_from_current_ratio, {
      current,
      rated_current: plate.ratedCurrent,
      voltage: metered.voltage ?? plate.ratedVoltage,
      rated_voltage: plate.ratedVoltage,
    });
    const why = [`plain ratio of amperes ${(ratio.value * 100).toFixed(1)} %`];
    const free = freeRunning(machine, metered);
    const magnetising = (free?.current ?? 0) * model.base.currentA;
    if (current.value <= magnetising * 1.01) {
      return {
        missing: [],
        why: [...why, 'current not above that of free running'],
        findings: [LOAD.make('current-below-magnetising', { row: metered.row, current: current.value, magnetising })],
      };
    }
    const measured = withDoubt(
      scope,
      logarithm(scope, current, model.base.currentA, 'line current'),
      `row ${metered.row}:model:current`,
      'saturation and what the circuit leaves out',
      CURRENT_MODEL,
    );
    const loadFraction = invert(scope, machine, metered, measured, CURRENT, ratio.value);
    return {
      loadFraction,
      outOfRange: loadFraction ? undefined : 'above',
      missing: [],
      why,
      findings: ratio.value < 0.6 ? [LOAD.make('current-low-load', { row: metered.row, ratio: ratio.value })] : [],
    };
  },
};
