import { COLUMN_GROUPS, type Column } from './column';
import { COLUMNS, unitOrWords } from './columns';
import { csvRow, type Writable } from './csv-cell';
import type { Dialect } from './table';

const PLAIN: Dialect = { delimiter: ',', decimal: '.' };
const MARK = 'Example: delete this row';

/** Invented motors that show how rows are filled in: one read by power, one with two readings of which the second has no plate. */
const EXAMPLES: readonly Readonly<Record<string, string | number>>[] = [
  {
    tag: 'EXAMPLE-1',
    site: 'Example works',
    area: 'Boiler house',
    description: MARK,
    rated_power_kw: 30,
    rated_voltage_v: 460,
    rated_current_a: 48,
    rated_speed_rpm: 1770,
    rated_frequency_hz: 60,
    nominal_efficiency_pct: 93.6,
    enclosure: 'enclosed',
    driven_machine: 'pump',
    hours_per_year: 6000,
    taken_at: '2026-01-14T09:30',
    voltage_v: 458,
    current_a: 33.5,
    input_power_kw: 21.4,
    shaft_speed_rpm: 1781,
  },
  {
    tag: 'EXAMPLE-2',
    site: 'Example works',
    description: MARK,
    rated_power_hp: 100,
    status: 'running',
    rated_voltage_v: 460,
    rated_speed_rpm: 1185,
    poles: 6,
    efficiency_class: 'standard',
    driven_machine: 'fan',
    duty_profile: '1@4000;0.5@2000',
    taken_at: '2026-01-14T10:05',
    voltage_ab_v: 461,
    voltage_bc_v: 457,
    voltage_ca_v: 459,
    current_a_a: 92,
    current_b_a: 90,
    current_c_a: 91,
  },
  {
    tag: 'EXAMPLE-2',
    site: 'Example works',
    description: MARK,
    taken_at: '2026-02-11T10:40',
    input_power_kw: 58.2,
    vibration_mm_s: 2.1,
  },
];

/** The words of an example under the dialect's decimal sign; profiles hold decimals inside their text. */
function exampleCell(value: string | number | undefined, column: Column, dialect: Dialect): Writable {
  if (typeof value === 'string' && column.kind.type === 'duty' && dialect.decimal === ',') return value.replaceAll('.', ',');
  return value;
}

/** A fleet sheet with all columns and three rows marked as examples, as CSV. */
export function blankSheet(dialect: Dialect = PLAIN): string {
  const rows = EXAMPLES.map((example) => COLUMNS.map((column) => exampleCell(example[column.name], column, dialect)));
  return [COLUMNS.map(({ name }) => name), ...rows].map((row) => csvRow(row, dialect)).join('');
}

/** The same as a workbook; its second sheet says what each column means and in which unit or words it is filled in. */
export async function blankWorkbook(): Promise<Uint8Array> {
  const { default: excel } = await import('exceljs');
  const book = new excel.Workbook();
  const sheet = book.addWorksheet('Motors', { views: [{ state: 'frozen', ySplit: 1, xSplit: 1 }] });
  sheet.addRow(COLUMNS.map(({ name }) => name)).font = { bold: true };
  for (const example of EXAMPLES) sheet.addRow(COLUMNS.map(({ name }) => example[name] ?? null));
  for (const [at, { name }] of COLUMNS.entries()) sheet.getColumn(at + 1).width = Math.max(10, name.length + 2);
  const meanings = book.addWorksheet('Columns', { views: [{ state: 'frozen', ySplit: 1 }] });
  meanings.addRow(['column', 'unit or words', 'meaning', 'required', 'group']).font = { bold: true };
  for (const column of COLUMNS) {
    meanings.addRow([column.name, unitOrWords(column), column.meaning, requiredWords(column), COLUMN_GROUPS[column.group]]);
  }
  for (const [at, width] of [28, 36, 90, 18, 28].entries()) meanings.getColumn(at + 1).width = width;
  return new Uint8Array(await book.xlsx.writeBuffer());
}

/** Whether a column must be filled in, in words. */
export function requiredWords(column: Column): string {
  if (column.required === 'always') return 'yes';
  return column.required === 'one-of-power' ? 'one of the two' : '';
}
