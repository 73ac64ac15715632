import type { Column } from './column';
import { MOTOR_COLUMNS } from './columns-motor';
import { READING_COLUMNS } from './columns-reading';

/** Every column of the fleet sheet, in the order in which we write them. */
export const COLUMNS: readonly Column[] = [...MOTOR_COLUMNS, ...READING_COLUMNS];

/**
 * Columns that a file of rejected rows carries beside the original ones. An import passes over them,
 * so that the file can be given back once it is mended.
 */
export const RETURNED_COLUMNS: readonly Column[] = [
  ['rejected_row', 'Row', 'Row of the original sheet, as a spreadsheet shows it.'],
  ['rejected_reason', 'Reason', 'Why the row was rejected.'],
  ['rejected_remedy', 'Remedy', 'What would make it acceptable.'],
].map(([name = '', label = '', meaning = '']) => ({
  name,
  kind: { type: 'passed-over' },
  target: { of: 'special' },
  scope: 'none',
  group: 'returned',
  label,
  meaning,
}));

const BY_NAME: ReadonlyMap<string, Column> = new Map([...COLUMNS, ...RETURNED_COLUMNS].map((column) => [column.name, column]));

/** The column of this name; names are compared without surrounding spaces and in lower case. */
export function columnByName(name: string): Column | undefined {
  return BY_NAME.get(name.trim().toLowerCase());
}

/** The unit of a column, or its words, as the documentation and the blank sheet show them. */
export function unitOrWords(column: Column): string {
  const { kind } = column;
  switch (kind.type) {
    case 'text':
      return 'text';
    case 'letter':
      return 'one letter';
    case 'number':
      if (kind.oneOf) return kind.oneOf.join(', ');
      if (kind.unit === '1')
        return kind.limits ? `${kind.limits[0]} to ${kind.limits[1]}` : kind.whole ? 'whole number' : 'number';
      if (kind.unit === 'poles') return 'even number';
      return kind.unit === 'currency' ? 'money' : kind.unit;
    case 'word':
      return kind.words.join(', ');
    case 'yes-no':
      return 'yes, no';
    case 'date':
      return 'ISO 8601';
    case 'number-list':
      return `${kind.unit}, list a;b;c`;
    case 'teeth':
      return 'n;m';
    case 'bearing':
      return 'balls/ball_mm/pitch_mm/angle_deg';
    case 'duty':
      return 'fraction@hours;…';
    case 'passed-over':
      return 'text';
  }
}
