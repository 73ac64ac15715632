import { formatAsStated } from '@/lib/platform/format';
import { tariffSchema } from '../study/tariff-schema';
import { asPerCent } from './per-cent';
import { SETTING_FIELDS, SETTING_GROUPS } from './setting-fields';
import { tariffLines } from './tariff-words';

/** A key of a settings file as the form names it; one that the form does not have, by its own words. */
export function settingName(key: string): { readonly label: string; readonly unit: string; readonly group: string } {
  for (const { title, fields } of SETTING_GROUPS) {
    const field = fields.find((each) => each.key === key);
    if (field) return { label: field.label, unit: field.unit === 'JSON' ? '' : field.unit, group: title };
  }
  const site = siteOf(key);
  if (site !== undefined) return { label: `Tariff of ${site}`, unit: '', group: groupOf('tariffs') };
  return { label: key.replaceAll('_', ' ').replace('.', ', '), unit: '', group: '' };
}

/** Puts keys of a settings file in the order of the form; those that it does not have come last. */
export function bySettingOrder(a: string, b: string): number {
  return placeOf(a) - placeOf(b);
}

function siteOf(key: string): string | undefined {
  return key.startsWith('tariffs.') ? key.slice('tariffs.'.length) : undefined;
}

function groupOf(key: string): string {
  return SETTING_GROUPS.find(({ fields }) => fields.some((field) => field.key === key))?.title ?? '';
}

function placeOf(key: string): number {
  const of = siteOf(key) === undefined ? key : 'tariffs';
  const at = SETTING_FIELDS.findIndex((field) => field.key === of);
  return at < 0 ? SETTING_FIELDS.length : at;
}

/** A tariff in the settings of a study, in lines; `undefined` where the key is of something else. */
export function settingLines(key: string, value: unknown): readonly string[] | undefined {
  if (siteOf(key) === undefined) return undefined;
  const read = tariffSchema.safeParse(value);
  return read.success ? tariffLines(read.data) : undefined;
}

/** A value of a settings file as a person reads it. */
export function settingValue(key: string, value: unknown): string {
  if (value === undefined || value === null || (Array.isArray(value) && value.length === 0)) return 'none';
  if (Array.isArray(value) && value.every((each) => typeof each !== 'object'))
    return value.map((each) => settingValue(key, each)).join('; ');
  const field = SETTING_FIELDS.find((each) => each.key === key);
  if (typeof value === 'number') return formatAsStated(field?.perCent ? Number(asPerCent(value)) : value);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'object') return settingLines(key, value)?.join('; ') ?? JSON.stringify(value);
  return field?.said?.[String(value)] ?? String(value);
}

/** A value that the history keeps as text: rates and shares in per cent, as their unit says. */
export function settingText(key: string, text: string): string {
  const field = SETTING_FIELDS.find((each) => each.key === key);
  if (!field?.perCent || text === '') return text;
  const figures = text.split('; ').map(Number);
  return figures.every(Number.isFinite) ? figures.map(asPerCent).join('; ') : text;
}
