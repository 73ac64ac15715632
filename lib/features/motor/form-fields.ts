import type { Motor } from '@/lib/engine';
import { COLUMN_GROUPS, type Column } from '../fleet/column';
import { unitOrWords } from '../fleet/columns';
import { PLATE_COLUMNS, plateCells, READING_COLUMNS } from './typed-motor';

/** A cell of a form as plain data for the browser. */
export interface FormField {
  readonly name: string;
  readonly label: string;
  readonly unit: string;
  readonly meaning: string;
  readonly words?: readonly string[];
  /** What others wrote here before; anything else may be written too. */
  readonly known?: readonly string[];
  readonly numeric: boolean;
  /** A point in time, which may well be this moment. */
  readonly moment?: true;
  readonly value: string;
}

export interface FormGroup {
  readonly title: string;
  /** Shown closed until there is something in it. */
  readonly folded?: true;
  readonly fields: readonly FormField[];
}

/** The plate's form, filled with what is stored; money in the study's currency. */
export function plateForm(motor: Motor, currency: string): FormGroup[] {
  const cells = plateCells(motor);
  return grouped(PLATE_COLUMNS, currency, (name) => cells.get(name) ?? '');
}

/** An empty form for a reading; the study's instruments are offered by their names, by which their errors are found. */
export function readingForm(currency: string, instruments: readonly string[]): FormGroup[] {
  return grouped(READING_COLUMNS, currency, () => '').map(({ title, fields }) => ({
    title,
    fields: fields.map((field) =>
      field.name === 'instrument' && instruments.length > 0 ? { ...field, known: instruments } : field,
    ),
  }));
}

/**
 * The groups of a reading's form with the wanted columns in a group of their own behind that of when and how it was read, and the others folded
 * behind it; as they are where nothing is wanted.
 */
export function wantedFirst(groups: readonly FormGroup[], wanted: readonly string[]): readonly FormGroup[] {
  const [visit, ...others] = groups;
  const byName = new Map(others.flatMap(({ fields }) => fields.map((field) => [field.name, field])));
  const first = wanted.flatMap((name) => byName.get(name) ?? []);
  if (visit === undefined || first.length === 0) return groups;
  const rest = others.flatMap(({ title, fields }): FormGroup[] => {
    const left = fields.filter((field) => !first.includes(field));
    return left.length === 0 ? [] : [{ title, fields: left, folded: true }];
  });
  return [visit, { title: 'Wanted of this motor', fields: first }, ...rest];
}

function grouped(columns: readonly Column[], currency: string, value: (name: string) => string): FormGroup[] {
  const groups = new Map<string, FormField[]>();
  for (const column of columns) {
    const title = COLUMN_GROUPS[column.group];
    const fields = groups.get(title) ?? [];
    groups.set(title, fields);
    fields.push({ ...shape(column, currency), value: value(column.name) });
  }
  return [...groups].map(([title, fields]) => ({ title, fields }));
}

function shape(column: Column, currency: string): Omit<FormField, 'value'> {
  const { kind, name, label, meaning } = column;
  const words = kind.type === 'word' ? kind.words : kind.type === 'yes-no' ? ['yes', 'no'] : undefined;
  const plain = kind.type === 'text' || kind.type === 'letter' || words !== undefined;
  return {
    name,
    label,
    meaning,
    numeric: kind.type === 'number',
    unit: plain
      ? ''
      : kind.type === 'date'
        ? 'such as 2026-03-14 09:30'
        : kind.type === 'number' && kind.unit === 'currency'
          ? currency
          : unitOrWords(column),
    ...(words && { words }),
    ...(kind.type === 'date' && { moment: true as const }),
  };
}
