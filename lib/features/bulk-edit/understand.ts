import { ok, type Result, refuse } from '@/lib/platform/errors';
import { formatAsStated } from '@/lib/platform/format';
import { columnByName } from '../fleet/columns';
import { readCell } from '../fleet/parse-cell';
import { inLabels } from '../fleet/screen-words';
import type { BulkField } from './schema';

/** A typed value as it was understood; absent when the fact is to be taken away. */
interface Understood {
  readonly value: string | number | undefined;
  readonly warning?: string;
}

const CONTEXT = { row: 0, decimal: '.', emptyWords: new Set<string>(), guarded: false } as const;

/** Reads what was typed by the rules of the sheet's column; nothing is changed in silence. */
export function understand(field: BulkField, typed: string): Result<Understood> {
  const column = columnByName(field);
  if (column === undefined) return refuse('unknown-field', `${field} cannot be changed here.`, 'Choose a field from the list.');
  const { value, error, warning } = readCell(column, typed, CONTEXT);
  if (error) return refuse(error.code, inLabels(error.text), inLabels(error.remedy));
  if (value === undefined && field === 'status') {
    return refuse('missing-cell', 'A motor always has a status.', 'Choose one of the words.');
  }
  if (typeof value !== 'string' && typeof value !== 'number' && value !== undefined) {
    return refuse('unknown-field', `${field} cannot be changed here.`, 'Choose a field from the list.');
  }
  return ok({ value, ...(warning && { warning: inLabels(`${warning.text} ${warning.remedy}`) }) });
}

/** A value of a field in words. */
export function valueWords(value: string | number | undefined, unit: string): string {
  if (value === undefined) return 'not stated';
  if (typeof value === 'string') return value;
  return `${formatAsStated(value)}${unit === '' ? '' : `\u202f${unit}`}`;
}
