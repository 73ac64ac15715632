import { database } from '@/lib/platform/db';
import { versionFile } from './content';
import { readVersion, readVersions, type StoredVersion, type VersionEntry } from './data';

export { type Content, eventWords, type Programme } from './content';
export type { VersionEntry } from './data';

/** The frozen versions of a study, the newest first. */
export async function loadVersions(studyId: string): Promise<readonly VersionEntry[]> {
  return readVersions(database().read, studyId);
}

/** A version, checked against its hashes. */
export async function loadVersion(studyId: string, number: number): Promise<StoredVersion | undefined> {
  return Number.isSafeInteger(number) && number > 0 ? readVersion(database().read, studyId, number) : undefined;
}

/** A version as a file; `undefined` when there is none or it is damaged. */
export async function loadVersionFile(studyId: string, number: number): Promise<string | undefined> {
  const version = await loadVersion(studyId, number);
  return version?.sound === true ? versionFile(version.text, version.hash, version.events) : undefined;
}
