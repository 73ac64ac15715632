import { expect, it } from 'vitest';
import { resultsShape } from './results-shape';
import { scratch, studyCommand } from './run';

const { file } = scratch();
const sheet = file(
  'fleet.csv',
  'tag,site,rated_power_hp,rated_voltage_v,rated_speed_rpm,nominal_efficiency_pct,foundation,taken_at,voltage_v,input_power_kw,shaft_speed_rpm\nP-1,North,50,460,1765,91.7,rigid,2025-06-01,462,24.4,1779\n',
);

it('study evaluate joins an indicator history: a trend from its values, its bad rows named, and the end with 3', () => {
  const history = file(
    'history.csv',
    'site,tag,indicator,value,unit,taken_at,instrument\nNorth,P-1,vibration,1.0,mm/s,2022-06-01,\nNorth,P-1,vibration,1.5,mm/s,2023-06-01,\nNorth,P-1,vibration,2.1,mm/s,2024-06-01,\nNorth,P-1,shaking,9,mm/s,2024-06-01,\nNorth,P-9,vibration,2,mm/s,2024-06-01,\n',
  );
  const ran = studyCommand('evaluate', sheet, '--history', history);
  expect(ran.code).toBe(3);
  expect(ran.err).toContain('history, row 5');
  const written = resultsShape.parse(JSON.parse(ran.out));
  const vibration = written.motors[0]?.condition.indicators.find((entry) => entry.id === 'vibration');
  expect(vibration).toMatchObject({ band: 'within', trend: { readings: 3, direction: 'worse', since: '2022-06-01' } });
  expect(written.rejected.map(({ row, code }) => [row, code])).toEqual([
    [5, 'unknown-indicator'],
    [6, 'unknown-motor'],
  ]);
  // The load is that of the sheet's own reading.
  expect(written.motors[0]?.load_fraction?.value).toBeGreaterThan(0.5);
  expect(studyCommand('evaluate', sheet, '--history', '/nowhere.csv').code).toBe(2);
});
