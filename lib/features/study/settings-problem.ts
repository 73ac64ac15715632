import { nearestWord } from '../fleet/nearest';
import { planWishesSchema } from '../plan/wishes';
import { accuracySchema, limitSchema, loadPointSchema, policySchema, rebateSchema, settingsFileSchema } from './settings-schema';
import { TARIFF_KEYS } from './tariff-schema';

/** What is wrong with a settings file, and what would make it right. */
export interface SettingsProblem {
  readonly code: 'not-json' | 'repeated-key' | 'unknown-key' | 'bad-value';
  /** Where in the file, such as `policy.at_failure`; empty for the file as a whole. */
  readonly key: string;
  readonly text: string;
  readonly remedy: string;
}

/** Known keys by the place where they stand, for asking what a misspelt one was meant to be. */
const KEYS: Readonly<Record<string, readonly string[]>> = {
  '': [...Object.keys(settingsFileSchema.shape), 'plan'],
  plan: Object.keys(planWishesSchema.shape),
  policy: Object.keys(policySchema.shape),
  accuracy: Object.keys(accuracySchema.shape),
  rebates: Object.keys(rebateSchema.shape),
  depreciation: ['method', 'years', 'factor'],
  ...TARIFF_KEYS,
  limits: Object.keys(limitSchema.shape),
  load_curves: Object.keys(loadPointSchema.shape),
};

interface Issue {
  readonly code?: string | undefined;
  readonly path: readonly PropertyKey[];
  readonly message: string;
  readonly keys?: readonly string[];
  readonly values?: readonly unknown[];
  readonly params?: { readonly remedy?: unknown } | undefined;
  readonly expected?: string | undefined;
  readonly origin?: string | undefined;
  readonly minimum?: number | bigint | undefined;
  readonly maximum?: number | bigint | undefined;
  readonly inclusive?: boolean | undefined;
}

/** The place of a key without list numbers and the name of the site, as {@link KEYS} has it. */
function placeOf(path: readonly string[]): string {
  const named = path.filter((part, index) => !/^\d+$/.test(part) && !(index === 1 && path[0] === 'tariffs'));
  return named.join('.');
}

/** The first complaint about a settings file in words, with the value that it is about. `raw` is the file as it was read. */
export function explainIssue(issue: Issue | undefined, raw: unknown): SettingsProblem {
  const path = (issue?.path ?? []).map(String);
  const where = path.join('.');
  if (issue?.code === 'unrecognized_keys') {
    const key = issue.keys?.[0] ?? '';
    const known = KEYS[placeOf(path)] ?? KEYS[path[0] ?? ''] ?? [];
    const near = nearestWord(key, known);
    return {
      code: 'unknown-key',
      key: [...path, key].join('.'),
      text: `${[...path, key].join('.')} is not a setting.`,
      remedy:
        near === undefined ? `Remove it; known here are ${known.join(', ')}.` : `Did you mean ${[...path, near].join('.')}?`,
    };
  }
  const name = where === '' ? 'The settings' : where;
  const value = valueAt(raw, path);
  const missing = path.length > 1 && value === undefined && issue?.code !== 'custom';
  const detail = missing ? 'is missing' : detailOf(issue, value);
  return {
    code: 'bad-value',
    key: where,
    text: `${name}: ${detail}.`,
    remedy:
      typeof issue?.params?.remedy === 'string'
        ? issue.params.remedy
        : missing
          ? `Add it to ${path.slice(0, -1).join('.')}.`
          : (shareMeant(issue, value) ??
            quotedNumber(issue, value) ??
            (where === '' ? 'Write the settings in one pair of braces { }, as the settings command prints them.' : undefined) ??
            'Correct the value, or leave the key out to take its default, which the settings command prints.'),
  };
}

function detailOf(issue: Issue | undefined, value: unknown): string {
  if (typeof value === 'number' && issue?.origin !== 'array') {
    const most = issue?.code === 'too_big' ? issue.maximum : undefined;
    const least = issue?.code === 'too_small' ? issue.minimum : undefined;
    if (most !== undefined) return `is ${value}, and the most is ${most}`;
    if (least !== undefined)
      return `is ${value}, and ${issue?.inclusive === false ? `it must be above ${least}` : `the least is ${least}`}`;
  }
  if (issue?.code === 'invalid_value' && issue.values && (typeof value === 'string' || typeof value === 'number'))
    return `is ${value}, and may be ${issue.values.join(' or ')}`;
  return (issue?.message ?? 'cannot be read').replace(/^Invalid input: |\.$/g, '');
}

/** A share or rate of 8 that was meant as 8 per cent. */
function shareMeant(issue: Issue | undefined, value: unknown): string | undefined {
  if (issue?.code !== 'too_big' || typeof value !== 'number' || issue.origin !== 'number') return undefined;
  const most = Number(issue.maximum);
  if (most < 1 || most > 2 || value > 100) return undefined;
  return `Rates and shares are fractions: ${value} % is written ${Number((value / 100).toPrecision(12))}.`;
}

/** A number that was put into quotes, which make a text of it. */
function quotedNumber(issue: Issue | undefined, value: unknown): string | undefined {
  if (issue?.code !== 'invalid_type' || issue.expected !== 'number' || typeof value !== 'string') return undefined;
  const read = value.trim() === '' ? Number.NaN : Number(value.trim().replace(',', '.'));
  return Number.isFinite(read) ? `Write the number without quotes: ${read}.` : undefined;
}

function valueAt(raw: unknown, path: readonly string[]): unknown {
  return path.reduce<unknown>(
    (inner, key) => (typeof inner === 'object' && inner !== null ? (inner as Readonly<Record<string, unknown>>)[key] : undefined),
    raw,
  );
}
