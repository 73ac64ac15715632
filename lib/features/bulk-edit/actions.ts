'use server';

import { database } from '@/lib/platform/db';
import { problemOf, type Result, refuse } from '@/lib/platform/errors';
import { wakeRunner } from '../evaluation/runner';
import { whoSchema } from '../study/schema';
import { rememberWho } from '../study/who';
import { changeMany, previewBulk, takeBackMany } from './mutations';
import { type BulkDone, type BulkPreview, bulkCommit, bulkForm, bulkUndo } from './schema';

function unreadable(message: string | undefined) {
  return refuse('form', message ?? 'The form cannot be read.', 'Correct it and try again.');
}

/** Says what a change of many motors would do; nothing is changed. */
export async function previewChange(input: unknown): Promise<Result<BulkPreview>> {
  const parsed = bulkForm.safeParse(input);
  return parsed.success ? previewBulk(database(), parsed.data) : unreadable(parsed.error.issues[0]?.message);
}

/** Changes one fact of many motors. */
export async function commitChange(input: unknown): Promise<Result<BulkDone>> {
  const parsed = bulkCommit.safeParse(input);
  if (!parsed.success) return unreadable(parsed.error.issues[0]?.message);
  const who = whoSchema.safeParse(parsed.data.who);
  if (!who.success) return unreadable(who.error.issues[0]?.message);
  await rememberWho(who.data);
  return settled(() => changeMany(database(), parsed.data, { who: who.data, why: parsed.data.why.trim() }));
}

/** Takes a change of many motors back. */
export async function undoChange(input: unknown): Promise<Result<BulkDone>> {
  const parsed = bulkUndo.safeParse(input);
  if (!parsed.success) return unreadable(parsed.error.issues[0]?.message);
  const who = whoSchema.safeParse(parsed.data.who);
  if (!who.success) return unreadable(who.error.issues[0]?.message);
  return settled(() => takeBackMany(database(), parsed.data.studyId, parsed.data.batch, who.data));
}

async function settled(work: () => Promise<Result<BulkDone>>): Promise<Result<BulkDone>> {
  try {
    const done = await work();
    if (done.ok) wakeRunner();
    return done;
  } catch (error) {
    console.error(error);
    return { ok: false, problem: problemOf(error) };
  }
}
