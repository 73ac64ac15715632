import { z } from 'zod';
import { whoSchema } from '../study/who';

const id = z.string().min(1).max(64);

export const settingsForm = z.object({ study: id, who: whoSchema, why: z.string().trim().max(500).optional() });
export const undoForm = z.object({ study: id, who: whoSchema, batch: id });
export const fileForm = z.object({
  study: id,
  who: whoSchema,
  file: z.file().min(1, 'Choose a file.').max(5_000_000, 'A file of at most 5 MB.'),
});

/** What a form of the setup shows once it was sent. */
export interface SetupState {
  readonly problem?: { readonly text: string; readonly remedy: string };
  readonly refused?: Readonly<Record<string, string>>;
  readonly typed?: Readonly<Record<string, string>>;
  readonly done?: string;
  /** The act that can be taken back, as the history calls it. */
  readonly batch?: string;
}
