import { database } from '@/lib/platform/db';
import { readWorklist } from './data';
import type { Worklist } from './schema';

/** The motors of a study that need a person; `undefined` before the first evaluation. */
export async function loadWorklist(studyId: string): Promise<Worklist | undefined> {
  return readWorklist(database().read, studyId);
}
