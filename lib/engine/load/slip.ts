import { apply } from '../formula/apply';
import * as L from '../generated/load';
import * as N from '../generated/nameplate';
import { withDoubt } from '../machine/observation';
import { exact } from '../quantity/quantity';
import { invert, type Measurable, sideOf } from './invert';
import type { LoadMethod } from './method';
import { slipModel } from './model-doubt';

const SLIP: Measurable = {
  of: 'slip',
  logarithm: false,
  label: 'Load at which the machine slips as measured',
  tex: 's(x) = 1 - n / n_s',
};

/**
 * Load by slip: the load at which the machine of the plate slips as measured, at its voltage, frequency and temperature.
 *
 * Needs the shaft speed to 1 r/min and a stamped speed; frequency and voltage when read. Valid for cage motors on the line, 20 to 120 % load.
 * The doubt is mostly that of the stamped slip: 20 % as tolerance, and its rounding. The published form divides the slips and allows for the
 * square of the voltage; it serves as the first guess.
 * Source: US DOE fact sheet on motor load and efficiency, slip method with voltage (from memory).
 */
export const slipMethod: LoadMethod = {
  id: 'slip',
  title: 'Slip',
  needs: ['shaft_speed_rpm', 'rated_speed_rpm'],
  validity: 'Cage motors on the line between about 20 and 120 % load, with a stamped speed.',
  source: 'US DOE fact sheet on motor load and efficiency, slip method with voltage (from memory); NEMA MG 1 12.46',
  page: 'methods/load-by-slip.md',
  estimate(scope, { machine, metered }) {
    const missing: string[] = [];
    if (!metered.speed) missing.push('shaft_speed_rpm');
    if (machine.plate.origins.speed !== 'stamped') missing.push('rated_speed_rpm');
    if (!metered.speed || missing.length > 0) return { missing, why: [], findings: [] };
    const plain = apply(scope, L.load_from_slip, {
      synchronous_speed: metered.synchronousSpeed,
      shaft_speed: metered.speed,
      rated_synchronous_speed: apply(scope, N.synchronous_speed, {
        frequency: machine.plate.ratedFrequency,
        poles: exact(machine.plate.poles, 'pole'),
      }),
      rated_speed: machine.plate.ratedSpeed,
      voltage: metered.voltage ?? machine.plate.ratedVoltage,
      rated_voltage: machine.plate.ratedVoltage,
    });
    const measured = withDoubt(
      scope,
      apply(scope, N.slip_fraction, { synchronous_speed: metered.synchronousSpeed, shaft_speed: metered.speed }),
      `row ${metered.row}:model:slip`,
      'skin effect and straight parts of the model',
      slipModel(1 - metered.speed.value / metered.synchronousSpeed.value),
    );
    const loadFraction = invert(scope, machine, metered, measured, SLIP, plain.value);
    return {
      loadFraction,
      outOfRange: loadFraction
        ? undefined
        : sideOf(machine, metered, 'slip', 1 - metered.speed.value / metered.synchronousSpeed.value),
      missing: [],
      why: [
        `plain ratio of slips ${(plain.value * 100).toFixed(0)} %`,
        ...(metered.voltage ? [] : ['voltage not read: slip goes with its square']),
      ],
      findings: [],
    };
  },
};
