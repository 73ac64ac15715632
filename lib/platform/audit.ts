import { insertRows } from './bulk';
import type { Tx } from './db';
import { newId } from './id';

/** What somebody changed; see `ChangeEvent` in the schema. */
export interface Change {
  readonly studyId: string;
  /** The name that was typed in. */
  readonly who: string;
  readonly subject: string;
  readonly subjectId: string;
  readonly subjectLabel: string;
  readonly what: string;
  readonly field?: string | undefined;
  /** Plain data before and after; `undefined` when there was none. */
  readonly from?: unknown;
  readonly to?: unknown;
  readonly why?: string | undefined;
  /** Groups the changes of one act. */
  readonly batch?: string | undefined;
  readonly importBatchId?: string | undefined;
  /** The batch that this change takes back. */
  readonly undoes?: string | undefined;
}

function toText(value: unknown): string | null {
  if (value === undefined) return null;
  return JSON.stringify(value, (_, member: unknown) => (typeof member === 'bigint' ? member.toString() : member));
}

/**
 * Adds changes to the history, inside the caller's transaction, so that a change without its entry cannot exist.
 * Money in `from` and `to` is written as text of whole minor units.
 */
export async function recordChanges(tx: Tx, changes: readonly Change[], at: Date = new Date()): Promise<void> {
  await insertRows(
    tx,
    'ChangeEvent',
    changes.map((change) => ({
      id: newId(at.getTime()),
      studyId: change.studyId,
      at,
      who: change.who,
      verified: false,
      subject: change.subject,
      subjectId: change.subjectId,
      subjectLabel: change.subjectLabel,
      what: change.what,
      field: change.field ?? null,
      fromValue: toText(change.from),
      toValue: toText(change.to),
      why: change.why ?? null,
      batch: change.batch ?? null,
      importBatchId: change.importBatchId ?? null,
      undoes: change.undoes ?? null,
    })),
  );
}

/** Adds one change to the history; see {@link recordChanges}. */
export async function recordChange(tx: Tx, change: Change, at: Date = new Date()): Promise<void> {
  await recordChanges(tx, [change], at);
}
