import { z } from 'zod';
import { whoSchema } from '../study/schema';
import { ENOUGH_DIGITS, EVENT_KINDS, typedHash } from './content';

const id = z.string().min(1).max(64);

export const freezeForm = z.object({ study: id, who: whoSchema });

export const eventForm = z.object({
  study: id,
  number: z.coerce.number().int().positive(),
  kind: z.enum(EVENT_KINDS, { error: 'Choose what you say of it.' }),
  who: whoSchema,
  comment: z.string().trim().max(2000, 'Write a comment of at most 2,000 characters.').default(''),
  hash: z.string().length(64),
});

/** Largest file that is checked, in bytes. */
const LARGEST_FILE = 500e6;

export const checkForm = z.object({
  study: id,
  file: z
    .instanceof(File)
    .refine((file) => file.size <= LARGEST_FILE, 'The file is larger than 500 MB.')
    .optional(),
  hash: z
    .string()
    .trim()
    .transform((text, context) => {
      if (text === '') return undefined;
      const digits = typedHash(text);
      if (digits === undefined)
        context.addIssue(`Type at least the first ${ENOUGH_DIGITS} digits of the hash: 0 to 9 and a to f.`);
      return digits;
    }),
});
