'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { database } from '@/lib/platform/db';
import { type Problem, problemOf } from '@/lib/platform/errors';
import { typedOf } from '../study/meanwhile';
import { refusedForm } from '../study/schema';
import { rememberWho } from '../study/who';
import { verifyFile } from './content';
import { readVersions } from './data';
import { freezeProgramme, sayOfVersion } from './mutations';
import { checkForm, eventForm, freezeForm } from './schema';

export interface SignState {
  readonly problem?: Pick<Problem, 'text' | 'remedy'>;
  readonly done?: string;
  /** Fields as they were typed, where they could not be taken. */
  readonly typed?: Readonly<Record<string, string>>;
  /** What is wrong with a field, by its name. */
  readonly refused?: Readonly<Record<string, string>>;
}

/** Freezes the programme as it stands and opens it. Form fields `study`, `who`. */
export async function freeze(_: SignState, form: FormData): Promise<SignState> {
  const typed = typedOf(form);
  const parsed = freezeForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) return { ...refusedForm(parsed.error), typed };
  const { study, who } = parsed.data;
  await rememberWho(who);
  let number: number;
  try {
    const frozen = await freezeProgramme(database(), { studyId: study, who });
    if (!frozen.ok) return { problem: frozen.problem, typed };
    number = frozen.value.number;
  } catch (error) {
    console.error(error);
    return { problem: problemOf(error), typed };
  }
  revalidatePath(`/${study}`, 'layout');
  redirect(`/${study}/review/${number}`);
}

/** Signs, returns or rejects a version. Form fields `study`, `number`, `hash`, `kind`, `who`, `comment`. */
export async function say(_: SignState, form: FormData): Promise<SignState> {
  const typed = typedOf(form);
  const parsed = eventForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) return { ...refusedForm(parsed.error), typed };
  const { study, ...wish } = parsed.data;
  await rememberWho(wish.who);
  try {
    const said = await sayOfVersion(database(), { studyId: study, ...wish });
    if (!said.ok) {
      const { code, remedy } = said.problem;
      return { problem: said.problem, typed, ...(code === 'no-comment' && { refused: { comment: remedy } }) };
    }
  } catch (error) {
    console.error(error);
    return { problem: problemOf(error), typed };
  }
  revalidatePath(`/${study}`, 'layout');
  return { done: `Version ${wish.number} is ${wish.kind}.` };
}

/** Says whether a file, or a page with a hash, is a version of this study, and what was said of it. Form fields `study`, `file`, `hash`. */
export async function check(_: SignState, form: FormData): Promise<SignState> {
  const parsed = checkForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) return refusedForm(parsed.error);
  const { study, file, hash: printed } = parsed.data;
  const sent = file !== undefined && file.size > 0 ? verifyFile(new Uint8Array(await file.arrayBuffer()), printed) : undefined;
  if (sent?.state === 'altered')
    return { problem: { text: sent.says[0] ?? '', remedy: 'Do not rely on it; take the copy in this book.' } };
  const wanted = sent?.hash ?? printed;
  if (wanted === undefined)
    return { problem: { text: 'There is nothing to check.', remedy: 'Choose a file, or type the hash of the page.' } };
  const known = (await readVersions(database().read, study)).find(({ hash }) => hash.startsWith(wanted));
  if (!known) {
    return {
      problem: {
        text: 'No version of this study has this hash.',
        remedy: 'Look whether it belongs to another study, or was typed wrongly.',
      },
    };
  }
  if (sent !== undefined && printed !== undefined && !known.hash.startsWith(printed)) {
    return { problem: { text: sent.says[0] ?? '', remedy: 'Compare the page and the file with the list of versions.' } };
  }
  const standing = known.standing === 'open' ? 'nobody has said anything of it yet' : `it was last ${known.standing}`;
  const what = sent === undefined ? 'The hash is that of' : 'The file is unchanged and is';
  const signed = known.events.some(({ kind }) => kind === 'signed') ? 'the signed' : 'the unsigned';
  return { done: `${what} ${signed} version ${known.number} of this study; ${standing}.` };
}
