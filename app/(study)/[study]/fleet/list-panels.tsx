'use client';

import { Dialog } from '@/app/_ui/dialog';
import { FLEET_COLUMNS } from '@/lib/features/results/fleet-columns';
import type { FleetQuery, SortKey } from '@/lib/features/results/fleet-filter';
import { shownUnit } from '@/lib/features/results/shown-columns';
import styles from './fleet.module.css';

interface PanelProps {
  readonly open: boolean;
  readonly onClose: () => void;
}

/** Which columns are shown, and how close the rows stand. */
export function ColumnsPanel({
  open,
  onClose,
  shown,
  onShown,
  dense,
  onDense,
  currency,
}: PanelProps & {
  readonly shown: readonly string[];
  readonly onShown: (ids: readonly string[] | undefined) => void;
  readonly dense: boolean;
  readonly onDense: (dense: boolean) => void;
  readonly currency: string;
}) {
  const toggle = (id: string): void =>
    onShown(
      FLEET_COLUMNS.map((column) => column.id).filter((each) => (each === id ? !shown.includes(id) : shown.includes(each))),
    );
  return (
    <Dialog title="Columns" open={open} onClose={onClose} side>
      <div className={styles.fields}>
        <fieldset>
          <legend>Rows</legend>
          <label className={styles.choice}>
            <input type="checkbox" checked={dense} onChange={() => onDense(!dense)} />
            Close together
          </label>
        </fieldset>
        <fieldset>
          <legend>Columns beside the tag</legend>
          {FLEET_COLUMNS.filter(({ id }) => id !== 'tag').map((column) => {
            const unit = shownUnit(column, currency);
            return (
              <label key={column.id} className={styles.choice} title={column.meaning}>
                <input type="checkbox" checked={shown.includes(column.id)} onChange={() => toggle(column.id)} />
                <span>
                  {column.name}
                  {unit !== '' && <span className="soft"> {unit}</span>}
                </span>
              </label>
            );
          })}
        </fieldset>
      </div>
      <div className={styles.actions}>
        <button type="button" onClick={() => onShown(undefined)}>
          Usual columns
        </button>
      </div>
    </Dialog>
  );
}

const DEPTH = [
  { place: 0, words: 'First by' },
  { place: 1, words: 'then by' },
  { place: 2, words: 'then by' },
] as const;

/** The order of the rows, by up to three columns. */
export function SortPanel({
  open,
  onClose,
  query,
  onQuery,
}: PanelProps & { readonly query: FleetQuery; readonly onQuery: (query: FleetQuery) => void }) {
  const set = (at: number, key: SortKey | undefined): void => {
    const sort = [...query.sort];
    if (key === undefined) sort.splice(at, 1);
    else sort[at] = key;
    onQuery({ ...query, sort });
  };
  return (
    <Dialog title="Order" open={open} onClose={onClose}>
      <div className={styles.fields}>
        {DEPTH.map(({ place: at, words }) => {
          const key = query.sort[at];
          if (at > query.sort.length) return null;
          return (
            <div key={at} className={styles.choice}>
              <label className={styles.field}>
                {words}
                <select
                  value={key?.column ?? ''}
                  onChange={(event) =>
                    set(
                      at,
                      event.target.value === ''
                        ? undefined
                        : { column: event.target.value, descending: key?.descending ?? false },
                    )
                  }
                >
                  <option value="">site and tag, as people count</option>
                  {FLEET_COLUMNS.map((column) => (
                    <option key={column.id} value={column.id}>
                      {column.name}
                    </option>
                  ))}
                </select>
              </label>
              {key && (
                <label className={styles.choice}>
                  <input
                    type="checkbox"
                    checked={key.descending}
                    onChange={() => set(at, { ...key, descending: !key.descending })}
                  />
                  highest first
                </label>
              )}
            </div>
          );
        })}
        <p className={styles.note}>What is not known stands last, whatever the direction.</p>
      </div>
    </Dialog>
  );
}

const KEYS: readonly (readonly [string, string])[] = [
  ['arrows', 'from cell to cell'],
  ['Home, End', 'first and last column'],
  ['Ctrl+Home, Ctrl+End', 'first and last motor'],
  ['Page Up, Page Down', 'a page of rows'],
  ['Enter', 'opens the motor'],
  ['Shift+Enter', 'tells how the figure is known'],
  ['Space', 'selects the row; with Shift all from the last one'],
  ['Shift+arrows', 'selects rows on the way'],
  ['Ctrl+A, Ctrl+C', 'selects all that are listed; copies them as a table'],
  ['Esc', 'back to the table; takes the selection off'],
];

const LETTER_KEYS: readonly (readonly [string, string])[] = [
  ['/', 'to the search'],
  ['?', 'this list'],
  ['f', 'filter'],
  ['o', 'order'],
  ['c', 'columns'],
];

/** The keys of the table; those of a single letter can be switched off. */
export function KeysPanel({
  open,
  onClose,
  letters,
  onLetters,
}: PanelProps & { readonly letters: boolean; readonly onLetters: (on: boolean) => void }) {
  const list = (keys: typeof KEYS) => (
    <dl className={styles.keys}>{keys.flatMap(([key, does]) => [<dt key={key}>{key}</dt>, <dd key={does}>{does}</dd>])}</dl>
  );
  return (
    <Dialog title="Keys" open={open} onClose={onClose}>
      {list(KEYS)}
      <h3>Single keys</h3>
      {list(LETTER_KEYS)}
      <label className={styles.choice}>
        <input type="checkbox" checked={letters} onChange={() => onLetters(!letters)} />
        Single keys do something
      </label>
    </Dialog>
  );
}
