import { database } from '@/lib/platform/db';
import { readProgress } from './data';
import type { EvaluationProgress } from './schema';

/** What there is to say of a study's evaluation now. */
export async function loadProgress(studyId: string): Promise<EvaluationProgress> {
  return readProgress(database().read, studyId);
}
