import { z } from 'zod';
import { canonicalJson, sha256 } from '@/lib/platform/hash';
import { programme } from '../plan/programme';

const settingsChange = z.object({ key: z.string(), by: z.string(), at: z.string(), why: z.string().optional() });
const price = z.looseObject({
  item: z.string(),
  price: z.number(),
  date: z.string().optional(),
  source: z.string().optional(),
});

/** All that a frozen version holds. Members that are only kept, not read again here, stay unknown. */
export const contentSchema = z.object({
  study: z.object({ name: z.string(), demo: z.boolean() }),
  version: z.number(),
  drawn: z.object({ by: z.string(), at: z.string() }),
  engine: z.string(),
  tables: z.array(z.object({ id: z.string(), edition: z.string() })),
  /** The settings file, complete. */
  settings: z.looseObject({
    currency: z.string(),
    as_of: z.string(),
    horizon_years: z.number(),
    policy: z.looseObject({ max_simple_payback_years: z.number() }).optional(),
  }),
  /** Who changed a key of the settings last, when and why; keys that are not named have their defaults, or were set with the study. */
  settings_changes: z.array(settingsChange).optional(),
  prices: z.looseObject({ invented: z.boolean(), prices: z.array(price).optional() }),
  instruments: z.array(z.unknown()),
  /** The fleet as sheet: reading it gives the motors with the readings that count. */
  fleet: z.string(),
  /** The same motors as the engine took them, with values of single indicators and bench tests. */
  motors: z.array(z.unknown()),
  /** Each motor's result as in the results file. */
  results: z.array(z.unknown()),
  programme,
});
export type Content = z.infer<typeof contentSchema>;

export const EVENT_KINDS = ['signed', 'returned', 'rejected'] as const;
export type EventKind = (typeof EVENT_KINDS)[number];

const event = z.strictObject({
  kind: z.enum(EVENT_KINDS),
  who: z.string(),
  verified: z.literal(false),
  comment: z.string(),
  at: z.string(),
  hash: z.string(),
});
/** What somebody said of a version, as it travels in its file. */
export type SignEvent = z.infer<typeof event>;

const fileSchema = z.strictObject({
  format: z.literal('frozen programme'),
  schema: z.literal(1),
  hash: z.string(),
  content: z.unknown(),
  events: z.array(event),
});

/** The hash of an event: over the version, the event before it and its own words. */
export function eventHash(contentHash: string, before: string | undefined, { hash: _, ...said }: SignEvent): string {
  return sha256(canonicalJson({ version: contentHash, before: before ?? '', ...said }));
}

/** The place of the first event whose hash does not follow from its words and the one before; `undefined` when all do. */
export function brokenEvent(contentHash: string, events: readonly SignEvent[]): number | undefined {
  const at = events.findIndex((each, index) => each.hash !== eventHash(contentHash, events[index - 1]?.hash, each));
  return at === -1 ? undefined : at;
}

/** A version as a file: one JSON text with its hash and what was said of it, in the one form in which it can be written. */
export function versionFile(contentText: string, contentHash: string, events: readonly SignEvent[]): string {
  const said = canonicalJson(events);
  // Members in the order of their names, as canonical JSON has them; the content is text already.
  return `{"content":${contentText},"events":${said},"format":"frozen programme","hash":"${contentHash}","schema":1}\n`;
}

/** What can be said of a file. */
export interface Verdict {
  readonly state: 'signed' | 'not-signed' | 'altered';
  /** Sentences for people, the verdict first. */
  readonly says: readonly string[];
  readonly hash?: string;
  readonly study?: string;
  readonly version?: number;
  readonly events: readonly SignEvent[];
}

const HASH_DIGITS = 64;
/** Digits of a printed hash that are enough to name a version. */
export const ENOUGH_DIGITS = 12;

/** A printed hash as typed: spaces and dashes do not count. `undefined` when it cannot be one. */
export function typedHash(text: string): string | undefined {
  const digits = text.toLowerCase().replace(/[\s-]/g, '');
  return new RegExp(`^[0-9a-f]{${ENOUGH_DIGITS},${HASH_DIGITS}}$`).test(digits) ? digits : undefined;
}

function altered(...says: string[]): Verdict {
  return { state: 'altered', says, events: [] };
}

/**
 * Whether a file is a signed version, unchanged to the last byte. It needs no database: the hash is computed anew from the content, and each event's from
 * the one before. Whoever makes a new file with new hashes is found by the hash on paper, or in the book, alone.
 * @param printed the hash of a printed page, or its first digits: the file must be of the same version.
 */
export function verifyFile(bytes: Uint8Array, printed?: string): Verdict {
  let text: string;
  let raw: unknown;
  try {
    text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
    raw = JSON.parse(text);
  } catch {
    return altered('This is not a frozen programme as it was exported: it cannot be read.');
  }
  const file = fileSchema.safeParse(raw);
  const content = file.success ? contentSchema.safeParse(file.data.content) : undefined;
  if (!file.success || !content?.success)
    return altered('This is not a frozen programme as it was exported: parts are missing or added.');
  const { hash, events } = file.data;
  const contentText = canonicalJson(file.data.content);
  if (sha256(contentText) !== hash)
    return altered('The content does not have the hash it carries: it was changed after it was frozen.');
  const broken = brokenEvent(hash, events);
  if (broken !== undefined) return altered(`Entry ${broken + 1} of what was said of it was changed afterwards.`);
  if (text !== versionFile(contentText, hash, events)) return altered('The file is not byte for byte as it was exported.');
  const found = { hash, study: content.data.study.name, version: content.data.version, events };
  if (printed !== undefined && !hash.startsWith(printed)) {
    return {
      ...found,
      state: 'not-signed',
      says: [`The file is unchanged, but of another version than the printed page: its hash is ${hash}.`],
    };
  }
  const name = `version ${found.version} of ${found.study}`;
  const said = events.map(eventWords);
  if (!events.some(({ kind }) => kind === 'signed')) {
    return { ...found, state: 'not-signed', says: [`The file is unchanged and is ${name}, but nobody has signed it.`, ...said] };
  }
  const later = events.at(-1)?.kind === 'rejected' ? ' It was rejected later.' : '';
  return { ...found, state: 'signed', says: [`The file is unchanged and is the signed ${name}.${later}`, ...said] };
}

/** An event in a sentence. */
export function eventWords({ kind, who, at, comment }: SignEvent): string {
  return `${kind[0]?.toUpperCase()}${kind.slice(1)} by ${who} (name not verified) on ${at}${comment === '' ? '.' : `: ${comment}`}`;
}
