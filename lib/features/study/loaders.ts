import { cache } from 'react';
import { database } from '@/lib/platform/db';
import { readStudies, readStudy, type StoredStudy, type StudyEntry } from './data';

export type { StoredStudy, StudyEntry } from './data';
export { loadWho } from './who';

/** The study of an address; `undefined` when there is none. Read once for a page, however many of its parts ask. */
export const currentStudy = cache(async (id: string): Promise<StoredStudy | undefined> => readStudy(database().read, id));

/** Every study, those in use first. */
export async function loadStudies(): Promise<readonly StudyEntry[]> {
  return readStudies(database().read);
}
