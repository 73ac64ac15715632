import { z } from 'zod';
import { BENCH_METHODS, type BenchSections } from '@/lib/engine';
import { whoSchema } from '../study/schema';

const id = z.string().regex(/^[0-9a-f-]{36}$/, 'The address is not complete.');

const point = z.object({
  row: z.number().int(),
  voltageV: z.number().optional(),
  currentA: z.number().optional(),
  inputPowerKw: z.number().optional(),
  torqueNm: z.number().optional(),
  speedRpm: z.number().optional(),
  frequencyHz: z.number().optional(),
  windingTempC: z.number().optional(),
  resistanceOhm: z.number().optional(),
  ambientC: z.number().optional(),
});
const points = z.array(point).default([]);

/** Points of a test as they are kept. */
export const storedSections = z.object({
  cold: points,
  'rated-load': points,
  load: points,
  dynamometer: points,
  'no-load': points,
  'locked-rotor': points,
  'rotor-removed': points,
  'reverse-rotation': points,
}) satisfies z.ZodType<BenchSections>;

export const benchMethodWord = z.enum(BENCH_METHODS);
export const conductorWord = z.enum(['aluminium', 'copper']);

const LARGEST_PASTE = 2_000_000;

/** A file or pasted rows to be read into the table of entry. */
export const readForm = z
  .object({
    file: z.file().max(LARGEST_PASTE, 'A bench test is smaller than 2 MB.').optional(),
    pasted: z.string().max(LARGEST_PASTE, 'A bench test is smaller than 2 MB.').default(''),
    decimal: z.enum(['.', ',']).default('.'),
  })
  .refine(({ file, pasted }) => (file !== undefined && file.size > 0) || pasted.trim() !== '', {
    error: 'Choose a file, or paste rows with their column names.',
  });

/** One row of the table of entry, as typed. */
const typedRow = z.object({
  section: z.string().max(40),
  cells: z.array(z.string().max(60)).max(20),
});
export type TypedRow = z.infer<typeof typedRow>;

/** A typed test with the motor it belongs to. */
export const typedTest = z.object({
  study: id,
  tag: z.string().trim().min(1, 'Write the tag of the motor.').max(200),
  site: z.string().trim().max(200).default(''),
  name: z.string().trim().max(120).default(''),
  takenAt: z
    .string()
    .trim()
    .regex(/^(\d{4}-\d{2}-\d{2})?$/, 'Write the date as 2026-03-14, or leave it empty.')
    .default(''),
  method: z.union([benchMethodWord, z.literal('')]).default(''),
  conductor: z.union([conductorWord, z.literal('')]).default(''),
  decimal: z.enum(['.', ',']).default('.'),
  rows: z.array(typedRow).max(400, 'A bench test has at most 400 rows.'),
});
export type TypedTest = z.infer<typeof typedTest>;

export const keepForm = typedTest.extend({ who: whoSchema });
export const withdrawForm = z.object({
  study: id,
  test: id,
  who: whoSchema,
  why: z.string().trim().min(3, 'Write why it is withdrawn; the reason is kept.').max(400),
});
