'use server';

import { revalidatePath } from 'next/cache';
import { RedirectType, redirect } from 'next/navigation';
import { database } from '@/lib/platform/db';
import type { Problem } from '@/lib/platform/errors';
import { wakeRunner } from '../evaluation/runner';
import { typedOf } from '../study/meanwhile';
import { createStudy } from '../study/mutations';
import { refusedForm } from '../study/schema';
import { rememberWho } from '../study/who';
import { commitHistory } from './commit-history';
import { loadReading } from './loaders';
import { commitImport, undoImport } from './mutations';
import { isHistory } from './plan-history';
import { recipeOfForm } from './recipe-form';
import { commitForm, conflictsApart, firstUploadForm, undoForm, uploadForm, uploadKey } from './schema';
import { dropUpload, keepUpload, readUpload, saveUpload, uploadFile, withinLimit } from './upload-store';

/** What a form of the import shows after it was sent and refused. */
export interface ImportFormState {
  readonly problem?: Pick<Problem, 'text' | 'remedy'>;
  /** What was typed, so that it is there again; a browser keeps no file for a second try. */
  readonly typed?: Readonly<Record<string, string>>;
  /** What is wrong with a field, by its name. */
  readonly refused?: Readonly<Record<string, string>>;
}

const TOO_LARGE: Problem = {
  code: 'file-too-large',
  text: 'The file is larger than 200 MB.',
  remedy: 'Split the sheet into several files.',
};

/** Keeps a file or pasted rows and opens the preview. Form fields `study`, and `file` or `pasted`. */
export async function sendSheet(_: ImportFormState, form: FormData): Promise<ImportFormState> {
  const parsed = uploadForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) return refusedForm(parsed.error);
  const { study, file, pasted } = parsed.data;
  const content = file !== undefined && file.size > 0 ? file : pasted;
  if (typeof content !== 'string' && !withinLimit(content.size)) return { problem: TOO_LARGE };
  const about = await keepUpload(study, content);
  redirect(`/${study}/import/${about.id}`);
}

/** Makes a study and keeps its first sheet. Form fields `name`, `who`, and `file` or `pasted`. */
export async function startWithSheet(_: ImportFormState, form: FormData): Promise<ImportFormState> {
  const typed = typedOf(form);
  const parsed = firstUploadForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) return { ...refusedForm(parsed.error), typed };
  const { name, who, file, pasted } = parsed.data;
  const content = file !== undefined && file.size > 0 ? file : pasted;
  if (typeof content !== 'string' && !withinLimit(content.size)) return { problem: TOO_LARGE, typed };
  await rememberWho(who);
  const made = await createStudy(database(), { name, who });
  if (!made.ok) {
    const again = content === '' ? '' : ' Choose the sheet once more as well.';
    const { code, text, remedy } = made.problem;
    return { problem: { text, remedy: `${remedy}${again}` }, typed, ...(code === 'name-taken' && { refused: { name: text } }) };
  }
  if (typeof content === 'string' && content.trim() === '') redirect(`/${made.value.id}/import`);
  const about = await keepUpload(made.value.id, content);
  redirect(`/${made.value.id}/import/${about.id}`);
}

/** Opens the preview anew at its top; the number makes it another address, so that the browser asks again. */
function showAgain(study: string, upload: string): never {
  redirect(`/${study}/import/${upload}?look=${Date.now().toString(36)}`, RedirectType.replace);
}

/** Reads an upload in another way: decimal sign, delimiter, encoding, words for empty, columns. */
export async function readAgain(form: FormData): Promise<void> {
  const key = uploadKey.safeParse(Object.fromEntries(form));
  if (!key.success) redirect('/');
  const { study, upload } = key.data;
  const about = await readUpload(study, upload);
  if (about?.recipe === undefined) redirect(`/${study}/import`);
  await saveUpload({ ...about, recipe: await recipeOfForm(form, about, about.recipe) });
  showAgain(study, upload);
}

/** Forgets how an upload is read and starts from the suggestions of the sheet alone. */
export async function suggestAnew(form: FormData): Promise<void> {
  const key = uploadKey.safeParse(Object.fromEntries(form));
  if (!key.success) redirect('/');
  const { study, upload } = key.data;
  const about = await readUpload(study, upload);
  if (about === undefined) redirect(`/${study}/import`);
  await saveUpload({ ...about, recipe: await recipeOfForm(new FormData(), about, undefined), remembered: undefined });
  showAgain(study, upload);
}

/** Brings an upload into its study. Form fields `study`, `upload`, `who`, `conflicts`, and `apart` for each conflict shown. */
export async function commitUpload(_: ImportFormState, form: FormData): Promise<ImportFormState> {
  const typed = typedOf(form);
  const parsed = commitForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) return { ...refusedForm(parsed.error), typed };
  const apart = conflictsApart.safeParse(form.getAll('apart'));
  if (!apart.success) return { ...refusedForm(apart.error), typed };
  const { study, upload, who, conflicts } = parsed.data;
  const reading = await loadReading(study, upload);
  if (reading === undefined) {
    return {
      problem: { text: 'The sheet is gone, or cannot be read.', remedy: 'Choose the file again.' },
      typed,
    };
  }
  await rememberWho(who);
  const { about, recipe, sample } = reading;
  const file = { path: uploadFile(upload), name: about.fileName, bytes: about.bytes, hash: about.hash };
  const order = { studyId: study, file, kind: sample.kind, recipe, who };
  const done = isHistory(sample)
    ? await commitHistory(database(), order)
    : await commitImport(database(), { ...order, conflicts, apart: apart.data });
  if (!done.ok) return { problem: done.problem, typed };
  wakeRunner();
  await dropUpload(upload);
  revalidatePath(`/${study}`, 'layout');
  redirect(done.value.batchId === undefined ? `/${study}/import` : `/${study}/import/batch/${done.value.batchId}`);
}

/** Dismisses an upload; nothing is changed. Form fields `study`, `upload`. */
export async function dismissUpload(form: FormData): Promise<void> {
  const key = uploadKey.safeParse(Object.fromEntries(form));
  if (!key.success) redirect('/');
  const about = await readUpload(key.data.study, key.data.upload);
  if (about !== undefined) await dropUpload(about.id);
  redirect(`/${key.data.study}/import`);
}

/** Takes an import back whole. Form fields `study`, `batch`, `who`. */
export async function takeImportBack(_: ImportFormState, form: FormData): Promise<ImportFormState> {
  const parsed = undoForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) return { ...refusedForm(parsed.error), typed: typedOf(form) };
  const { study, batch, who } = parsed.data;
  await rememberWho(who);
  const done = await undoImport(database(), { studyId: study, batchId: batch, who });
  if (!done.ok) return { problem: done.problem };
  wakeRunner();
  revalidatePath(`/${study}`, 'layout');
  redirect(`/${study}/import/batch/${batch}`);
}
