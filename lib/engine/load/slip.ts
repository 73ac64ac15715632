import { apply } from '../formula/apply';
import * as L from '../generated/load';
import * as N from '../generated/nameplate';
import { exact } from '../quantity/quantity';
import type { LoadMethod } from './method';
import { withModelSpread } from './spread';

/** Rotor temperature moves slip by about a tenth between cold and hot; taken as 6 % of the load plus a point (common practice). */
const RELATIVE_SPREAD = 0.06;
const ABSOLUTE_SPREAD = 0.01;

/**
 * Load by slip: measured slip over stamped slip, with the voltage allowed for.
 *
 * Needs the shaft speed to 1 r/min and a stamped speed; frequency and voltage when read. Valid for cage motors on the line, 20 to 120 % load.
 * The doubt is mostly that of the stamped slip: 20 % as tolerance, and its rounding.
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
    const u = Math.hypot(RELATIVE_SPREAD * plain.value, ABSOLUTE_SPREAD, metered.voltage ? 0 : 0.06 * plain.value);
    return {
      loadFraction: withModelSpread(
        scope,
        plain,
        `row ${metered.row}:model:slip`,
        'rotor temperature and the straight line of slip against load',
        u,
      ),
      missing: [],
      why: metered.voltage ? [] : ['voltage not read: slip goes with its square'],
      findings: [],
    };
  },
};
