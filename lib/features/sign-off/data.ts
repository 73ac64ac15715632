import { gunzipSync } from 'node:zlib';
import type { PrismaClient, Tx } from '@/lib/platform/db';
import { sha256 } from '@/lib/platform/hash';
import { brokenEvent, type Content, contentSchema, EVENT_KINDS, type EventKind, type SignEvent } from './content';

export type Reader = PrismaClient | Tx;

type VersionRow = NonNullable<Awaited<ReturnType<Reader['planVersion']['findFirst']>>>;
type EventRow = NonNullable<Awaited<ReturnType<Reader['planEvent']['findFirst']>>>;

/** What became of a version: the last word counts, and the earlier ones stay. */
export type Standing = 'open' | EventKind;

export interface VersionEntry {
  readonly id: string;
  readonly number: number;
  readonly hash: string;
  readonly drawnBy: string;
  readonly createdAt: Date;
  readonly standing: Standing;
  readonly events: readonly SignEvent[];
}

/** A version whose stored bytes were checked. */
export type StoredVersion = VersionEntry &
  (
    | { readonly sound: true; readonly content: Content; readonly text: string }
    | { readonly sound: false; readonly damage: string }
  );

function standingOf(events: readonly Pick<SignEvent, 'kind'>[]): Standing {
  return events.at(-1)?.kind ?? 'open';
}

function eventOf({ kind, who, comment, at, hash, verified }: EventRow): SignEvent {
  const known = EVENT_KINDS.find((each) => each === kind);
  // An unknown word or a proved name was not written by this program: the chain of hashes says so.
  return { kind: known ?? 'returned', who, verified: false, comment, at: at.toISOString(), hash: known && !verified ? hash : '' };
}

function entryOf(row: Omit<VersionRow, 'content' | 'bytesHash'>, events: readonly EventRow[]): VersionEntry {
  const said = events.map(eventOf);
  const { id, number, contentHash: hash, drawnBy, createdAt } = row;
  return { id, number, hash, drawnBy, createdAt, standing: standingOf(said), events: said };
}

const IN_ORDER = { orderBy: { position: 'asc' } } as const;

/** The versions of a study, the newest first, without their content. */
export async function readVersions(db: Reader, studyId: string): Promise<VersionEntry[]> {
  const rows = await db.planVersion.findMany({
    where: { studyId },
    omit: { content: true, bytesHash: true },
    include: { events: IN_ORDER },
    orderBy: { number: 'desc' },
  });
  return rows.map(({ events, ...row }) => entryOf(row, events));
}

/** One version, with its stored bytes checked against their hashes. */
export async function readVersion(db: Reader, studyId: string, number: number): Promise<StoredVersion | undefined> {
  const row = await db.planVersion.findFirst({ where: { studyId, number }, include: { events: IN_ORDER } });
  if (row === null) return undefined;
  const entry = entryOf(row, row.events);
  const checked = checkStored(row, entry.events);
  return typeof checked === 'string' ? { ...entry, sound: false, damage: checked } : { ...entry, sound: true, ...checked };
}

/** The content of a stored version, or in a sentence what is not as it was written. */
function checkStored(
  row: VersionRow,
  events: readonly SignEvent[],
): { readonly content: Content; readonly text: string } | string {
  if (sha256(row.content) !== row.bytesHash) return 'The stored bytes are not those that were frozen.';
  let text: string;
  let content: Content;
  try {
    text = gunzipSync(row.content).toString('utf8');
    content = contentSchema.parse(JSON.parse(text));
  } catch {
    return 'The stored content cannot be read.';
  }
  if (sha256(text) !== row.contentHash) return 'The stored content does not have the hash it was frozen with.';
  const same =
    content.version === row.number && content.drawn.by === row.drawnBy && content.drawn.at === row.createdAt.toISOString();
  if (!same) return 'Number, name or date beside the content are not those that were frozen with it.';
  const broken = brokenEvent(row.contentHash, events);
  if (broken !== undefined) return `Entry ${broken + 1} of what was said of it is not as it was written.`;
  return { content, text };
}

/** Who changed each key of a study's settings last, when and why. */
export async function readSettingsChanges(
  db: Reader,
  studyId: string,
): Promise<readonly { readonly key: string; readonly by: string; readonly at: string; readonly why?: string }[]> {
  const rows = await db.changeEvent.findMany({
    where: { studyId, subject: 'settings', field: { not: null } },
    select: { field: true, who: true, at: true, why: true },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
  });
  const last = new Map<string, (typeof rows)[number]>();
  for (const row of rows) last.set(row.field ?? '', row);
  return [...last].map(([key, { who, at, why }]) => ({ key, by: who, at: at.toISOString(), ...(why !== null && { why }) }));
}
