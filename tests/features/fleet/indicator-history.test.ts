import { describe, expect, it } from 'vitest';
import type { Motor, Reading } from '@/lib/engine';
import { HistoryJoiner } from '@/lib/features/fleet/apply-history';
import { HISTORY_INDICATORS, inOurUnit, unitsFor } from '@/lib/features/fleet/history-columns';
import { readHistory } from '@/lib/features/fleet/indicator-history';

const HEADER = 'site,tag,indicator,value,unit,taken_at,instrument';
const read = async (...rows: string[]) => {
  const outcome = await readHistory({ name: 'history.csv', text: `${HEADER}\n${rows.join('\n')}\n` });
  if (!outcome.ok) throw new Error(outcome.problem.text);
  return outcome;
};
const ROW = 'North,P-1,vibration,0.15,in/s,2024-05-01,pen';

describe('an indicator history', () => {
  it('uses a value from after the study’s date, and says so; on the day itself it says nothing', async () => {
    const text = `${HEADER}\n${ROW}\nNorth,P-1,vibration,3,mm/s,2024-05-02,\n`;
    const outcome = await readHistory({ name: 'history.csv', text }, { asOf: '2024-05-01' });
    if (!outcome.ok) throw new Error(outcome.problem.text);
    expect(outcome.values).toHaveLength(2);
    expect(outcome.warnings.map(({ row, code }) => [row, code])).toEqual([[3, 'reading-after-as-of']]);
  });

  it('is read value by value, in the unit of the fleet sheet', async () => {
    const { values, rejected } = await read(
      ROW,
      'North,P-1,bearing_temp,212,°F,2024-05-01,',
      'North,P-1,insulation_resistance,0.5,GΩ,2024-05-01,',
      'North,P-1,rotor_sideband,52.5,dB,,',
    );
    expect(rejected).toEqual([]);
    // 0.15 in/s is 3.8 mm/s in NEMA MG 1 table 7-1; water boils at 212 °F and 100 °C.
    expect(values.map(({ indicator, value }) => [indicator.name, Number(value.toFixed(3))])).toEqual([
      ['vibration', 3.81],
      ['bearing_temp', 100],
      ['insulation_resistance', 500],
      ['rotor_sideband', 52.5],
    ]);
    expect(values[0]).toMatchObject({ row: 2, site: 'North', tag: 'P-1', takenAt: '2024-05-01', instrument: 'pen' });
  });

  it('knows every unit of every indicator, and a value comes back from each unchanged in kind', () => {
    for (const { unit, name } of HISTORY_INDICATORS.values()) {
      expect(unitsFor(unit).length, name).toBeGreaterThan(0);
      for (const written of unitsFor(unit)) expect(inOurUnit(1, written, unit), `${name} in ${written}`).toBeTypeOf('number');
      expect(inOurUnit(7, unit, unit), name).toBe(7);
    }
  });

  it.each([
    ['an unknown indicator, with the known ones', 'North,P-1,vibrations,3,mm/s,2024-05-01,', 'unknown-indicator', 'vibration'],
    ['an unknown unit, with the known ones', 'North,P-1,vibration,3,furlong/s,2024-05-01,', 'unknown-unit', 'in/s'],
    ['a unit of another kind', 'North,P-1,vibration,3,°C,2024-05-01,', 'unknown-unit', 'mm/s'],
    ['a unit in other letters', 'North,P-1,insulation_resistance,3,mohm,2024-05-01,', 'unknown-unit', 'Mohm'],
    ['no tag', 'North,,vibration,3,mm/s,2024-05-01,', 'missing-history', 'tag'],
    ['no value', 'North,P-1,vibration,,mm/s,2024-05-01,', 'missing-history', 'value'],
    ['a value that is none', 'North,P-1,vibration,high,mm/s,2024-05-01,', 'not-a-number', 'number'],
    ['a date that is none', 'North,P-1,vibration,3,mm/s,05/01/2024,', 'unreadable-date', 'ISO 8601'],
  ])('rejects %s', async (_, row, code, words) => {
    const { values, rejected } = await read(ROW, row);
    expect(values).toHaveLength(1);
    expect(rejected).toHaveLength(1);
    expect(rejected[0]).toMatchObject({ row: 3, code });
    expect(`${rejected[0]?.text} ${rejected[0]?.remedy}`).toContain(words);
    expect(rejected[0]?.text).toMatch(/^\S.{8,}\.$/);
  });

  it.each([
    ['insulation_resistance', '3000', 'kOhm', 3],
    ['insulation_resistance', '3', 'MOhm', 3],
    ['winding_temp', '212', 'degF', 100],
  ])('takes %s of %s %s for %s', async (indicator, value, unit, ours) => {
    const { values } = await read(`North,P-1,${indicator},${value},${unit},2024-05-01,`);
    expect(values[0]?.value).toBeCloseTo(ours, 9);
  });

  it('keeps what is impossible or undated, with a warning', async () => {
    const { values, warnings } = await read('North,P-1,vibration,-3,mm/s,2024-05-01,', 'North,P-1,vibration,3,mm/s,,');
    expect(values).toHaveLength(2);
    expect(warnings.map((found) => found.code)).toEqual(['implausible-value', 'reading-undated']);
  });

  it('without its columns is a problem in words', async () => {
    const outcome = await readHistory({ name: 'history.csv', text: 'tag,vibration\nP-1,3\n' });
    expect(outcome).toMatchObject({ ok: false, problem: { code: 'missing-history-column' } });
  });
});

const base = { readingsAt: 'motor', readingCondition: 'coupled' } as const;
const reading = (changes: Partial<Reading>): Reading => ({ ...base, row: 2, takenAt: '2024-06-01', ...changes });
const motor = (readings: readonly Reading[]): Motor => ({
  site: 'North',
  tag: 'P-1',
  plate: { ratedPowerKw: 30, ratedPowerUnit: 'kW', status: 'running', ratedVoltageV: 460, machineKind: 'cage' },
  readings,
});

describe('joining a history with a motor', () => {
  const joined = async (readings: readonly Reading[], ...rows: string[]) => {
    const { values } = await read(...rows);
    const joiner = new HistoryJoiner(values, 10);
    return { motor: joiner.join(motor(readings)), issues: joiner.issues };
  };

  it('a value of the time of a reading joins it, and takes its load along', async () => {
    const { motor: found } = await joined([reading({ inputPowerKw: 20 })], 'North,P-1,rotor_sideband,50,dB,2024-06-01,');
    expect(found.readings).toHaveLength(1);
    expect(found.readings[0]).toMatchObject({ inputPowerKw: 20, rotorSidebandDb: 50, row: 2 });
  });

  it('values of another time make readings in order of time, those of one time together', async () => {
    const { motor: found } = await joined(
      [reading({ inputPowerKw: 20 })],
      'North,P-1,vibration,2,mm/s,2025-01-01,',
      'North,P-1,insulation_resistance,200,MΩ,2023-01-01,',
      'North,P-1,insulation_temp,25,°C,2023-01-01,',
    );
    expect(found.readings.map((entry) => entry.takenAt)).toEqual(['2023-01-01', '2024-06-01', '2025-01-01']);
    expect(found.readings[0]).toMatchObject({ insulationResistanceMohm: 200, insulationTempC: 25 });
    // Rows count on from the sheet's last, so that none is used twice.
    expect(new Set(found.readings.map((entry) => entry.row)).size).toBe(3);
  });

  it('a repeat adds nothing, a contradiction is refused, and what was read stands', async () => {
    const known = reading({ vibrationMmS: 2 });
    const repeat = await joined([known], 'North,P-1,vibration,2,mm/s,2024-06-01,');
    expect([repeat.motor.readings, repeat.issues]).toEqual([[known], []]);
    const other = await joined([known], 'North,P-1,vibration,3,mm/s,2024-06-01,');
    expect(other.motor.readings).toEqual([known]);
    expect(other.issues).toMatchObject([{ row: 2, code: 'history-contradiction' }]);
  });

  it('rows of motors that there are not are named', async () => {
    const { motor: found, issues } = await joined([], 'South,P-1,vibration,3,mm/s,2024-06-01,');
    expect(found.readings).toEqual([]);
    expect(issues).toMatchObject([{ row: 2, code: 'unknown-motor' }]);
  });
});
