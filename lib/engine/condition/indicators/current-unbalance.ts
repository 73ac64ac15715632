import { apply } from '../../formula/apply';
import * as C from '../../generated/condition';
import { rounded } from '../../quantity/words';
import { CONDITION } from '../findings';
import { type Indicator, judgement } from '../indicator';
import { bandBelow, limitOf } from '../limit';
import { behindDrive, INSTRUMENT, unbalance, words } from './shared';
import { explainedByCircuit, explainedByRule } from './unbalance-multiple';

/** Below this load the unbalance looks too large to be judged (common practice). */
const LEAST_LOAD = 0.5;

/**
 * Current unbalance beyond what the voltage unbalance explains, in per cent: the largest deviation of the currents from their mean, less
 * what the negative-sequence circuit draws from the voltages as read. Where the circuit does not hold (synchronous motors, values that
 * cannot close a triangle) or the study sets a multiple of its own, that multiple of the deviation serves: 6 to 10 near full load
 * (US DOE Motor Systems Tip Sheet 7). What is left is compared with the current of the moment and looks larger at low load, so below half
 * load, or at a load nobody knows, there is no verdict. Ceiling of 10 % for the rest: common practice.
 */
export const currentUnbalance: Indicator = {
  id: 'current-unbalance',
  title: 'Current unbalance beyond the voltage’s',
  needs: ['current_a_a', 'current_b_a', 'current_c_a'],
  limits: ['C4', 'current-unbalance-ceiling'],
  present: ({ reading }) => reading.currentsA?.every((value) => value > 0) === true,
  judge(scope, { reading, motor, machine, loadFraction, turning }) {
    if (!reading.currentsA) return { value: undefined, findings: [] };
    const current = unbalance(scope, reading.currentsA, {
      label: 'line current',
      row: reading.row,
      errorPct: INSTRUMENT.currentBetweenPhasesPct,
      id: 'unbalance-current',
    });
    const ceiling = limitOf(scope, 'current-unbalance-ceiling');
    const limit = `at most ${words(ceiling.value)} % beyond what the voltage explains`;
    const asRead = { value: current, limit, source: ceiling.source, status: 'practice' } as const;
    if (behindDrive(motor.plate, reading))
      return judgement(asRead, { findings: [CONDITION.make('supply-behind-drive', { reading: 'current unbalance' })] });
    if (!reading.voltagesV?.every((value) => value > 0))
      return judgement(asRead, { findings: [CONDITION.make('current-unbalance-without-voltage', {})] });
    const voltage = unbalance(scope, reading.voltagesV, {
      label: 'line-to-line voltage',
      row: reading.row,
      errorPct: INSTRUMENT.voltageBetweenPhasesPct,
      id: 'unbalance-voltage',
    });
    const ofCircuit =
      scope.settings.limits.C4 === undefined && motor.plate.machineKind !== 'synchronous'
        ? explainedByCircuit(scope, machine, {
            row: reading.row,
            voltages: reading.voltagesV,
            currents: reading.currentsA,
            meter: turning?.metered.current,
            slip: turning?.point?.slip.value,
          })
        : undefined;
    const explained = ofCircuit ?? explainedByRule(scope, voltage);
    const value = apply(scope, C.excess_current_unbalance, {
      current_unbalance: current,
      voltage_unbalance: explained.voltageUnbalance,
      multiple: explained.multiple,
    });
    const beyondExplained = {
      value,
      limit: `${limit}, ${words2(explained.multiple.value)} times the ${explained.words} unbalance of ${words2(explained.voltageUnbalance.value)} %`,
      source: ofCircuit ? ceiling.source : `${limitOf(scope, 'C4').source}; ceiling: ${ceiling.source}`,
      status: 'practice',
    } as const;
    if (!loadFraction)
      return judgement(beyondExplained, {
        findings: [CONDITION.make('signature-load-unknown', { reading: 'current unbalance' })],
      });
    if (loadFraction.value < LEAST_LOAD)
      return judgement(beyondExplained, {
        findings: [CONDITION.make('current-unbalance-low-load', { load: loadFraction.value })],
      });
    const judged = bandBelow(value, ceiling, 'current unbalance');
    if (judged.band === 'beyond')
      judged.findings.push(CONDITION.make('current-unbalance-unexplained', { current: current.value, voltage: voltage.value }));
    return judgement(beyondExplained, judged);
  },
};

/** Two significant digits: the multiple is known no better. */
function words2(value: number): string {
  return rounded(value, 2);
}
