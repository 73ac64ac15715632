/** The passport of a table: where it comes from, how it was read, how far it may be trusted and reproduced. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import type { RowStatus } from '@/lib/engine';
import { DamagedTable } from './damaged-table';

const sentence = z.string().trim().min(1);

/** The side file `<name>.source.json`: each key is required, only the list of misprints may be empty. */
const passportFile = z.strictObject({
  title: sentence,
  issuer: sentence,
  edition: sentence,
  clause: sentence,
  columns: z.record(z.string(), z.strictObject({ unit: sentence, meaning: sentence })),
  read: sentence,
  verified: sentence,
  reuse: sentence,
  misprints: z.array(sentence),
});

export type PassportFile = z.infer<typeof passportFile>;

/** A passport with what the loader counted in its table. */
export interface Passport extends Readonly<PassportFile> {
  /** File name without folder and ending: the id under which results name the table. */
  readonly id: string;
  /** Name in the catalogue. */
  readonly name: string;
  /** `engine`: the engine takes it; `check`: it serves to check others; `prices`: the shipped price list. */
  readonly use: 'engine' | 'check' | 'prices';
  /** Path below `reference-data`. */
  readonly file: string;
  /** Rows of the CSV, gaps included. */
  readonly rowCount: number;
  /** How many rows carry each status; empty for the price list. */
  readonly statusCounts: Readonly<Partial<Record<RowStatus, number>>>;
}

const REMEDY = 'Complete the passport as reference-data/README.md describes.';

/** Path of the passport that goes with a table. */
export const passportPath = (file: string): string => file.replace(/\.csv$/, '.source.json');

/**
 * Reads the passport of a table.
 * @throws DamagedTable when the side file is absent, is no JSON, or leaves a gap.
 */
export function readPassport(folder: string, tableFile: string): PassportFile {
  const file = passportPath(tableFile);
  const path = join(folder, file);
  if (!existsSync(path)) throw new DamagedTable({ file }, 'the passport is missing', REMEDY);
  let content: unknown;
  try {
    content = JSON.parse(readFileSync(path, 'utf8'));
  } catch {
    throw new DamagedTable({ file }, 'the passport is not readable as JSON', REMEDY);
  }
  const parsed = passportFile.safeParse(content);
  if (parsed.success) return parsed.data;
  const issue = parsed.error.issues[0];
  const where = issue === undefined || issue.path.length === 0 ? 'the passport' : issue.path.join('.');
  throw new DamagedTable({ file }, `${where} is missing, empty or unknown (${issue?.message ?? 'unreadable'})`, REMEDY);
}
