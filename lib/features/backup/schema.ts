import { z } from 'zod';

/** A box that is ticked on purpose. */
const confirmed = z.literal('yes', { error: 'Tick the box to say that the current data may be replaced.' });

/** What the screen sends to restore a backup of the folder. */
export const restoreForm = z.object({
  name: z.string().regex(/^lossbook-[A-Za-z0-9-]+\.db$/, 'Choose a backup from the list.'),
  confirmed,
});

/** What the screen sends to restore a file from the reader's computer. */
export const sentForm = z.object({
  file: z.file().min(1, 'Choose a file.'),
  confirmed,
});
