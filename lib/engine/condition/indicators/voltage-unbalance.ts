import { CONDITION } from '../findings';
import type { Indicator } from '../indicator';
import { bandBelow, limitOf } from '../limit';
import { unbalance, words } from './shared';

/** Repeatability of a voltmeter between phases: its gain error is common and cancels (common practice). */
const BETWEEN_PHASES_PCT = 0.1;

/**
 * Supply voltage unbalance: largest deviation from the mean of the three line-to-line voltages, in per cent.
 * Limit: 1 % for normal operation (NEMA MG 1 12.45; US DOE Motor Systems Tip Sheet 7); above 5 % a motor should not run.
 */
export const voltageUnbalance: Indicator = {
  id: 'voltage-unbalance',
  title: 'Voltage unbalance',
  needs: ['voltage_ab_v', 'voltage_bc_v', 'voltage_ca_v'],
  limits: ['C1', 'C2'],
  present: (reading) => reading.voltagesV?.every((value) => value > 0) === true,
  judge(scope, { reading }) {
    if (!reading.voltagesV) return { value: undefined, findings: [] };
    const value = unbalance(scope, reading.voltagesV, {
      label: 'line-to-line voltage',
      row: reading.row,
      errorPct: BETWEEN_PHASES_PCT,
      id: 'unbalance-voltage',
    });
    const limit = limitOf(scope, 'C1');
    const worst = limitOf(scope, 'C2');
    const judged = bandBelow(value, limit, 'voltage unbalance');
    const findings =
      value.value > worst.value
        ? [...judged.findings, CONDITION.make('voltage-unbalance-high', { unbalance: value.value })]
        : judged.findings;
    return {
      value,
      band: judged.band,
      findings,
      limit: `at most ${words(limit.value)} % (deviation from the mean)`,
      source: limit.source,
      status: limit.status,
    };
  },
};
