import { z } from 'zod';
import { whoSchema } from '../study/schema';

/** One entry of a motor's history, newest first. */
export interface HistoryEntry {
  readonly id: string;
  readonly at: Date;
  readonly who: string;
  readonly verified: boolean;
  readonly what: string;
  /** The fact that was changed, by the name that it has on the form. */
  readonly field: string | undefined;
  readonly from: string;
  readonly to: string;
  readonly why: string | undefined;
  /** The act it belongs to; one act may change several facts. */
  readonly batch: string | undefined;
}

const id = z.string().min(1).max(64);

/** What every form on a motor carries: which motor, at which version, and who changes it. */
const motorKey = z.object({ study: id, motor: id, version: z.coerce.number().int().positive(), who: whoSchema });

/** Why something was changed; may be left out for a plate, never for an exclusion. */
export const editForm = motorKey.extend({ why: z.string().trim().max(500).optional() });
const excluded = { kind: z.enum(['reading', 'value']), reading: id };
export const exclusionForm = motorKey.extend({
  ...excluded,
  reason: z.string({ error: 'Write why it does not count.' }).trim().min(3, 'Write why it does not count.').max(500),
});
export const inclusionForm = motorKey.extend(excluded);
export const undoForm = motorKey.extend({ batch: id });

/** A figure of the motor before and after a change, in words for the reader. */
export interface FigureChange {
  readonly name: string;
  readonly before: string;
  readonly after: string;
}

/** What a form shows once it was sent. */
export interface EditState {
  readonly problem?: { readonly text: string; readonly remedy: string };
  /** Refused cells by column. */
  readonly refused?: Readonly<Record<string, string>>;
  /** What was understood of each number, where the text was not already its plainest form. */
  readonly understood?: Readonly<Record<string, string>>;
  readonly done?: {
    readonly batch: string;
    readonly figures: readonly FigureChange[];
    readonly changes: number;
    readonly version: number;
  };
  /** What was typed, so that nothing is lost when a form is refused. */
  readonly typed?: Readonly<Record<string, string>>;
}
