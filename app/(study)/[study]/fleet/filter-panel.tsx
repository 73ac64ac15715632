'use client';

import { useState } from 'react';
import { Dialog } from '@/app/_ui/dialog';
import type { FleetColumn, Showing } from '@/lib/features/results/fleet-column';
import { FLEET_COLUMNS } from '@/lib/features/results/fleet-columns';
import { countWords, EVERYTHING, type FleetQuery, isFiltered, type Range, wordOf } from '@/lib/features/results/fleet-filter';
import type { FleetRow } from '@/lib/features/results/fleet-row';
import { keptLimit, shownColumn, shownLimit, shownUnit } from '@/lib/features/results/shown-columns';
import { formatCount } from '@/lib/platform/format';
import styles from './fleet.module.css';

interface Props {
  readonly open: boolean;
  readonly onClose: () => void;
  readonly rows: readonly FleetRow[];
  readonly count: string;
  readonly query: FleetQuery;
  readonly onQuery: (query: FleetQuery) => void;
  readonly showing: Showing;
}

/** Filters by words and by limits of numbers; each takes effect at once. */
export function FilterPanel({ open, onClose, rows, count, query, onQuery, showing }: Props) {
  return (
    <Dialog title="Filter" open={open} onClose={onClose} side>
      <div className={styles.fields}>
        <p className={styles.count} role="status">
          {count}
        </p>
        {FLEET_COLUMNS.filter((column) => column.kind === 'word').map((column) => (
          <Words key={column.id} column={column} rows={rows} query={query} onQuery={onQuery} showing={showing} />
        ))}
        <fieldset>
          <legend>Numbers</legend>
          {FLEET_COLUMNS.filter((column) => column.kind === 'number').map((column) => (
            <Limits key={column.id} column={column} query={query} onQuery={onQuery} showing={showing} />
          ))}
        </fieldset>
      </div>
      <div className={styles.actions}>
        <button type="button" data-primary onClick={onClose}>
          Show the motors
        </button>
        {isFiltered(query) && (
          <button type="button" onClick={() => onQuery({ ...EVERYTHING, sort: query.sort })}>
            Clear all filters
          </button>
        )}
      </div>
    </Dialog>
  );
}

function Words({
  column,
  rows,
  query,
  onQuery,
  showing,
}: Pick<Props, 'rows' | 'query' | 'onQuery' | 'showing'> & { readonly column: FleetColumn }) {
  const counts = countWords(rows, column);
  const chosen = query.words[column.id] ?? [];
  if (counts.length < 2 && chosen.length === 0) return null;
  const toggle = (value: string): void => {
    const next = chosen.includes(value) ? chosen.filter((each) => each !== value) : [...chosen, value];
    const { [column.id]: _gone, ...others } = query.words;
    onQuery({ ...query, words: next.length === 0 ? others : { ...others, [column.id]: next } });
  };
  return (
    <fieldset>
      <legend>{column.name}</legend>
      <div className={counts.length > 8 ? styles.scrolling : undefined}>
        {counts.map(({ value, count }) => (
          <label key={value} className={styles.choice}>
            <input type="checkbox" checked={chosen.includes(value)} onChange={() => toggle(value)} />
            {wordOf(column, value)}
            <span className={styles.many}>{formatCount(count, showing.locale)}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

const NUMBER = /^\s*[-\u2212]?\d+(?:[.,]\d+)?\s*$/;

function Limits({
  column,
  query,
  onQuery,
  showing,
}: Pick<Props, 'query' | 'onQuery' | 'showing'> & { readonly column: FleetColumn }) {
  const range = query.ranges[column.id] ?? {};
  const { units } = showing;
  const unit = shownUnit(shownColumn(column.id, units) ?? column, showing.currency);
  const seen = (limit: number | undefined) => (limit === undefined ? undefined : shownLimit(column, limit, units));
  const set = (end: keyof Range, typed: number | undefined): void => {
    const value = typed === undefined ? undefined : keptLimit(column, typed, units);
    const { [end]: _old, ...other } = range;
    const next: Range = value === undefined ? other : { ...other, [end]: value };
    const { [column.id]: _gone, ...others } = query.ranges;
    onQuery({ ...query, ranges: next.from === undefined && next.to === undefined ? others : { ...others, [column.id]: next } });
  };
  return (
    <div className={styles.range}>
      <span>
        {column.name}
        {unit !== '' && <span className="soft"> {unit}</span>}
      </span>
      <Limit
        label={`${column.name} from${unit === '' ? '' : `, ${unit}`}`}
        value={seen(range.from)}
        onValue={(value) => set('from', value)}
      />
      <span>to</span>
      <Limit
        label={`${column.name} to${unit === '' ? '' : `, ${unit}`}`}
        value={seen(range.to)}
        onValue={(value) => set('to', value)}
      />
    </div>
  );
}

/** A limit as typed; it counts as soon as it is a number. */
function Limit({
  label,
  value,
  onValue,
}: {
  readonly label: string;
  readonly value: number | undefined;
  readonly onValue: (value: number | undefined) => void;
}) {
  const [typed, setTyped] = useState<string>();
  const text = typed ?? (value === undefined ? '' : String(value));
  const strange = text.trim() !== '' && !NUMBER.test(text);
  return (
    <input
      type="text"
      inputMode="decimal"
      aria-label={label}
      aria-invalid={strange}
      value={text}
      onChange={(event) => {
        const next = event.target.value;
        setTyped(next);
        if (next.trim() === '') onValue(undefined);
        else if (NUMBER.test(next)) onValue(Number(next.trim().replace(',', '.').replace('\u2212', '-')));
      }}
      onBlur={() => {
        if (!strange) setTyped(undefined);
      }}
    />
  );
}
