import { type Indicator, judgement } from '../indicator';
import { bandAt, exceeds, limitOf } from '../limit';
import { INSTRUMENT, read, words } from './shared';

/** Temperature of the hotter bearing at its outer ring: `near` from the alarm, `beyond` above the trip. Common practice, no standard. */
export const bearingTemperature: Indicator = {
  id: 'bearing-temperature',
  title: 'Bearing temperature',
  needs: ['bearing_temp_c'],
  limits: ['bearing-alarm', 'bearing-trip'],
  present: ({ reading }) => reading.bearingTempC !== undefined,
  judge(scope, { reading }) {
    if (reading.bearingTempC === undefined) return { value: undefined, findings: [] };
    const value = read(scope, {
      value: reading.bearingTempC,
      unit: '°C',
      label: 'bearing temperature',
      row: reading.row,
      error: INSTRUMENT.temperatureK,
      id: 'bearing-temperature',
    });
    const alarm = limitOf(scope, 'bearing-alarm');
    const trip = limitOf(scope, 'bearing-trip');
    const judged = bandAt(value, trip, 'bearing temperature', {
      beyond: exceeds(value.value, trip.value),
      near: !exceeds(alarm.value, value.value),
    });
    const held = {
      value,
      limit: `alarm ${words(alarm.value)} °C, trip ${words(trip.value)} °C`,
      source: trip.source,
      status: trip.status,
    };
    return judgement(held, judged, { callsFor: judged.band === 'beyond' ? 'bearing-job' : undefined });
  },
};
