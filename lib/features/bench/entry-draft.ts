import { z } from 'zod';

/** A test that is being typed, as the window keeps it. Apart from the other schemas, since the browser needs this one alone. */
export const entryDraft = z.object({
  about: z.object({
    tag: z.string(),
    site: z.string(),
    name: z.string(),
    takenAt: z.string(),
    method: z.string(),
    conductor: z.string(),
    decimal: z.enum(['.', ',']),
  }),
  rows: z.array(z.object({ key: z.number(), section: z.string(), cells: z.array(z.string()).readonly() })).readonly(),
});
export type EntryDraft = z.infer<typeof entryDraft>;
