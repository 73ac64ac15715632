import { formatAsStated } from '@/lib/platform/format';
import { SETTING_FIELDS, SETTING_GROUPS } from './setting-fields';

/** A key of a settings file as the form names it; one that the form does not have, by its own words. */
export function settingName(key: string): { readonly label: string; readonly unit: string; readonly group: string } {
  for (const { title, fields } of SETTING_GROUPS) {
    const field = fields.find((each) => each.key === key);
    if (field) return { label: field.label, unit: field.unit === 'JSON' ? '' : field.unit, group: title };
  }
  return { label: key.replaceAll('_', ' ').replace('.', ', '), unit: '', group: '' };
}

/** Puts keys of a settings file in the order of the form; those that it does not have come last. */
export function bySettingOrder(a: string, b: string): number {
  return placeOf(a) - placeOf(b);
}

function placeOf(key: string): number {
  const at = SETTING_FIELDS.findIndex((field) => field.key === key);
  return at < 0 ? SETTING_FIELDS.length : at;
}

/** A value of a settings file as a person reads it. */
export function settingValue(key: string, value: unknown): string {
  if (value === undefined || value === null || (Array.isArray(value) && value.length === 0)) return 'none';
  if (Array.isArray(value) && value.every((each) => typeof each !== 'object'))
    return value.map((each) => settingValue(key, each)).join('; ');
  if (typeof value === 'number') return formatAsStated(value);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'object') return JSON.stringify(value);
  return SETTING_FIELDS.find((each) => each.key === key)?.said?.[String(value)] ?? String(value);
}
