import { BENCH_SECTIONS, type BenchPoint, type BenchSections } from '@/lib/engine';
import { type Column, type ColumnKind, signed, specialColumn, text, word } from '../fleet/column';

/** A column of the bench test sheet, and the field of a point that it fills. */
export interface BenchColumn extends Column {
  readonly field?: Exclude<keyof BenchPoint, 'row'>;
}

function column(name: string, kind: ColumnKind, label: string, meaning: string, field?: BenchColumn['field']): BenchColumn {
  const declared = specialColumn(name, kind, 'none', 'tests', [label, meaning]);
  return field === undefined ? declared : { ...declared, field };
}

/** The columns of the bench test sheet, in the order of the blank sheet. What is impossible is judged by the engine, not here. */
export const BENCH_COLUMNS: readonly BenchColumn[] = [
  column('tag', text, 'Tag', 'The motor tested, by its tag in the fleet sheet.'),
  column('test', text, 'Test', 'Name of the test; rows of one name belong together.'),
  { ...column('section', word(...BENCH_SECTIONS), 'Section', 'Part of the test to which the row belongs.'), required: 'always' },
  column('voltage_v', signed('V'), 'Voltage', 'Mean line-to-line voltage.', 'voltageV'),
  column('current_a', signed('A'), 'Current', 'Mean line current.', 'currentA'),
  column('input_power_kw', signed('kW'), 'Input power', 'Three-phase input power.', 'inputPowerKw'),
  column('torque_nm', signed('N·m'), 'Torque', 'Torque as the dynamometer showed it.', 'torqueNm'),
  column('speed_rpm', signed('r/min'), 'Speed', 'Shaft speed.', 'speedRpm'),
  column('frequency_hz', signed('Hz'), 'Frequency', 'Supply frequency; the rated one when empty.', 'frequencyHz'),
  column('winding_temp_c', signed('°C'), 'Winding', 'Temperature of the stator winding.', 'windingTempC'),
  column('resistance_ohm', signed('Ω'), 'Resistance', 'Mean resistance from terminal to terminal.', 'resistanceOhm'),
  column('ambient_c', signed('°C'), 'Cooling air', 'Temperature of the cooling air at its inlet.', 'ambientC'),
];

/** Columns of the table of entry: those that hold a measured value. */
export const ENTRY_COLUMNS = BENCH_COLUMNS.filter((column) => column.field !== undefined);

type Field = NonNullable<BenchColumn['field']>;

/** Quantities that a section has no use for, whatever the procedure; the engine passes them over. */
const USELESS: Readonly<Record<keyof BenchSections, readonly Field[]>> = {
  cold: ['voltageV', 'currentA', 'inputPowerKw', 'torqueNm', 'speedRpm', 'frequencyHz', 'ambientC'],
  'rated-load': ['voltageV', 'currentA', 'inputPowerKw', 'torqueNm', 'speedRpm', 'frequencyHz'],
  load: [],
  dynamometer: ['ambientC'],
  'no-load': ['torqueNm', 'speedRpm', 'ambientC'],
  'locked-rotor': ['torqueNm', 'speedRpm', 'ambientC'],
  'rotor-removed': ['torqueNm', 'speedRpm', 'ambientC'],
  'reverse-rotation': ['ambientC'],
};

/** Sections that have a use for a quantity. */
export function sectionsWith(field: Field): (keyof BenchSections)[] {
  return BENCH_SECTIONS.filter((section) => !USELESS[section].includes(field));
}
