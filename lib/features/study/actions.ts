'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { database } from '@/lib/platform/db';
import type { Problem } from '@/lib/platform/errors';
import { typedOf } from './meanwhile';
import { archiveStudy, deleteStudy, renameStudy } from './mutations';
import { archiveForm, deleteForm, refusedForm, renameForm } from './schema';
import { loadWho, rememberWho } from './who';

/** What a form shows after it was sent: nothing at first, a problem when it was refused. */
export type FormState = {
  readonly problem?: Pick<Problem, 'text' | 'remedy'>;
  readonly done?: string;
  /** Fields as they were typed, where they could not be taken. */
  readonly typed?: Readonly<Record<string, string>>;
  /** What is wrong with a field, by its name. */
  readonly refused?: Readonly<Record<string, string>>;
};

/** Gives a study another name. Form fields `study`, `name`, `who`. */
export async function changeStudyName(_: FormState, form: FormData): Promise<FormState> {
  const typed = typedOf(form);
  const parsed = renameForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) return { ...refusedForm(parsed.error), typed };
  await rememberWho(parsed.data.who);
  const done = await renameStudy(database(), { ...parsed.data, id: parsed.data.study });
  revalidatePath('/', 'layout');
  if (done.ok) return { done: 'The study has its new name.' };
  const { code, text } = done.problem;
  return { problem: done.problem, typed, ...(code === 'name-taken' && { refused: { name: text } }) };
}

/** Puts a study aside or takes it back. Form fields `study`, `archived` (`yes`, `no`). */
export async function setArchived(form: FormData): Promise<void> {
  const parsed = archiveForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) redirect('/');
  const { study, archived } = parsed.data;
  const who = await loadWho();
  await archiveStudy(database(), { id: study, archived: archived === 'yes', who: who === '' ? 'not named' : who });
  revalidatePath('/', 'layout');
  redirect(archived === 'yes' ? `/?removed=${study}` : '/');
}

/** Removes a study that was put aside for good. Form fields `study`, `confirmed` (`yes`). */
export async function removeStudy(_: FormState, form: FormData): Promise<FormState> {
  const parsed = deleteForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) return refusedForm(parsed.error);
  const done = await deleteStudy(database(), parsed.data.study);
  revalidatePath('/', 'layout');
  return done.ok ? { done: 'The study is gone.' } : { problem: done.problem };
}
