import { existsSync, readFileSync } from 'node:fs';
import type { z } from 'zod';

/** A report that could be read, or the sentence that says why not. */
export type Report<T> = { readonly ok: true; readonly report: T } | { readonly ok: false; readonly problem: string };

/** Reads a runner's JSON report from a file and checks its shape. */
export function readReport<T>(file: string, schema: z.ZodType<T>): Report<T> {
  if (!existsSync(file)) return { ok: false, problem: 'ended without a report' };
  let parsed: unknown;
  try {
    parsed = JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return { ok: false, problem: 'left a report that is not JSON' };
  }
  const checked = schema.safeParse(parsed);
  if (!checked.success)
    return { ok: false, problem: `left a report of another shape: ${checked.error.issues[0]?.message ?? ''}` };
  return { ok: true, report: checked.data };
}
