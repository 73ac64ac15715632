import { database } from '@/lib/platform/db';
import { readFleetPack } from './data';

/** A study's list as JSON text, see `fleet-row.ts`; `undefined` when there is no such study. */
export async function loadFleetPack(studyId: string): Promise<string | undefined> {
  return readFleetPack(database().read, studyId);
}
