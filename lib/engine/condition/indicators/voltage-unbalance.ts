import type { MotorScope } from '../../context';
import { apply } from '../../formula/apply';
import * as C from '../../generated/condition';
import type { Machine } from '../../machine/model';
import { exact, type Quantity } from '../../quantity/quantity';
import type { UnbalanceDeratingRow } from '../../tables';
import { CONDITION } from '../findings';
import { type Indicator, judgement } from '../indicator';
import { bandBelow, exceeds, limitOf } from '../limit';
import { behindDrive, INSTRUMENT, unbalance, words } from './shared';

/**
 * Supply voltage unbalance: largest deviation from the mean of the three line-to-line voltages, in per cent.
 * Limit: 1 % for normal operation (NEMA MG 1 12.45; US DOE Motor Systems Tip Sheet 7); above 5 % a motor should not run.
 * Between the two a finding says what the unbalance costs: rise, insulation life, and the load to stay below.
 */
export const voltageUnbalance: Indicator = {
  id: 'voltage-unbalance',
  title: 'Voltage unbalance',
  needs: ['voltage_ab_v', 'voltage_bc_v', 'voltage_ca_v'],
  limits: ['C1', 'C2', 'F1'],
  present: ({ reading }) => reading.voltagesV?.every((value) => value > 0) === true,
  judge(scope, { reading, motor, machine }) {
    if (!reading.voltagesV) return { value: undefined, findings: [] };
    const value = unbalance(scope, reading.voltagesV, {
      label: 'line-to-line voltage',
      row: reading.row,
      errorPct: INSTRUMENT.voltageBetweenPhasesPct,
      id: 'unbalance-voltage',
    });
    const limit = limitOf(scope, 'C1');
    const worst = limitOf(scope, 'C2');
    const base = {
      value,
      limit: `at most ${words(limit.value)} % (deviation from the mean)`,
      source: limit.source,
      status: limit.status,
    };
    if (behindDrive(motor.plate, reading))
      return judgement(base, { findings: [CONDITION.make('supply-behind-drive', { reading: 'voltage unbalance' })] });
    const judged = bandBelow(value, limit, 'voltage unbalance');
    const { findings } = judged;
    if (exceeds(value.value, worst.value)) findings.push(CONDITION.make('voltage-unbalance-high', { unbalance: value.value }));
    else if (judged.band === 'beyond') findings.push(CONDITION.make('voltage-unbalance-derates', cost(scope, machine, value)));
    return judgement(base, judged);
  },
};

/** What an unbalance costs at rated load: more rise in per cent, insulation life left as a share, and the share of rating to stay below. */
function cost(scope: MotorScope, machine: Machine, value: Quantity<'%'>) {
  const factor = apply(scope, C.unbalance_rise_factor, { unbalance: value, unit_percent: exact(1, '%') });
  const life = apply(scope, C.insulation_life_share, {
    excess: exact(machine.ratedRise.value * (factor.value - 1), 'K'),
    halving: exact(limitOf(scope, 'F1').value, 'K'),
  });
  return {
    unbalance: value.value,
    rise_pct: 100 * (factor.value - 1),
    life_pct: 100 * life.value,
    load_pct: 100 * unbalanceDerating(scope.tables.unbalanceDerating.rows, value.value),
  };
}

/**
 * Share of rated load that a motor may carry at a voltage unbalance in per cent: straight between the rows of the curve, which is known
 * to about ± 0.02; the last row beyond its end. Rows must come in order of unbalance.
 */
export function unbalanceDerating(rows: readonly UnbalanceDeratingRow[], unbalancePct: number): number {
  let before: UnbalanceDeratingRow | undefined;
  for (const row of rows) {
    if (row.unbalancePct >= unbalancePct) {
      if (!before) return row.deratingFactor;
      const along = (unbalancePct - before.unbalancePct) / (row.unbalancePct - before.unbalancePct);
      return before.deratingFactor + along * (row.deratingFactor - before.deratingFactor);
    }
    before = row;
  }
  return before?.deratingFactor ?? 1;
}
