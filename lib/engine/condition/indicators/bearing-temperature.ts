import type { Indicator } from '../indicator';
import { read } from './shared';

/** Outer-ring alarm and trip of greased bearings: 90 and 105 °C (common practice). */
const ALARM = 90;
const TRIP = 105;

/** Temperature of the hotter bearing: `near` from the alarm, `beyond` from the trip. Common practice, no standard. */
export const bearingTemperature: Indicator = {
  id: 'bearing-temperature',
  title: 'Bearing temperature',
  needs: ['bearing_temp_c'],
  limits: [],
  present: (reading) => reading.bearingTempC !== undefined,
  judge(scope, { reading }) {
    const temperature = reading.bearingTempC ?? 0;
    const value = read(scope, {
      value: temperature,
      unit: '°C',
      label: 'bearing temperature',
      row: reading.row,
      errorPct: 3,
      id: 'bearing-temperature',
    });
    const band = temperature > TRIP ? 'beyond' : temperature >= ALARM ? 'near' : 'within';
    return {
      value,
      band,
      limit: `alarm ${ALARM} °C, trip ${TRIP} °C`,
      source: 'common practice for greased bearings',
      status: 'practice',
      findings: [],
      callsFor: band === 'beyond' ? 'bearing-job' : undefined,
    };
  },
};
