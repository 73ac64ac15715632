import { cookies } from 'next/headers';
import { cache } from 'react';
import { database } from '@/lib/platform/db';
import { readStudies, readStudy, type StoredStudy, type StudyEntry } from './data';
import { type ReaderUnits, readUnits, UNITS_COOKIE } from './reader-units';

export type { StoredStudy, StudyEntry } from './data';
export { loadWho } from './who';

/** The reader's unit of shaft power. */
export async function loadUnits(): Promise<ReaderUnits> {
  return readUnits((await cookies()).get(UNITS_COOKIE)?.value);
}

/** The study of an address; `undefined` when there is none. Read once for a page, however many of its parts ask. */
export const currentStudy = cache(async (id: string): Promise<StoredStudy | undefined> => readStudy(database().read, id));

/** Every study, those in use first. */
export async function loadStudies(): Promise<readonly StudyEntry[]> {
  return readStudies(database().read);
}
