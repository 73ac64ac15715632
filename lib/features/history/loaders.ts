import { database } from '@/lib/platform/db';
import { readEvents, type StudyEvent } from './data';

export type { StudyEvent } from './data';

/** Lines on one page of the history. */
export const PAGE = 100;

/** One page of a study's history; pages count from 1. */
export async function loadHistory(
  studyId: string,
  page: number,
): Promise<{ readonly events: readonly StudyEvent[]; readonly total: number }> {
  return readEvents(database().read, studyId, (page - 1) * PAGE, PAGE);
}
