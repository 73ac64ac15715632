import { describe, expect, it } from 'vitest';
import { readDate, timeKey } from '@/lib/features/fleet/taken-at';
import { BASE, parseRows, placedRows } from './support/sheet';

const KEY = { tag: BASE.tag, site: BASE.site };

describe('rows of one motor', () => {
  it('give one motor in order of first appearance, its readings oldest first and undated ones before', async () => {
    const parsed = await parseRows([
      { ...BASE, tag: 'Z', taken_at: '', input_power_kw: '' },
      { ...BASE, taken_at: '2026-03-14T09:30', input_power_kw: '22' },
      { ...KEY, taken_at: '2025-03-14', input_power_kw: '21' },
      { ...KEY, taken_at: '', input_power_kw: '20' },
      { ...KEY, taken_at: '', input_power_kw: '19' },
      { ...KEY, taken_at: '2026-03-14T08:00Z', input_power_kw: '23' },
    ]);
    expect(parsed.motors.map(({ motor, rows }) => [motor.tag, rows])).toEqual([
      ['Z', [2]],
      ['M-1', [3, 4, 5, 6, 7]],
    ]);
    expect(parsed.motors[1]?.motor.readings.map((reading) => [reading.row, reading.inputPowerKw])).toEqual([
      [5, 20],
      [6, 19],
      [4, 21],
      [7, 23],
      [3, 22],
    ]);
  });

  it('ignore and count an identical repeat, dated or not, also when the time is written otherwise', async () => {
    const parsed = await parseRows([
      { ...BASE, taken_at: '2026-03-14T09:30+02:00', input_power_kw: '22' },
      { ...BASE, taken_at: '2026-03-14T07:30Z', input_power_kw: '22.0' },
      { ...KEY, taken_at: '', input_power_kw: '20' },
      { ...BASE, taken_at: '', input_power_kw: '2e1' },
      { ...BASE },
    ]);
    expect(parsed.ignoredRepeats).toBe(3);
    expect(parsed.motors[0]?.motor.readings).toHaveLength(2);
    expect(placedRows(parsed)).toBe(5);
  });

  it('may fill in what the first row left empty; a later contradiction names the row that filled it in', async () => {
    const parsed = await parseRows([
      { ...BASE, poles: '', input_power_kw: '' },
      { ...KEY, poles: '4', input_power_kw: '20' },
      { ...KEY, poles: '6', input_power_kw: '21' },
    ]);
    expect(parsed.motors[0]?.motor.plate.poles).toBe(4);
    expect(parsed.rejected[0]?.issues[0]?.text).toContain('row 3');
  });

  it('may stand above the row that has the plate, whatever order a sheet is in', async () => {
    const sheet = [
      { ...KEY, taken_at: '2026-03-14', input_power_kw: '22', duty_profile: '' },
      { ...KEY, duty_profile: '1@4000' },
      { ...BASE, taken_at: '2025-03-14', input_power_kw: '21', poles: '4' },
      { ...KEY, duty_profile: '1@6000' },
      { ...BASE, tag: 'M-2' },
    ];
    const parsed = await parseRows(sheet);
    expect(parsed.rejected).toEqual([]);
    expect(placedRows(parsed)).toBe(5);
    expect(parsed.motors.map(({ motor, rows }) => [motor.tag, rows])).toEqual([
      ['M-1', [2, 3, 4, 5]],
      ['M-2', [6]],
    ]);
    expect(parsed.motors[0]?.motor.readings.map(({ row, inputPowerKw }) => [row, inputPowerKw])).toEqual([
      [4, 21],
      [2, 22],
    ]);
    // Of two profiles the one further down stands, though the upper row was taken in after it.
    expect(parsed.motors[0]?.motor.plateDuty?.row).toBe(5);
  });

  it('may not contradict the plate that stands below them, and are rejected in the order of the sheet', async () => {
    const parsed = await parseRows([
      { ...KEY, poles: '6', input_power_kw: '20' },
      { ...BASE, tag: 'M-2', rated_power_kw: 'thirty' },
      { ...BASE, poles: '4' },
      { ...KEY, taken_at: 'yesterday', input_power_kw: '21' },
    ]);
    expect(parsed.rejected.map(({ row, issues }) => [row, issues.map(({ code }) => code)])).toEqual([
      [2, ['plate-contradiction']],
      [3, ['not-a-number']],
      [5, ['unreadable-date']],
    ]);
    expect(parsed.rejected[0]?.issues[0]?.text).toContain('row 4');
  });

  it('depend on a row that can be used', async () => {
    const parsed = await parseRows([
      { ...BASE, rated_voltage_v: '0' },
      { ...KEY, input_power_kw: '20' },
      { ...BASE, input_power_kw: '21' },
      { ...KEY, input_power_kw: '22' },
    ]);
    expect(parsed.rejected.map(({ row }) => row)).toEqual([2]);
    expect(parsed.motors[0]?.motor.readings.map((reading) => reading.inputPowerKw)).toEqual([20, 21, 22]);
    const without = await parseRows([
      { ...BASE, rated_voltage_v: '0' },
      { ...KEY, input_power_kw: '20' },
    ]);
    expect(without.rejected.map(({ row }) => row)).toEqual([2, 3]);
    expect(without.rejected[1]?.issues[0]?.text).toContain('row 2');
  });

  it('are told apart by site and tag as written', async () => {
    const parsed = await parseRows([BASE, { ...BASE, site: 'South' }, { ...BASE, tag: 'm-1' }, { ...BASE, site: '' }]);
    expect(parsed.motors.map(({ motor }) => `${motor.site}/${motor.tag}`)).toEqual([
      'North/M-1',
      'South/M-1',
      'North/m-1',
      '/M-1',
    ]);
  });

  it('keep the notes of all rows', async () => {
    const parsed = await parseRows([
      { ...BASE, Paint: 'red', Bay: '', __proto__x: 'p' },
      { ...KEY, Paint: 'blue', Bay: '7' },
    ]);
    expect(parsed.motors[0]?.notes).toEqual({ Paint: 'red | blue', Bay: '7', __proto__x: 'p' });
    expect(parsed.motors[0]?.rows).toEqual([2, 3]);
  });
});

describe('duty', () => {
  it('belongs to the reading on its row, or to the plate where nothing was read', async () => {
    const parsed = await parseRows([
      { ...BASE, duty_profile: '1@4000; 0.5@2000', input_power_kw: '' },
      { ...KEY, duty_profile: '0.8@6000', input_power_kw: '20' },
      { ...KEY, duty_profile: '1@100' },
    ]);
    const motor = parsed.motors[0]?.motor;
    expect(motor?.readings[0]?.duty).toEqual([{ fraction: 0.8, hoursPerYear: 6000 }]);
    expect(motor?.plateDuty).toEqual({ row: 4, steps: [{ fraction: 1, hoursPerYear: 100 }] });
  });

  it.each([
    ['1@8784', true],
    ['1@8784.5', false],
    ['0@0', true],
    ['1@4000;', false],
    ['1@', false],
    ['-1@100', false],
    ['1@-100', false],
    ['1@1,000', false],
    ['1@4000@2', false],
    ['4000', false],
  ])('takes %s: %s', async (duty_profile, taken) => {
    expect((await parseRows([{ ...BASE, duty_profile }])).rejected.length === 0).toBe(taken);
  });

  it('allows a leap year of hours and no more', async () => {
    const parsed = await parseRows(
      ['0', '8784', '8784.01', '-1'].map((hours_per_year, at) => ({ ...BASE, tag: `M${at}`, hours_per_year })),
    );
    expect(parsed.motors.map(({ motor }) => motor.hoursPerYear)).toEqual([0, 8784]);
  });
});

describe('rated power', () => {
  it('is the same for a plate in horsepower and its kilowatts (1 hp = 0.745700 kW)', async () => {
    const cells = { tag: 'A', rated_voltage_v: '460' };
    const [hp, kw] = (
      await parseRows([
        { ...cells, rated_power_hp: '40', rated_power_kw: '' },
        { ...cells, tag: 'B', rated_power_kw: '29.828' },
      ])
    ).motors;
    expect(hp?.motor.plate.ratedPowerKw).toBeCloseTo(29.828, 12);
    expect(hp?.motor.plate.ratedPowerKw).toBe(kw?.motor.plate.ratedPowerKw);
    expect([hp?.motor.plate.ratedPowerUnit, kw?.motor.plate.ratedPowerUnit]).toEqual(['hp', 'kW']);
  });

  // Distances from the kilowatts: 125 hp is 93.2125 kW, 3.57 % above 90 kW.
  it.each([
    ['90', '125', 'power-units-differ', undefined],
    ['100', '136.7', undefined, undefined],
    ['100', '136.8', 'power-units-differ', undefined],
    ['100', '144.8', 'power-units-differ', undefined],
    ['100', '144.9', undefined, 'power-units-contradict'],
    ['100', '123.3', undefined, 'power-units-contradict'],
  ])('of %s kW beside %s hp: warning %s, error %s', async (rated_power_kw, rated_power_hp, warning, error) => {
    const parsed = await parseRows([{ ...BASE, rated_power_kw, rated_power_hp }]);
    expect(parsed.warnings[0]?.code).toBe(warning);
    expect(parsed.rejected[0]?.issues[0]?.code).toBe(error);
    if (error === undefined)
      expect(parsed.motors[0]?.motor.plate).toMatchObject({ ratedPowerKw: Number(rated_power_kw), ratedPowerUnit: 'kW' });
  });
});

describe('phases', () => {
  it('give their mean, and alone stand for it with a warning', async () => {
    const parsed = await parseRows([
      { ...BASE, tag: 'A', voltage_ab_v: '460', voltage_bc_v: '463', voltage_ca_v: '457', current_a_a: '30', current_c_a: '32' },
      { ...BASE, tag: 'B', current_a: '31', current_a_a: '29', resistance_ab_ohm: '0.2' },
    ]);
    const [a, b] = parsed.motors;
    expect(a?.motor.readings[0]).toMatchObject({ voltagesV: [460, 463, 457], voltageV: 460, currentsA: undefined, currentA: 31 });
    expect(b?.motor.readings[0]).toMatchObject({ currentA: 31, currentsA: undefined, resistancesOhm: undefined });
    expect(b?.notes).toEqual({ 'kept: current_a_a': '29 (row 3)', 'kept: resistance_ab_ohm': '0.2 (row 3)' });
    expect(parsed.warnings.filter(({ code }) => code === 'incomplete-phases')).toHaveLength(3);
  });
});

describe('dates', () => {
  it.each([
    ['2026-03-14', '2026-03-14'],
    ['2024-02-29', '2024-02-29'],
    ['2026-03-14T09:30', '2026-03-14T09:30'],
    ['2026-03-14 09:30:15', '2026-03-14T09:30:15'],
    ['2026-03-14T09:30:15,5Z', '2026-03-14T09:30:15.5Z'],
    ['2026-03-14T09:30+0200', '2026-03-14T09:30+02:00'],
  ])('read %s', (text, date) => expect(readDate(text)).toBe(date));

  it.each([
    '2025-02-29',
    '2026-13-01',
    '2026-00-10',
    '2026-3-4',
    '14.03.2026',
    '03/14/2026',
    '20260314',
    '2026-03',
    '2026-03-14T24:00',
    '2026-03-14T09',
    '2026-03-14T09:30+15:00',
    '1899-12-31',
    '46000',
  ])('refuse %s', (text) => expect(readDate(text)).toBeUndefined());

  it('tell the same instant, and never mix site time with others', () => {
    expect(timeKey('2026-03-14T09:30+02:00')).toBe(timeKey('2026-03-14T07:30:00Z'));
    expect(timeKey('2026-03-14T09:30')).toBe(timeKey('2026-03-14T09:30:00.0'));
    expect(timeKey('2026-03-14T09:30')).not.toBe(timeKey('2026-03-14T09:30Z'));
    expect(timeKey('2026-03-14')).not.toBe(timeKey('2026-03-14T00:00'));
  });
});
