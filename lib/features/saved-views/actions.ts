'use server';

import { database } from '@/lib/platform/db';
import { ok, problemOf, type Result, refuse } from '@/lib/platform/errors';
import { loadWho } from '../study/loaders';
import { loadViews } from './loaders';
import { keepView, removeView } from './mutations';
import { type ViewEntry, viewForm, viewRemoval } from './schema';

/** Keeps a view of a list under a name. */
export async function saveView(input: unknown): Promise<Result<readonly ViewEntry[]>> {
  const parsed = viewForm.safeParse(input);
  if (!parsed.success)
    return refuse('form', parsed.error.issues[0]?.message ?? 'The view cannot be read.', 'Correct it and try again.');
  try {
    await keepView(database(), parsed.data, await loadWho());
    return ok(await loadViews(parsed.data.studyId, parsed.data.screen));
  } catch (error) {
    console.error(error);
    return { ok: false, problem: problemOf(error) };
  }
}

/** Removes a view of one's own. */
export async function dropView(input: unknown): Promise<Result<undefined>> {
  const parsed = viewRemoval.safeParse(input);
  if (!parsed.success) return refuse('form', 'The view is not named.', 'Load the page again.');
  const { studyId, id } = parsed.data;
  const done = await removeView(database(), studyId, id, await loadWho());
  return done ? ok(undefined) : refuse('no-view', 'There is no such view of yours.', 'Load the page again.');
}
