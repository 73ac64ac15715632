'use server';

import { revalidatePath } from 'next/cache';
import type { BackupEntry } from '@/lib/platform/backup-file';
import { type Result, refuse } from '@/lib/platform/errors';
import type { Restored } from '@/lib/platform/restore-file';
import { wakeRunner } from '../evaluation/runner';
import { makeBackup, restoreNamed, restoreSent } from './mutations';
import { restoreForm, sentForm } from './schema';

/** Makes a backup now. */
export async function backUpNow(): Promise<Result<BackupEntry>> {
  const done = makeBackup();
  revalidatePath('/', 'layout');
  return done;
}

/** Restores a backup; form fields `name` and `confirmed` (`yes`). */
export async function restoreFromBackup(form: FormData): Promise<Result<Restored>> {
  const parsed = restoreForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) {
    return refuse('form', parsed.error.issues[0]?.message ?? 'The form cannot be read.', 'Fill in the form and send it again.');
  }
  return restored(restoreNamed(parsed.data.name));
}

/** Restores a file from the reader's computer; form fields `file` and `confirmed` (`yes`). */
export async function restoreFromFile(form: FormData): Promise<Result<Restored>> {
  const parsed = sentForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) {
    return refuse('form', parsed.error.issues[0]?.message ?? 'The form cannot be read.', 'Fill in the form and send it again.');
  }
  return restored(restoreSent(new Uint8Array(await parsed.data.file.arrayBuffer())));
}

/** What is restored may hold evaluations that were waiting, or figures of an earlier engine. */
function restored(done: Result<Restored>): Result<Restored> {
  if (done.ok) wakeRunner();
  revalidatePath('/', 'layout');
  return done;
}
