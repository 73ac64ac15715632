import { leaf } from '../../formula/apply';
import { KILOWATTS_PER_HORSEPOWER, POUND_FOOT_SQUARED } from '../../formula/constants';
import * as C from '../../generated/condition';
import { isSameRating } from '../../same-rating';
import type { StartsRow } from '../../tables';
import { CONDITION } from '../findings';
import { type Indicator, judgement } from '../indicator';
import { bandBelow, inForce } from '../limit';
import { words } from './shared';

/**
 * Starts an hour against the number that the table permits: the lesser of its two columns, of which the second wants the load's inertia.
 * Between two ratings the larger one counts, which permits fewer. Source: NEMA MG 10 table 2-3 (read in a handbook); for design A and B.
 */
export const startsPerHour: Indicator = {
  id: 'starts-per-hour',
  title: 'Starts an hour',
  needs: ['starts_per_hour'],
  limits: ['starts'],
  present: (_, plate) => plate.startsPerHour !== undefined && plate.startsPerHour >= 0 && plate.driveFed !== true,
  judge(scope, { motor, machine }) {
    const starts = motor.plate.startsPerHour;
    if (starts === undefined) return { value: undefined, findings: [] };
    const table = scope.tables.starts;
    const { poles } = machine.plate;
    const value = leaf(scope, {
      value: starts,
      unit: '1/h',
      label: 'starts an hour',
      origin: 'stamped',
      source: 'fleet sheet',
      doubts: [],
    });
    const inertia = motor.plate.loadInertiaKgm2;
    const found = permittedStarts(table.rows, { ratedPowerKw: motor.plate.ratedPowerKw, poles, inertia });
    const source = `${table.title} (${table.edition})`;
    if (!found)
      return judgement(
        { value, limit: 'outside the table', source, status: 'read-secondary' },
        { findings: [CONDITION.make('starts-outside-table', { rated_power: motor.plate.ratedPowerKw, poles })] },
      );
    const { row, permitted } = found;
    const limit = inForce(scope, { id: 'starts', value: permitted, unit: '1/h', source, status: row.status });
    const judged = bandBelow(value, limit, 'starts an hour');
    const why = inertia === undefined ? '; fewer with a heavy load, whose inertia is not known' : '';
    const held = {
      value,
      limit: `at most ${words(limit.value)} an hour, ${words(row.restS)} s of rest between${why}`,
      source: limit.source,
      status: limit.status,
    };
    return judgement(held, judged);
  },
};

/**
 * Starts an hour that the table permits a motor: the lesser of its two columns, of which the second wants the load's inertia. Between two
 * ratings the larger one counts; `undefined` outside the table. Units: kW, kg·m² at the motor shaft. Source: as {@link startsPerHour}.
 */
export function permittedStarts<R extends StartsRow>(
  rows: readonly R[],
  motor: { readonly ratedPowerKw: number; readonly poles: number; readonly inertia: number | undefined },
): { readonly row: R; readonly permitted: number } | undefined {
  const hp = motor.ratedPowerKw / KILOWATTS_PER_HORSEPOWER;
  const row = rows.find(
    (entry) => entry.poles === motor.poles && (entry.ratedPowerHp >= hp || isSameRating(entry.ratedPowerHp, hp)),
  );
  if (!row) return undefined;
  const { inertia } = motor;
  const byInertia =
    inertia !== undefined && inertia > 0
      ? C.permitted_starts.f(row.startsInertia, inertia / POUND_FOOT_SQUARED)
      : Number.POSITIVE_INFINITY;
  return { row, permitted: Math.min(row.startsPerHour, byInertia) };
}
