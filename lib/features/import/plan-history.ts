import { HistoryJoiner } from '../fleet/apply-history';
import type { StoredMotor } from '../fleet/data';
import { HISTORY_FILE_COLUMNS, type HistoryOutcome, type HistoryValue } from '../fleet/indicator-history';
import type { RowIssue } from '../fleet/issue-codes';
import { type StoredValue, valueHash } from '../fleet/stored-history';
import type { SheetSample } from './sample-sheet';

/** What the import of an indicator history would do. */
export interface HistoryPlan {
  /** Values to add, each with its motor. */
  readonly added: readonly { readonly motorId: string; readonly value: HistoryValue; readonly hash: string }[];
  /** Values that are kept already, or stand twice in the file. */
  readonly repeated: number;
  readonly motors: number;
  /** Why rows are left out, one for each, in the order of rows. */
  readonly rejected: readonly RowIssue[];
  readonly warnings: readonly RowIssue[];
  readonly rows: number;
}

type ReadHistory = Extract<HistoryOutcome, { readonly ok: true }>;

/** A file is an indicator history when it has the columns of one that a fleet sheet has not. */
export function isHistory(sample: Pick<SheetSample, 'columns'>): boolean {
  const titles = new Set(sample.columns.map(({ title }) => title.trim().toLowerCase()));
  const telling = HISTORY_FILE_COLUMNS.filter((name) => name === 'indicator' || name === 'value' || name === 'tag');
  return telling.every((name) => titles.has(name));
}

/**
 * Compares a history with what is kept: values of unknown motors and values that contradict one kept for the same time are rejected with
 * their reasons, what is kept already is passed over.
 * @param motors with their histories joined.
 */
export function planHistory(
  read: ReadHistory,
  motors: readonly Pick<StoredMotor, 'id' | 'motor'>[],
  kept: ReadonlyMap<string, readonly StoredValue[]>,
): HistoryPlan {
  const joiner = new HistoryJoiner(read.values, 0);
  for (const { motor } of motors) joiner.join(motor);
  const refused = new Map(joiner.issues.map((issue) => [issue.row, issue]));
  const idOf = new Map(motors.map(({ id, motor }) => [`${motor.site}\0${motor.tag}`, id]));
  const known = new Set([...kept].flatMap(([motorId, values]) => values.map((value) => `${motorId} ${value.contentHash}`)));
  const added: HistoryPlan['added'][number][] = [];
  let repeated = 0;
  for (const value of read.values) {
    const motorId = idOf.get(`${value.site}\0${value.tag}`);
    if (motorId === undefined || refused.has(value.row)) continue;
    const hash = valueHash(value);
    if (known.has(`${motorId} ${hash}`)) repeated += 1;
    else {
      known.add(`${motorId} ${hash}`);
      added.push({ motorId, value, hash });
    }
  }
  return {
    added,
    repeated,
    motors: new Set(added.map(({ motorId }) => motorId)).size,
    rejected: [...read.rejected, ...refused.values()].sort((a, b) => a.row - b.row),
    warnings: read.warnings,
    rows: read.cells.size,
  };
}
