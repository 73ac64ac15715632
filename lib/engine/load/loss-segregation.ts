import { COPPER } from '../circuit/copper';
import { apply, leaf } from '../formula/apply';
import * as L from '../generated/load';
import * as M from '../generated/machine';
import * as N from '../generated/nameplate';
import { operatingPoint } from '../machine/operate';
import { resistanceDoubt } from '../machine/resistance-doubt';
import { exact } from '../quantity/quantity';
import type { LoadMethod } from './method';

/**
 * Load by segregated losses: the measured input less the losses, each from what was measured of it.
 *
 * Stator loss from the measured resistance and current, rotor loss from the measured slip; core loss and friction and windage from an
 * uncoupled run or a test where there is one, else typical; stray-load loss typical.
 * Needs input power, current, speed and the winding's resistance. Valid from about 25 % load.
 * Source: IEEE 112-2017 methods E and E1; IEC 60034-2-1 method 2-1-1C (segregation with assigned stray-load loss).
 */
export const lossSegregationMethod: LoadMethod = {
  id: 'loss-segregation',
  title: 'Segregated losses',
  needs: ['input_power_kw', 'current_a', 'shaft_speed_rpm', 'stator_resistance_ohm'],
  validity: 'From about 25 % load, on the line, with a measured winding resistance.',
  source: 'IEEE 112-2017 methods E and E1; IEC 60034-2-1',
  page: 'methods/load-by-losses.md',
  estimate(scope, { machine, metered, plate }) {
    const missing: string[] = [];
    const { inputPower, current, speed } = metered;
    const resistance = plate.statorResistanceOhm;
    if (!inputPower) missing.push('input_power_kw');
    if (!current) missing.push('current_a');
    if (!speed) missing.push('shaft_speed_rpm');
    if (resistance === undefined) missing.push('stator_resistance_ohm');
    if (!inputPower || !current || !speed || resistance === undefined) return { missing, why: [], findings: [] };
    const about = Math.max(0.05, inputPower.value / machine.model.base.powerKw / 1.08 - 0.03);
    const point = operatingPoint(scope, machine, exact(about, '1'), {
      voltageRatio: metered.voltageRatio,
      windingTemperature: metered.windingTemperature,
      ambient: metered.ambient,
      frequencyRatio: metered.frequencyRatio,
    });
    if (!point) return { missing: [], why: ['beyond the breakdown torque'], findings: [] };
    const hot = apply(scope, M.resistance_at_temperature, {
      resistance: leaf(scope, {
        value: resistance,
        unit: 'Ω',
        label: 'resistance between terminals',
        origin: 'metered',
        source: 'mean of the three pairs, as entered',
        doubts: [
          {
            id: 'test:resistance',
            label: 'measurement of the resistance and its temperature',
            u: resistanceDoubt(plate) * resistance,
          },
        ],
      }),
      measured_at: exact(plate.statorResistanceTempC ?? 25, 'K'),
      wanted_at: point.windingTemperature,
      material: exact(COPPER, 'K'),
    });
    const shaft = apply(scope, L.shaft_power_by_losses, {
      input_power: inputPower,
      stator: apply(scope, M.stator_loss_from_resistance, { resistance: hot, current }),
      core: point.losses.core,
      slip: apply(scope, N.slip_fraction, { synchronous_speed: metered.synchronousSpeed, shaft_speed: speed }),
      friction_windage: point.losses.frictionWindage,
      stray: point.losses.stray,
    });
    const known = [
      'stator loss by measured resistance, rotor loss by slip',
      plate.noLoadPowerKw !== undefined ? 'core loss by the uncoupled run' : 'core loss typical',
      plate.frictionWindageKw !== undefined ? 'friction and windage by test' : 'friction and windage typical',
    ];
    return {
      loadFraction: apply(scope, L.load_fraction, { shaft_power: shaft, rated_power: machine.plate.ratedPower }),
      missing: [],
      why: known,
      findings: [],
    };
  },
};
