import { z } from 'zod';

/** Screens whose lists can be kept as a view. */
const VIEW_SCREENS = ['fleet', 'ranking'] as const;

/** What the screen sends to keep a view. */
export const viewForm = z.object({
  studyId: z.string().min(1).max(64),
  screen: z.enum(VIEW_SCREENS),
  name: z.string().trim().min(1, 'Give the view a name.').max(60, 'Give the view a name of at most 60 characters.'),
  /** The address's query, without `?`. */
  query: z.string().max(4000, 'The filter is too long to be kept.'),
  shared: z.boolean(),
});

/** What the screen sends to remove a view. */
export const viewRemoval = z.object({ studyId: z.string().min(1).max(64), id: z.string().min(1).max(64) });

/** A view in a list. */
export interface ViewEntry {
  readonly id: string;
  readonly name: string;
  readonly query: string;
  readonly shared: boolean;
  /** Whether it is the reader's own, and may be changed by them. */
  readonly own: boolean;
}
