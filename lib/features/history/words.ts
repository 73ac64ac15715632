import { columnByName } from '../fleet/columns';
import { settingName, settingText } from '../setup/setting-words';

/** What an entry of the history is about, as forms name it: a column, a key of the settings, else the words of the entry itself. */
export function fieldWords(field: string): string {
  const column = columnByName(field);
  if (column) return column.label;
  const { label, unit } = settingName(field);
  return [label, unit].filter(Boolean).join(' ');
}

/** A value of that entry in the unit that {@link fieldWords} names. */
export function valueWords(field: string, text: string): string {
  return columnByName(field) ? text : settingText(field, text);
}
