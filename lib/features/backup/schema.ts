import { z } from 'zod';

/** What the screen sends to restore a backup: one from the folder, and a box that was ticked on purpose. */
export const restoreForm = z.object({
  name: z.string().regex(/^lossbook-[A-Za-z0-9-]+\.db$/, 'Choose a backup from the list.'),
  confirmed: z.literal('yes', { error: 'Tick the box to say that the current data may be replaced.' }),
});
