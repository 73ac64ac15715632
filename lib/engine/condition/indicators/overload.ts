import { apply } from '../../formula/apply';
import * as C from '../../generated/condition';
import { exact } from '../../quantity/quantity';
import type { Indicator } from '../indicator';
import { words } from './shared';

/** Load against the service factor: above rating `near`, above rating times service factor `beyond`. Source: NEMA MG 1 1.42. */
export const overload: Indicator = {
  id: 'overload',
  title: 'Load against service factor',
  needs: ['input_power_kw'],
  limits: [],
  present: (reading) =>
    reading.inputPowerKw !== undefined || reading.currentA !== undefined || reading.shaftSpeedRpm !== undefined,
  judge(scope, { motor, loadFraction }) {
    if (!loadFraction) return { value: undefined, findings: [] };
    const factor = motor.plate.serviceFactor ?? 1;
    const value = apply(scope, C.overload, { load_fraction: loadFraction, service_factor: exact(factor, '1') });
    const band = value.value > 1 ? 'beyond' : loadFraction.value > 1 ? 'near' : 'within';
    return {
      value,
      band,
      limit: `at most 1 (load over service factor ${words(factor)})`,
      source: 'NEMA MG 1 1.42',
      status: 'memory',
      findings: [],
    };
  },
};
