import { apply } from '../../formula/apply';
import * as C from '../../generated/condition';
import { exact } from '../../quantity/quantity';
import { type Indicator, judgement } from '../indicator';
import { bandAt, exceeds } from '../limit';
import { words } from './shared';

/**
 * Load against the service factor: above rating `near`, above rating times service factor `beyond`. The limit is the motor's own stamp,
 * so no setting changes it. Source: NEMA MG 1 1.42 (from memory).
 */
export const overload: Indicator = {
  id: 'overload',
  title: 'Load against service factor',
  needs: ['input_power_kw'],
  limits: [],
  present: ({ loadFraction }) => loadFraction !== undefined,
  judge(scope, { motor, loadFraction }) {
    if (!loadFraction) return { value: undefined, findings: [] };
    const factor = motor.plate.serviceFactor ?? 1;
    const value = apply(scope, C.overload, { load_fraction: loadFraction, service_factor: exact(factor, '1') });
    const limit = {
      id: 'overload',
      value: 1,
      unit: '(load over service factor)',
      source: 'NEMA MG 1 1.42',
      status: 'memory',
    } as const;
    const judged = bandAt(value, limit, 'load', { beyond: exceeds(value.value, 1), near: exceeds(loadFraction.value, 1) });
    const held = {
      value,
      limit: `at most 1 (load over service factor ${words(factor)})`,
      source: limit.source,
      status: limit.status,
    };
    return judgement(held, judged);
  },
};
