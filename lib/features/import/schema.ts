import { z } from 'zod';
import { whoSchema } from '../study/schema';

/** Encodings that the screen offers; a file may be in another one only by way of the command line. */
export const ENCODINGS = ['utf-8', 'windows-1252', 'iso-8859-2', 'utf-16le', 'utf-16be'] as const;
export type Encoding = (typeof ENCODINGS)[number];

export const decimalSign = z.enum(['.', ',']);
export const delimiterSign = z.enum([',', ';', '\t']);

/** How a sheet is read. Kept with every import, and offered again when a sheet with the same header comes. */
export const recipeSchema = z.object({
  /** Absent as long as nobody has said it and the sheet does not show it. */
  decimal: decimalSign.optional(),
  delimiter: delimiterSign,
  encoding: z.enum(ENCODINGS),
  /** Words that count as an empty cell. */
  emptyWords: z.array(z.string().min(1).max(40)).max(40),
  /** Column of the sheet to column of the fleet sheet; `null` leaves it out; a column that is not named keeps its own name. */
  mapping: z.record(z.string(), z.string().nullable()),
});
export type Recipe = z.infer<typeof recipeSchema>;

/** What happens when the sheet states a fact otherwise than it is kept. */
const CONFLICT_RULES = ['sheet', 'kept'] as const;
const conflictRule = z.enum(CONFLICT_RULES);
export type ConflictRule = z.infer<typeof conflictRule>;

const id = z.string().regex(/^[0-9a-f-]{36}$/, 'The address is not complete.');
const LARGEST_PASTE = 20_000_000;

/** The file or the pasted rows that start an import. */
export const uploadForm = z
  .object({
    study: id,
    file: z.file().optional(),
    pasted: z.string().max(LARGEST_PASTE, 'The pasted text is longer than 20 million characters; send it as a file.').default(''),
  })
  .refine(({ file, pasted }) => (file !== undefined && file.size > 0) || pasted.trim() !== '', {
    error: 'Choose a file that is not empty, or paste rows with their header.',
  });

/** A new study that starts with a sheet. */
export const firstUploadForm = z.object({
  name: z.string(),
  who: whoSchema,
  file: z.file().optional(),
  pasted: z.string().default(''),
});

/** Names an upload; what else the form holds is read by the action. */
export const uploadKey = z.object({ study: id, upload: id });

/** Puts an upload into the book. */
export const commitForm = uploadKey.extend({ who: whoSchema, conflicts: conflictRule.default('sheet') });

const DECIDED = /^([0-9a-f-]{36} [a-z0-9_]+)=(sheet|kept)$/;

/** Conflicts decided apart, each as `motor fact=sheet` or `motor fact=kept`; an empty text follows the rule for all. */
export const conflictsApart = z
  .array(z.string().max(120))
  .max(1000)
  .transform((texts, context) => {
    const apart = new Map<string, ConflictRule>();
    for (const text of texts) {
      if (text === '') continue;
      const [, key, rule] = DECIDED.exec(text) ?? [];
      const known = conflictRule.safeParse(rule);
      if (key === undefined || !known.success) {
        context.addIssue({ code: 'custom', message: 'A choice between sheet and study cannot be read.' });
        return z.NEVER;
      }
      apart.set(key, known.data);
    }
    return apart;
  });

/** Takes an import back. */
export const undoForm = z.object({ study: id, batch: id, who: whoSchema });

export const uploadAbout = z.object({
  id,
  studyId: id,
  fileName: z.string().min(1),
  bytes: z.int().min(0),
  /** SHA-256 of the file, in hex. */
  hash: z.string(),
  pasted: z.boolean(),
  /** As the screen has it by now; absent before the first look. */
  recipe: recipeSchema.optional(),
  /** Name of the recipe that was remembered for this header and has been taken over. */
  remembered: z.object({ name: z.string(), usedAt: z.string() }).optional(),
});
/** A file that waits to be imported. */
export type UploadAbout = z.infer<typeof uploadAbout>;
