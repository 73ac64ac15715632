import { z } from 'zod';

/** The name somebody types beside a change. Nobody proves it, and the history says so. */
export const whoSchema = z
  .string({ error: 'Write your name; it is kept with the change.' })
  .trim()
  .min(1, 'Write your name; it is kept with the change.')
  .max(80, 'Write a name of at most 80 characters.');

/** What a form says of each field that its schema refuses, so that the field is led to: the name stands at the foot of long forms. */
export function refusedFields(error: Refusal): Readonly<Record<string, string>> {
  return Object.fromEntries(error.issues.map(({ path, message }) => [String(path[0] ?? ''), message]));
}

/** A form that its schema refuses: the first complaint as the problem, and of each field what is wrong with it. */
export function refusedForm(error: Refusal) {
  const text = error.issues[0]?.message ?? 'The form cannot be read.';
  return { problem: { text, remedy: 'Mend it and send it again.' }, refused: refusedFields(error) };
}

/** What is needed of a schema's complaint. */
export interface Refusal {
  readonly issues: readonly { readonly message: string; readonly path: readonly PropertyKey[] }[];
}

/** Name of a study: what people call it in the list. */
const studyName = z
  .string({ error: 'Give the study a name.' })
  .trim()
  .min(1, 'Give the study a name.')
  .max(120, 'A name has at most 120 characters.');

const id = z.string().min(1).max(64);

export const renameForm = z.object({ study: id, name: studyName, who: whoSchema });
/** Puts a study aside or takes it back into the list; the name is the one remembered, if there is one. */
export const archiveForm = z.object({ study: id, archived: z.enum(['yes', 'no']) });
/** Removes a study for good; the box must be ticked. */
export const deleteForm = z.object({
  study: id,
  confirmed: z.literal('yes', { error: 'Tick the box to say that the study and all that belongs to it may go.' }),
});
