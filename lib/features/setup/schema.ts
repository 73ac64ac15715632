import { z } from 'zod';
import { whoSchema } from '../study/schema';
import type { TariffView } from './tariff-view';

const id = z.string().min(1).max(64);

export const settingsForm = z.object({ study: id, who: whoSchema, why: z.string().trim().max(500).optional() });
export const undoForm = z.object({ study: id, who: whoSchema, batch: id });
export const fileForm = z.object({
  study: id,
  who: whoSchema,
  file: z.file().min(1, 'Choose a file.').max(5_000_000, 'A file of at most 5 MB.'),
});

/** The tariff form: what is to be done with it, and for which site. To work it out takes no name; the others change the settings. */
export const tariffForm = z.object({
  study: id,
  site: z.string().max(1000),
  intent: z.enum(['work-out', 'save', 'remove']),
  who: z.string(),
});

/** What the tariff form shows once it was sent. */
export interface TariffState extends SetupState {
  /** What the typed tariff comes to. */
  readonly view?: TariffView;
}

/** What a form of the setup shows once it was sent. */
export interface SetupState {
  readonly problem?: { readonly text: string; readonly remedy: string };
  readonly refused?: Readonly<Record<string, string>>;
  readonly typed?: Readonly<Record<string, string>>;
  /** What holds now, where somebody else changed it since the form was opened: sent again, the form was opened on this. */
  readonly seen?: Readonly<Record<string, string>>;
  readonly done?: string;
  /** The act that can be taken back, as the history calls it. */
  readonly batch?: string;
}
