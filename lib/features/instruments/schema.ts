import { z } from 'zod';
import { readNumber } from '../fleet/number';
import { readDate } from '../fleet/taken-at';
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

/** A typed day, or nothing. */
const typedDay = z
  .string()
  .trim()
  .transform((text, context) => {
    if (text === '') return undefined;
    const day = text.length === 10 ? readDate(text) : undefined;
    if (day !== undefined) return day;
    context.addIssue({ code: 'custom', message: `“${text}” is no day. Write it as 2026-03-14.` });
    return z.NEVER;
  });

export const instrumentForm = z
  .object({
    study: id,
    who: whoSchema,
    name: z.string().trim().min(1, 'Write the name that stands with the readings.').max(120),
    serial: z
      .string()
      .trim()
      .max(80)
      .transform((text) => (text === '' ? undefined : text)),
    voltage: typedError,
    current: typedError,
    power: typedError,
    speed: typedError,
    calibrated: typedDay,
    due: typedDay,
  })
  .refine(({ calibrated, due }) => calibrated === undefined || due === undefined || calibrated < due, {
    message: 'The next calibration is due after the last one.',
    path: ['due'],
  });
export const removeForm = z.object({ study: id, who: whoSchema, instrument: id });

/** A meter with its greatest permissible errors (per cent of reading, speed in r/min) and its calibration. */
export interface Instrument {
  readonly id: string;
  readonly name: string;
  readonly serialNumber: string | undefined;
  readonly voltagePct: number | undefined;
  readonly currentPct: number | undefined;
  readonly powerPct: number | undefined;
  readonly speedRpm: number | undefined;
  /** ISO date; the day it is due on still counts. */
  readonly calibratedOn: string | undefined;
  readonly calibrationDueOn: string | undefined;
}
