import { z } from 'zod';
import { readNumber } from '../fleet/number';
import { whoSchema } from '../study/schema';

const id = z.string().min(1).max(64);

/** A typed error of a meter; empty means that it is not known, and the study's serves. */
const typedError = z
  .string()
  .trim()
  .transform((text, context) => {
    if (text === '') return undefined;
    const read = readNumber(text, { decimal: '.' });
    if (read.ok && read.value >= 0) return read.value;
    context.addIssue({
      code: 'custom',
      message: read.ok ? 'An error of a meter is not negative.' : `${read.text} ${read.remedy}`,
    });
    return z.NEVER;
  });

export const instrumentForm = z.object({
  study: id,
  who: whoSchema,
  name: z.string().trim().min(1, 'Write the name that stands with the readings.').max(120),
  voltage: typedError,
  current: typedError,
  power: typedError,
  speed: typedError,
});
export const removeForm = z.object({ study: id, who: whoSchema, instrument: id });

/** A meter with its greatest permissible errors: per cent of reading, speed in r/min. */
export interface Instrument {
  readonly id: string;
  readonly name: string;
  readonly voltagePct: number | undefined;
  readonly currentPct: number | undefined;
  readonly powerPct: number | undefined;
  readonly speedRpm: number | undefined;
}
