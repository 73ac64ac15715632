import type { MotorScope } from '../../context';
import { leaf } from '../../formula/apply';
import type { Plate } from '../../motor';
import type { Quantity } from '../../quantity/quantity';
import type { Indicator } from '../indicator';
import { bandAt, exceeds, inForce } from '../limit';
import type { Limit } from '../limit-model';
import { words } from './shared';

/** Share of 1 − η that an IEC motor may fall short, up to and above this rating (IEC 60034-1 clause 12). */
const IEC_SHORTFALL = { small: 0.15, large: 0.1, upToKw: 150 } as const;

/** Outside of this a stamp is no efficiency at rated load. */
const STAMP = { least: 40, most: 99.5 } as const;

function stampOf({ nominalEfficiencyPct: stamped }: Plate): number | undefined {
  return stamped !== undefined && stamped >= STAMP.least && stamped <= STAMP.most ? stamped : undefined;
}

/**
 * The least efficiency that a motor of this stamp may have when new, per cent: for US motors the minimum beside the nominal value of the
 * standard's ladder, between its rows in proportion; for IEC motors the stamp less its tolerance.
 */
function leastWhenNew(scope: MotorScope, plate: Plate, stamped: number): Limit | undefined {
  if (scope.settings.standards === 'iec') {
    const share = plate.ratedPowerKw <= IEC_SHORTFALL.upToKw ? IEC_SHORTFALL.small : IEC_SHORTFALL.large;
    return {
      id: 'efficiency-least',
      value: stamped - share * (100 - stamped),
      unit: '%',
      source: 'IEC 60034-1 clause 12, tolerance of the efficiency',
      status: 'memory',
    };
  }
  const table = scope.tables.nominalToMinimum;
  const below = table.rows.find((row) => row.nominalEfficiencyPct <= stamped);
  const above = table.rows.findLast((row) => row.nominalEfficiencyPct >= stamped);
  if (!below || !above) return undefined;
  const step = above.nominalEfficiencyPct - below.nominalEfficiencyPct;
  const along = step > 0 ? (stamped - below.nominalEfficiencyPct) / step : 0;
  const value = below.minimumEfficiencyPct + along * (above.minimumEfficiencyPct - below.minimumEfficiencyPct);
  return { id: 'efficiency-least', value, unit: '%', source: `${table.edition}, ${table.clause}`, status: below.status };
}

/**
 * Efficiency of a bench test against the stamp: `beyond` below the least that the standard lets a new motor of this stamp have, `near` in
 * the lower half between the two. Readings in service cannot tell, since the stamp itself decides most of what they give
 * (docs/methods/condition-bands.md); without a test of all losses there is no such indicator.
 */
export const testedEfficiency: Indicator = {
  id: 'tested-efficiency',
  title: 'Efficiency by test, against the plate',
  needs: ['nominal_efficiency_pct'],
  limits: ['efficiency-least'],
  present: (_loaded, plate, motor) => motor.tested?.measured.efficiency !== undefined && stampOf(plate) !== undefined,
  judge(scope, { motor }) {
    const measured = motor.tested?.measured.efficiency;
    const stamped = stampOf(motor.plate);
    if (!motor.tested || !measured || stamped === undefined) return { value: undefined, findings: [] };
    const value: Quantity<'%'> = leaf(scope, {
      value: 100 * measured.value,
      unit: '%',
      label: 'efficiency at rated load by bench test',
      origin: 'metered',
      source: `bench test “${motor.tested.name}”`,
      doubts: [{ id: 'bench:efficiency', label: 'efficiency by bench test', u: 100 * measured.u }],
    });
    const found = leastWhenNew(scope, motor.plate, stamped);
    const takenAt = motor.tested.takenAt;
    if (!found)
      return { value, takenAt, limit: `the plate says ${words(stamped)} %`, source: 'nameplate', status: 'read', findings: [] };
    const limit = inForce(scope, found);
    const judged = bandAt(value, limit, 'efficiency by test', {
      beyond: exceeds(limit.value, value.value),
      near: !exceeds(value.value, (limit.value + stamped) / 2),
    });
    return {
      value,
      band: judged.band,
      margin: judged.margin,
      takenAt,
      limit: `at least ${words(limit.value)} % for a plate of ${words(stamped)} %`,
      source: limit.source,
      status: limit.status,
      findings: judged.findings,
    };
  },
};
