import { CONDITION } from '../findings';
import { type Indicator, judgement } from '../indicator';
import { bandBelow, limitOf } from '../limit';
import { INSTRUMENT, unbalance, words } from './shared';
import { windingOf } from './winding';

/**
 * Unbalance of the three terminal-to-terminal resistances: largest deviation from their mean, in per cent.
 * Limits: 2 % random-wound, 1 % form-wound (ANSI/EASA AR100-2020, from memory); 5 % for the whole circuit from the starter (common practice).
 */
export const windingResistanceUnbalance: Indicator = {
  id: 'winding-resistance-unbalance',
  title: 'Winding resistance unbalance',
  needs: ['resistance_ab_ohm', 'resistance_bc_ohm', 'resistance_ca_ohm', 'resistance_at'],
  limits: ['B1', 'B2', 'B3'],
  present: ({ reading }) => reading.resistancesOhm?.every((value) => value > 0) === true,
  judge(scope, { reading, motor }) {
    if (!reading.resistancesOhm) return { value: undefined, findings: [] };
    const value = unbalance(scope, reading.resistancesOhm, {
      label: 'terminal resistance',
      row: reading.row,
      errorPct: INSTRUMENT.resistanceBetweenPairsPct,
      id: 'unbalance-resistance',
    });
    const atStarter = reading.resistanceAt === 'starter';
    const limit = limitOf(scope, atStarter ? 'B3' : windingOf(motor.plate) === 'form' ? 'B2' : 'B1');
    const base = {
      value,
      limit: `at most ${words(limit.value)} %${atStarter ? ' for the circuit from the starter' : ''}`,
      source: limit.source,
      status: limit.status,
    };
    if (reading.resistanceAt === undefined)
      return judgement(base, { findings: [CONDITION.make('resistance-place-unknown', {})] });
    const judged = bandBelow(value, limit, 'winding resistance unbalance');
    if (atStarter) judged.findings.push(CONDITION.make('resistance-at-starter', {}));
    return judgement(base, judged, { callsFor: judged.band === 'beyond' && !atStarter ? 'rewind' : undefined });
  },
};
