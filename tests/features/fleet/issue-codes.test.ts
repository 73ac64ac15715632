import { describe, expect, it } from 'vitest';
import { type IssueCode, ROW_SENTENCES } from '@/lib/features/fleet/issue-codes';
import { REFUSALS } from '@/lib/features/fleet/number';
import type { ParseOptions } from '@/lib/features/fleet/parse';
import { BASE, parseRows, parseText, placedRows } from './support/sheet';

type Row = Readonly<Record<string, string>>;
interface Case {
  readonly code: IssueCode;
  readonly rows: readonly Row[];
  readonly column: string;
  readonly row?: number;
  readonly options?: ParseOptions;
}

const one = (code: IssueCode, column: string, cells: Row, options?: ParseOptions): Case => ({
  code,
  column,
  rows: [{ ...BASE, ...cells }],
  ...(options && { options }),
});
const two = (code: IssueCode, column: string, first: Row, second: Row): Case => ({
  code,
  column,
  row: 3,
  rows: [
    { ...BASE, ...first },
    { tag: BASE.tag, site: BASE.site, ...second },
  ],
});
const number = (code: IssueCode, text: string): Case => one(code, 'rated_current_a', { rated_current_a: text });

const ERRORS: readonly Case[] = [
  number('placeholder', '-'),
  number('placeholder', 'n/a'),
  number('spreadsheet-error', '#REF!'),
  number('formula-text', '=2*20'),
  number('not-finite', 'NaN'),
  number('percent-sign', '50 %'),
  number('foreign-digits', '４３'),
  number('other-minus', '–43'),
  number('hexadecimal', '0x2B'),
  number('grouped-thousands', '1,250'),
  number('grouped-thousands', '1,234.5'),
  number('other-decimal-sign', '43,5'),
  number('text-beside-number', '43 A'),
  number('not-a-number', 'many'),
  number('number-too-large', '1e999'),
  number('number-too-small', '1e-999'),
  one('grouped-thousands', 'rated_current_a', { rated_current_a: '1.234' }, { decimal: ',' }),
  one('other-decimal-sign', 'duty_profile', { duty_profile: '1@4000;0.5@2000' }, { decimal: ',' }),
  one('other-decimal-sign', 'bearing_de', { bearing_de: '9/12,7/58,5/0' }),
  one('missing-required', 'tag', { tag: '' }),
  one('missing-required', 'rated_voltage_v', { rated_voltage_v: '' }),
  one('missing-required', 'rated_power_kw', { rated_power_kw: '' }),
  one('unknown-word', 'status', { status: 'broken' }),
  one('unknown-word', 'efficiency_class', { efficiency_class: 'IE9' }),
  one('rated-not-positive', 'rated_voltage_v', { rated_voltage_v: '0' }),
  one('rated-not-positive', 'rated_power_kw', { rated_power_kw: '-30' }),
  one('rated-not-positive', 'rated_power_factor_pct', { rated_power_factor_pct: '0' }),
  one('not-whole', 'rotor_bars', { rotor_bars: '44.5' }),
  one('not-even', 'poles', { poles: '3' }),
  one('not-allowed', 'load_torque_exponent', { load_torque_exponent: '3' }),
  one('not-allowed', 'demand_coincidence', { demand_coincidence: '1.2' }),
  one('not-allowed', 'rotor_bars', { rotor_bars: '2147483648' }),
  one('not-allowed', 'quoted_price', { quoted_price: '9.1e12' }),
  one('not-a-letter', 'code_letter', { code_letter: 'GG' }),
  one('not-yes-no', 'standby', { standby: 'maybe' }),
  one('unreadable-date', 'taken_at', { taken_at: '14/03/2026' }),
  one('unreadable-date', 'taken_at', { taken_at: '2026-02-30' }),
  one('unreadable-list', 'observed_lines_hz', { observed_lines_hz: '24.8;x' }),
  one('unreadable-teeth', 'gear_teeth', { gear_teeth: '23' }),
  one('unreadable-bearing', 'bearing_de', { bearing_de: '9/12.7/10/0' }),
  one('unreadable-duty', 'duty_profile', { duty_profile: '1@4000;half@2000' }),
  one('duty-too-long', 'duty_profile', { duty_profile: '1@4000;0.5@5000' }),
  one('hours-out-of-range', 'hours_per_year', { hours_per_year: '8785' }),
  one('power-units-contradict', 'rated_power_hp', { rated_power_kw: '75', rated_power_hp: '110' }),
  two('plate-contradiction', 'rated_voltage_v', {}, { rated_voltage_v: '400' }),
  two('plate-contradiction', 'rated_power_kw', {}, { rated_power_kw: '37' }),
  two('plate-contradiction', 'status', { status: 'running' }, { status: 'failed' }),
  one('curve-and-exponent', 'load_curve', { load_curve: 'kiln', load_torque_exponent: '0' }),
  two('curve-and-exponent', 'load_curve', { load_torque_exponent: '0' }, { load_curve: 'kiln' }),
  two('curve-and-exponent', 'load_torque_exponent', { load_curve: 'kiln' }, { load_torque_exponent: '2' }),
  two(
    'reading-contradiction',
    'input_power_kw',
    { taken_at: '2026-03-14T09:30+02:00', input_power_kw: '20' },
    { taken_at: '2026-03-14T07:30Z', input_power_kw: '21' },
  ),
  one('cell-too-long', 'description', { description: 'x'.repeat(32_768) }),
];

const WARNINGS: readonly Case[] = [
  { ...one('unknown-column', 'Colour', { Colour: 'red' }), row: 1 },
  one('power-units-differ', 'rated_power_hp', { rated_power_kw: '90', rated_power_hp: '125' }),
  one('efficiency-as-fraction', 'nominal_efficiency_pct', { nominal_efficiency_pct: '0.936' }),
  one('power-factor-as-fraction', 'power_factor_pct', { power_factor_pct: '-0.86' }),
  one('implausible-value', 'input_power_kw', { input_power_kw: '-21.4' }),
  one('implausible-value', 'voltage_v', { voltage_v: '0' }),
  one('implausible-value', 'nominal_efficiency_pct', { nominal_efficiency_pct: '936' }),
  one('unusual-value', 'rated_power_kw', { rated_power_kw: '75000' }),
  one('unusual-value', 'rated_voltage_v', { rated_voltage_v: '0.46' }),
  one('unusual-value', 'voltage_v', { voltage_v: '0.46' }),
  one('unusual-value', 'input_power_kw', { input_power_kw: '61500' }),
  one('incomplete-phases', 'voltage_ab_v', { voltage_ab_v: '460', voltage_ca_v: '458' }),
  one('incomplete-phases', 'resistance_bc_ohm', { resistance_bc_ohm: '0.21' }),
  one('phases-against-mean', 'voltage_v', { voltage_ab_v: '460', voltage_bc_v: '461', voltage_ca_v: '459', voltage_v: '400' }),
  one('reading-undated', 'taken_at', { input_power_kw: '20', taken_at: '' }),
  { ...one('reading-undated', 'taken_at', { input_power_kw: '20' }), row: 1 },
  one('reading-after-as-of', 'taken_at', { input_power_kw: '20', taken_at: '2026-01-02' }, { asOf: '2026-01-01' }),
  two('text-differs', 'description', { description: 'Pump' }, { description: 'Fan', input_power_kw: '20' }),
  one('hours-and-duty', 'duty_profile', { hours_per_year: '4000', duty_profile: '1@4000' }),
];

/** Codes that other tests cover because their input is no plain row of text. */
const ELSEWHERE: readonly IssueCode[] = [
  'no-number',
  'too-many-cells',
  'malformed-quote',
  'short-row',
  'unnamed-column',
  'cell-error',
  'formula-without-value',
  'date-for-value',
  'number-for-date',
  'missing-history',
  'unknown-indicator',
  'unknown-unit',
  'unknown-motor',
  'history-contradiction',
  'missing-price',
  'other-currency',
  'unknown-price-column',
  'price-without-class',
  'price-below-premium',
  'price-repeated',
  'price-after-as-of',
  'price-of-nothing',
  'unknown-bench-column',
  'rows-above-names',
];

describe('the catalogue of row issues', () => {
  it.each(ERRORS)('$code rejects the row and names $column', async ({ code, rows, column, row = 2, options }) => {
    const parsed = await parseRows(rows, options);
    const rejected = parsed.rejected.find((candidate) => candidate.row === row);
    expect(rejected?.issues.map((issue) => [issue.code, issue.column])).toContainEqual([code, column]);
    for (const issue of rejected?.issues ?? []) {
      expect(issue.text).toMatch(/^\S.{8,}\.$/);
      expect(issue.remedy).toMatch(/^\S.{8,}[.?]$/);
    }
    expect(placedRows(parsed)).toBe(rows.length);
    expect(parsed.motors.flatMap((motor) => motor.rows)).not.toContain(row);
  });

  it.each(WARNINGS)('$code keeps the row and names $column', async ({ code, rows, column, row = 2, options }) => {
    const parsed = await parseRows(rows, options);
    expect(parsed.rejected).toEqual([]);
    expect(parsed.warnings.map((issue) => [issue.code, issue.row, issue.column])).toContainEqual([code, row, column]);
    for (const issue of parsed.warnings) {
      expect(issue.text).toMatch(/^\S.{8,}\.$/);
      expect(issue.remedy).toMatch(/^\S.{8,}[.?]$/);
    }
    expect(placedRows(parsed)).toBe(rows.length);
  });

  it('shows how a cell of several numbers is written, with the decimal sign of the sheet', async () => {
    const remedies = async (decimal: '.' | ',') =>
      (await parseRows([{ ...BASE, duty_profile: 'always' }], { decimal })).rejected.flatMap(({ issues }) =>
        issues.map((issue) => issue.remedy),
      );
    expect(await remedies('.')).toEqual([expect.stringContaining('such as 1@4000;0.5@2000;')]);
    expect(await remedies(',')).toEqual([expect.stringContaining('such as 1@4000;0,5@2000;')]);
  });

  it('has a case for every code', () => {
    const covered = new Set([...ERRORS, ...WARNINGS].map((entry) => entry.code).concat(ELSEWHERE));
    const codes = [REFUSALS, ROW_SENTENCES].flatMap(Object.keys) as IssueCode[];
    expect(codes.filter((code) => !covered.has(code))).toEqual([]);
    const warnings = new Set(WARNINGS.map(({ code }) => code));
    expect(ERRORS.filter(({ code }) => warnings.has(code))).toEqual([]);
  });

  it('keeps the doubtful number as it was typed', async () => {
    const { motors } = await parseRows([{ ...BASE, nominal_efficiency_pct: '0.936', input_power_kw: '-21.4', voltage_v: '0' }]);
    expect(motors[0]?.motor.plate.nominalEfficiencyPct).toBe(0.936);
    expect(motors[0]?.motor.readings[0]).toMatchObject({ inputPowerKw: -21.4, voltageV: 0 });
  });

  it('names all errors of a row at once, and gives back its cells', async () => {
    const { rejected } = await parseRows([{ ...BASE, rated_voltage_v: '0', poles: '5', rated_current_a: '1,250' }]);
    expect(rejected[0]?.issues.map((issue) => issue.code)).toEqual(['rated-not-positive', 'not-even', 'grouped-thousands']);
    expect(rejected[0]?.cells).toEqual(['M-1', 'North', '30', '0', '5', '1,250']);
  });

  it('takes ragged rows: spare empty cells pass, spare full ones reject, missing ones are empty with a warning', async () => {
    const outcome = await parseText('tag,rated_power_kw,rated_voltage_v,frame\nA,30,460,180M,,\nB,30,460,180M,x\nC,30,460\n');
    if (!outcome.ok) expect.fail(outcome.problem.text);
    expect(outcome.motors.map(({ motor }) => motor.tag)).toEqual(['A', 'C']);
    expect(outcome.rejected.map(({ row, issues }) => [row, issues[0]?.code])).toEqual([[3, 'too-many-cells']]);
    expect(outcome.warnings.map(({ row, code }) => [row, code])).toEqual([[4, 'short-row']]);
  });

  it('keeps cells under a column without a name as notes, and says so once', async () => {
    const outcome = await parseText('tag,rated_power_kw,rated_voltage_v,,frame\nA,30,460,blue,180M\nB,30,460,red,180M\n');
    if (!outcome.ok) expect.fail(outcome.problem.text);
    expect(outcome.motors.map(({ notes }) => notes)).toEqual([{ 'column 4': 'blue' }, { 'column 4': 'red' }]);
    expect(outcome.warnings.map(({ row, code }) => [row, code])).toEqual([[2, 'unnamed-column']]);
  });

  it('rejects a row whose quoted cell goes on after its quote, and reads the next', async () => {
    const outcome = await parseText('tag,rated_power_kw,rated_voltage_v\n"A"x,30,460\n"B",30,460\nC,30,460\n');
    if (!outcome.ok) expect.fail(outcome.problem.text);
    expect(outcome.rejected[0]?.issues.map((issue) => issue.code)).toContain('malformed-quote');
    expect(outcome.motors.map(({ motor }) => motor.tag)).toContain('C');
  });
});
