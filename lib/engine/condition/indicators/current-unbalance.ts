import { apply, leaf } from '../../formula/apply';
import * as C from '../../generated/condition';
import { CONDITION } from '../findings';
import type { Indicator } from '../indicator';
import { bandBelow, limitOf } from '../limit';
import { behindDrive, INSTRUMENT, unbalance, words } from './shared';

/** Below this load the unbalance looks too large to be judged (common practice). */
const LEAST_LOAD = 0.5;

/**
 * Current unbalance beyond what the voltage unbalance explains, in per cent.
 * The voltage explains 6 to 10 times its own unbalance near full load (US DOE Motor Systems Tip Sheet 7); at low load much more, so below
 * half load, or at a load nobody knows, there is no verdict. Ceiling of 10 % for the rest: common practice.
 */
export const currentUnbalance: Indicator = {
  id: 'current-unbalance',
  title: 'Current unbalance beyond the voltage’s',
  needs: ['current_a_a', 'current_b_a', 'current_c_a'],
  limits: ['C4', 'current-unbalance-ceiling'],
  present: ({ reading }) => reading.currentsA?.every((value) => value > 0) === true,
  judge(scope, { reading, motor, loadFraction }) {
    if (!reading.currentsA) return { value: undefined, findings: [] };
    const current = unbalance(scope, reading.currentsA, {
      label: 'line current',
      row: reading.row,
      errorPct: INSTRUMENT.currentBetweenPhasesPct,
      id: 'unbalance-current',
    });
    const multipleLimit = limitOf(scope, 'C4');
    const ceiling = limitOf(scope, 'current-unbalance-ceiling');
    const high = multipleLimit.high ?? multipleLimit.value;
    const range = high === multipleLimit.value ? words(high) : `${words(multipleLimit.value)} to ${words(high)}`;
    const base = {
      limit: `at most ${words(ceiling.value)} % beyond ${range} times the voltage unbalance`,
      source: `${multipleLimit.source}; ceiling: ${ceiling.source}`,
      status: 'practice' as const,
    };
    if (behindDrive(motor.plate, reading))
      return { ...base, value: current, findings: [CONDITION.make('supply-behind-drive', { reading: 'current unbalance' })] };
    if (!reading.voltagesV?.every((value) => value > 0))
      return { ...base, value: current, findings: [CONDITION.make('current-unbalance-without-voltage', {})] };
    const voltage = unbalance(scope, reading.voltagesV, {
      label: 'line-to-line voltage',
      row: reading.row,
      errorPct: INSTRUMENT.voltageBetweenPhasesPct,
      id: 'unbalance-voltage',
    });
    const multiple = leaf(scope, {
      value: (multipleLimit.value + high) / 2,
      unit: '1',
      label: 'current unbalance for each per cent of voltage unbalance',
      origin: 'table',
      source: multipleLimit.source,
      doubts: [
        {
          id: 'unbalance-multiple',
          label: 'multiple of the voltage unbalance',
          u: (high - multipleLimit.value) / 2 / Math.sqrt(3),
        },
      ],
    });
    const value = apply(scope, C.excess_current_unbalance, { current_unbalance: current, voltage_unbalance: voltage, multiple });
    if (!loadFraction)
      return { ...base, value, findings: [CONDITION.make('signature-load-unknown', { reading: 'current unbalance' })] };
    if (loadFraction.value < LEAST_LOAD)
      return { ...base, value, findings: [CONDITION.make('current-unbalance-low-load', { load: loadFraction.value })] };
    const judged = bandBelow(value, ceiling, 'current unbalance');
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
