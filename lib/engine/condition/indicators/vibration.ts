import type { MotorScope } from '../../context';
import type { Finding } from '../../quantity/finding';
import { CONDITION } from '../findings';
import { type Indicator, judgement } from '../indicator';
import { bandAt, exceeds, inForce } from '../limit';
import type { Limit } from '../limit-model';
import { INSTRUMENT, read, share, words } from './shared';

/** The standard begins above this rating, and its first group above the second (ISO 20816-3, from memory). */
const SMALLEST_KW = 15;
const GROUP_1_KW = 300;

const EDGES = ['bc', 'cd'] as const;
const SUPPORTS = ['rigid', 'flexible'] as const;

/**
 * Broadband vibration velocity at the bearings against the service zones of ISO 20816-3: zones A and B are `within`, C `near`, D `beyond`.
 * Group 1 above 300 kW, group 2 above 15 kW; up to there, and without a known foundation, no zone. Source: ISO 20816-3:2022 (from memory).
 */
export const vibration: Indicator = {
  id: 'vibration',
  title: 'Vibration',
  needs: ['vibration_mm_s', 'foundation'],
  limits: [1, 2].flatMap((group) => SUPPORTS.flatMap((support) => EDGES.map((edge) => `vibration-${group}-${support}-${edge}`))),
  present: ({ reading }) => reading.vibrationMmS !== undefined && reading.vibrationMmS >= 0,
  judge(scope, { reading, motor }) {
    if (reading.vibrationMmS === undefined) return { value: undefined, findings: [] };
    const value = read(scope, {
      value: reading.vibrationMmS,
      unit: 'mm/s',
      label: 'vibration velocity, RMS',
      row: reading.row,
      error: share(reading.vibrationMmS, INSTRUMENT.vibrationPct),
      id: 'vibration',
    });
    const table = scope.tables.vibrationZones;
    const { foundation, ratedPowerKw } = motor.plate;
    const source = `${table.edition}, ${table.clause}`;
    const unjudged = (limit: string, why: Finding) =>
      judgement({ value, limit, source, status: table.rows[0]?.status ?? 'memory' }, { findings: [why] });
    if (!exceeds(ratedPowerKw, SMALLEST_KW))
      return unjudged('outside ISO 20816-3', CONDITION.make('vibration-outside-standard', { rated_power: ratedPowerKw }));
    const group = exceeds(ratedPowerKw, GROUP_1_KW) ? 1 : 2;
    const zone = table.rows.find((row) => row.group === group && row.support === foundation);
    if (!zone) return unjudged('depends on the foundation', CONDITION.make('vibration-foundation-unknown', {}));
    const bc = edgeInForce(scope, zone, 'bc', source);
    const cd = edgeInForce(scope, zone, 'cd', source);
    const aboveB = exceeds(value.value, bc.value);
    const judged = bandAt(value, cd, 'vibration', { beyond: exceeds(value.value, cd.value), near: aboveB });
    if (judged.band === 'near' && aboveB)
      judged.findings.push(CONDITION.make('vibration-zone-c', { vibration: value.value, zone_bc: bc.value }));
    const held = {
      value,
      limit: `zone B up to ${words(bc.value)} mm/s, zone C up to ${words(cd.value)} mm/s (${zone.support}, group ${group})`,
      source: cd.source,
      status: cd.status,
    };
    return judgement(held, judged, { callsFor: judged.band === 'beyond' ? 'bearing-job' : undefined });
  },
};

type Zone = MotorScope['tables']['vibrationZones']['rows'][number];

function edgeInForce(scope: MotorScope, zone: Zone, edge: (typeof EDGES)[number], source: string): Limit {
  return inForce(scope, {
    id: `vibration-${zone.group}-${zone.support}-${edge}`,
    value: zone[edge],
    unit: 'mm/s',
    source,
    status: zone.status,
  });
}
