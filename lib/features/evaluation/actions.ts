'use server';

import { ok, problemOf, type Result, refuse } from '@/lib/platform/errors';
import { loadProgress } from './loaders';
import { cancelEvaluation, requestEvaluation } from './mutations';
import { type EvaluationProgress, studyForm } from './schema';

const UNREADABLE = refuse('form', 'The study is not named.', 'Load the page again.');

/** Has a study evaluated. */
export async function startEvaluation(input: unknown): Promise<Result<EvaluationProgress>> {
  const parsed = studyForm.safeParse(input);
  if (!parsed.success) return UNREADABLE;
  try {
    await requestEvaluation(parsed.data.studyId);
    return ok(await loadProgress(parsed.data.studyId));
  } catch (error) {
    console.error(error);
    return { ok: false, problem: problemOf(error) };
  }
}

/** Stops a study's evaluation; the figures of the last finished one stay. */
export async function stopEvaluation(input: unknown): Promise<Result<EvaluationProgress>> {
  const parsed = studyForm.safeParse(input);
  if (!parsed.success) return UNREADABLE;
  try {
    await cancelEvaluation(parsed.data.studyId);
    return ok(await loadProgress(parsed.data.studyId));
  } catch (error) {
    console.error(error);
    return { ok: false, problem: problemOf(error) };
  }
}
