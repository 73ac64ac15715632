import { database } from '@/lib/platform/db';
import { readEvents, readSubjects, type StudyEvent } from './data';

export type { StudyEvent } from './data';

/** Lines on one page of the history. */
export const PAGE = 100;

/** One page of a study's history. */
export interface HistoryPage {
  readonly events: readonly StudyEvent[];
  readonly total: number;
  /** What has been changed at all, with counts. */
  readonly subjects: readonly { readonly subject: string; readonly count: number }[];
}

/** One page of a study's history, of one kind of thing if asked for; pages count from 1. */
export async function loadHistory(studyId: string, page: number, subject?: string): Promise<HistoryPage> {
  const db = database().read;
  return { ...(await readEvents(db, studyId, (page - 1) * PAGE, PAGE, subject)), subjects: await readSubjects(db, studyId) };
}
