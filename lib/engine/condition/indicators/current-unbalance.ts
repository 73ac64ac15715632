import { apply, leaf } from '../../formula/apply';
import * as C from '../../generated/condition';
import { CONDITION } from '../findings';
import type { Indicator } from '../indicator';
import { bandBelow, limitOf } from '../limit';
import { unbalance, words } from './shared';

/** General ceiling on what is left when the voltage's part is taken off: 10 % (common practice). */
const CEILING = 10;

/**
 * Current unbalance beyond what the voltage unbalance explains, in per cent.
 * The voltage explains 6 to 10 times its own unbalance near full load (US DOE Motor Systems Tip Sheet 7); at low load much more, so below
 * half load there is no verdict. Ceiling of 10 % for the rest: common practice.
 */
export const currentUnbalance: Indicator = {
  id: 'current-unbalance',
  title: 'Current unbalance beyond the voltage’s',
  needs: ['current_a_a', 'current_b_a', 'current_c_a'],
  limits: ['C4'],
  present: (reading) => reading.currentsA?.every((value) => value > 0) === true,
  judge(scope, { reading, loadFraction }) {
    if (!reading.currentsA) return { value: undefined, findings: [] };
    const current = unbalance(scope, reading.currentsA, {
      label: 'line current',
      row: reading.row,
      errorPct: 0.3,
      id: 'unbalance-current',
    });
    const multipleLimit = limitOf(scope, 'C4');
    const base = {
      limit: `at most ${CEILING} % beyond ${words(multipleLimit.value)} to 10 times the voltage unbalance`,
      source: `${multipleLimit.source}; ceiling common practice`,
      status: 'practice' as const,
    };
    if (!reading.voltagesV)
      return { ...base, value: current, findings: [CONDITION.make('current-unbalance-without-voltage', {})] };
    const voltage = unbalance(scope, reading.voltagesV, {
      label: 'line-to-line voltage',
      row: reading.row,
      errorPct: 0.1,
      id: 'unbalance-voltage',
    });
    const multiple = leaf(scope, {
      value: (multipleLimit.value + 10) / 2,
      unit: '1',
      label: 'current unbalance for each per cent of voltage unbalance',
      origin: 'table',
      source: multipleLimit.source,
      doubts: [
        {
          id: 'unbalance-multiple',
          label: 'multiple of the voltage unbalance',
          u: (10 - multipleLimit.value) / 2 / Math.sqrt(3),
        },
      ],
    });
    const value = apply(scope, C.excess_current_unbalance, { current_unbalance: current, voltage_unbalance: voltage, multiple });
    if (loadFraction && loadFraction.value < 0.5)
      return { ...base, value, findings: [CONDITION.make('current-unbalance-low-load', { load: loadFraction.value })] };
    const judged = bandBelow(
      value,
      { id: 'C4', value: CEILING, unit: '%', source: base.source, status: base.status },
      'current unbalance',
    );
    const findings =
      judged.band === 'beyond'
        ? [
            ...judged.findings,
            CONDITION.make('current-unbalance-unexplained', { current: current.value, voltage: voltage.value }),
          ]
        : judged.findings;
    return { ...base, value, band: judged.band, findings };
  },
};
