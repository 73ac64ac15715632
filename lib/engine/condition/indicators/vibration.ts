import { CONDITION } from '../findings';
import type { Indicator } from '../indicator';
import { read, words } from './shared';

/**
 * Broadband vibration velocity at the bearings against the service zones of ISO 20816-3: zones A and B are `within`, C `near`, D `beyond`.
 * Group 1 above 300 kW, group 2 from 15 kW; below, and without a known foundation, no zone. Source: ISO 20816-3:2022 (from memory).
 */
export const vibration: Indicator = {
  id: 'vibration',
  title: 'Vibration',
  needs: ['vibration_mm_s', 'foundation'],
  limits: [],
  present: (reading) => reading.vibrationMmS !== undefined && reading.vibrationMmS >= 0,
  judge(scope, { reading, motor }) {
    const measured = reading.vibrationMmS ?? 0;
    const value = read(scope, {
      value: measured,
      unit: 'mm/s',
      label: 'vibration velocity, RMS',
      row: reading.row,
      errorPct: 5,
      id: 'vibration',
    });
    const table = scope.tables.vibrationZones;
    const rated = motor.plate.ratedPowerKw;
    const { foundation } = motor.plate;
    const group = rated > 300 ? 1 : 2;
    const zone = table.rows.find((row) => row.group === group && row.support === foundation);
    const base = {
      value,
      source: `${table.edition}, ${table.clause}`,
      status: zone?.status ?? table.rows[0]?.status ?? ('memory' as const),
    };
    if (rated <= 15)
      return {
        ...base,
        limit: 'outside ISO 20816-3',
        findings: [CONDITION.make('vibration-outside-standard', { rated_power: rated })],
      };
    if (!zone)
      return { ...base, limit: 'depends on the foundation', findings: [CONDITION.make('vibration-foundation-unknown', {})] };
    const limit = `zone B up to ${words(zone.bc)} mm/s, zone C up to ${words(zone.cd)} mm/s (${zone.support}, group ${group})`;
    if (measured > zone.cd) return { ...base, limit, band: 'beyond', findings: [], callsFor: 'bearing-job' };
    if (measured > zone.bc)
      return {
        ...base,
        limit,
        band: 'near',
        findings: [CONDITION.make('vibration-zone-c', { vibration: measured, zone_bc: zone.bc })],
      };
    return { ...base, limit, band: 'within', findings: [] };
  },
};
