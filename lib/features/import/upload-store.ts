/**
 * Files that wait to be imported lie in the data folder, each in a folder of its own, until they are imported or dismissed. They
 * survive a restart and a closed tab.
 */
import { createWriteStream } from 'node:fs';
import { mkdir, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { readEnv } from '@/lib/platform/env';
import { sha256 } from '@/lib/platform/hash';
import { newId } from '@/lib/platform/id';
import { LIMITS, MEGABYTE } from '../fleet/table';
import { type UploadAbout, uploadAbout } from './schema';

/** Whatever is left lying for longer is removed when the next file comes. */
const KEPT_MS = 14 * 24 * 3600 * 1000;
const ID = /^[0-9a-f-]{36}$/;

function folderOf(id: string): string {
  if (!ID.test(id)) throw new RangeError('An upload is named by its id.');
  return path.join(readEnv().dataFolder, 'imports', id);
}

/** Where the bytes of an upload lie. */
export function uploadFile(id: string): string {
  return path.join(folderOf(id), 'sheet');
}

/** Whether a file may be kept at all. */
export function withinLimit(bytes: number): boolean {
  return bytes <= LIMITS.fileMegabytes * MEGABYTE;
}

/** Keeps a file or a pasted text for a study. */
export async function keepUpload(studyId: string, content: File | string): Promise<UploadAbout> {
  await removeStale();
  const id = newId();
  await mkdir(folderOf(id), { recursive: true });
  const file = uploadFile(id);
  if (typeof content === 'string') await writeFile(file, content, 'utf8');
  else await pipeline(Readable.from(chunksOf(content)), createWriteStream(file));
  const about: UploadAbout = {
    id,
    studyId,
    fileName: typeof content === 'string' ? 'Pasted rows' : content.name.slice(0, 200) || 'Sheet',
    bytes: (await stat(file)).size,
    hash: sha256(await readFile(file)),
    pasted: typeof content === 'string',
  };
  await saveUpload(about);
  return about;
}

async function* chunksOf(content: File): AsyncGenerator<Uint8Array> {
  const reader = content.stream().getReader();
  for (let next = await reader.read(); !next.done; next = await reader.read()) yield next.value;
}

/** Writes down what is known of an upload. */
export async function saveUpload(about: UploadAbout): Promise<void> {
  const file = path.join(folderOf(about.id), 'about.json');
  await writeFile(`${file}.partial`, JSON.stringify(about));
  await rename(`${file}.partial`, file);
}

/** What is known of an upload; `undefined` when it is gone, or belongs to another study. */
export async function readUpload(studyId: string, id: string): Promise<UploadAbout | undefined> {
  if (!ID.test(id)) return undefined;
  try {
    const about = uploadAbout.parse(JSON.parse(await readFile(path.join(folderOf(id), 'about.json'), 'utf8')));
    return about.studyId === studyId ? about : undefined;
  } catch {
    return undefined;
  }
}

/** The uploads of a study that wait, newest first. */
export async function readUploads(studyId: string): Promise<UploadAbout[]> {
  const names = await readdir(path.join(readEnv().dataFolder, 'imports')).catch((): string[] => []);
  const found = await Promise.all(names.map((name) => readUpload(studyId, name)));
  return found.filter((about) => about !== undefined).sort((a, b) => (a.id < b.id ? 1 : -1));
}

/** Removes an upload; nothing happens when it is gone already. */
export async function dropUpload(id: string): Promise<void> {
  await rm(folderOf(id), { recursive: true, force: true });
}

async function removeStale(): Promise<void> {
  const folder = path.join(readEnv().dataFolder, 'imports');
  for (const name of await readdir(folder).catch((): string[] => [])) {
    const age = await stat(path.join(folder, name)).then(
      ({ mtimeMs }) => Date.now() - mtimeMs,
      () => 0,
    );
    if (ID.test(name) && age > KEPT_MS) await dropUpload(name);
  }
}
