import { z } from 'zod';
import type { SisterResult } from '@/lib/engine';

const sisters = z.array(
  z.object({
    indicator: z.string(),
    alike: z.enum(['type', 'place']),
    value: z.number(),
    count: z.number(),
    median: z.number(),
    low: z.number(),
    high: z.number(),
    unit: z.string(),
    standing: z.enum(['like', 'above', 'below']),
    worse: z.boolean(),
  }),
);

/** A motor's sisters as they are kept; null where there are none. */
export function sistersText(among: readonly SisterResult[]): string | null {
  return among.length === 0 ? null : JSON.stringify(among);
}

/** A motor's sisters from the text that is kept; one of an earlier form counts as none, until the next run. */
export function sistersOf(text: string | null): readonly SisterResult[] {
  return text === null ? [] : (sisters.safeParse(JSON.parse(text)).data ?? []);
}
