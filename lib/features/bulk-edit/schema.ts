import { z } from 'zod';
import { columnByName } from '../fleet/columns';

/** Facts that may be changed for many motors at once: columns of the fleet sheet. */
export const BULK_FIELDS = [
  'area',
  'status',
  'hours_per_year',
  'demand_coincidence',
  'quoted_price',
  'quoted_repair',
  'unplanned_stop_cost',
] as const;
export type BulkField = (typeof BULK_FIELDS)[number];

/** A field as the screen offers it. */
export interface BulkChoice {
  readonly field: BulkField;
  readonly label: string;
  readonly meaning: string;
  readonly unit: string;
  /** The only words that are understood, where the field has such. */
  readonly words: readonly string[];
}

/** The fields with the sheet's own names, meanings and words. */
export function bulkChoices(currency: string): BulkChoice[] {
  return BULK_FIELDS.flatMap((field) => {
    const column = columnByName(field);
    if (column === undefined) return [];
    const { kind, label, meaning } = column;
    const unit = kind.type !== 'number' || kind.unit === '1' ? '' : kind.unit === 'currency' ? currency : kind.unit;
    return [{ field, label, meaning, unit, words: kind.type === 'word' ? kind.words : [] }];
  });
}

/** What the screen sends: which motors, as it saw them, and what is to become of one fact. An empty value takes the fact away. */
export const bulkForm = z.object({
  studyId: z.string().min(1).max(64),
  motors: z
    .array(z.object({ id: z.string().min(1).max(64), version: z.int() }))
    .min(1, 'Select the motors first.')
    .max(200_000),
  field: z.enum(BULK_FIELDS),
  value: z.string().max(2000),
});

export const bulkCommit = bulkForm.extend({ who: z.string(), why: z.string().max(500) });

export const bulkUndo = z.object({ studyId: z.string().min(1).max(64), batch: z.string().min(1).max(64), who: z.string() });

/** What would change, before anything does. */
export interface BulkPreview {
  /** The value as it was understood, in words. */
  readonly understood: string;
  /** Something that should be looked at before going on. */
  readonly warning?: string;
  readonly changing: number;
  readonly same: number;
  /** Motors that somebody else changed since the list was loaded, or that are gone. */
  readonly overtaken: number;
  /** The first of those that change. */
  readonly examples: readonly { readonly id: string; readonly name: string; readonly from: string; readonly to: string }[];
}

/** What was changed, and how to take it back. */
export interface BulkDone {
  readonly changed: number;
  readonly batch: string;
  readonly sentence: string;
}
