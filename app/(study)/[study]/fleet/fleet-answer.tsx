import { fleetColumn } from '@/lib/features/results/fleet-columns';
import { countWords, EVERYTHING, type FleetQuery } from '@/lib/features/results/fleet-filter';
import type { FleetRow } from '@/lib/features/results/fleet-row';
import { formatCount } from '@/lib/platform/format';
import styles from './fleet.module.css';

interface Props {
  readonly rows: readonly FleetRow[];
  readonly locale: string;
  readonly onQuery: (query: FleetQuery) => void;
}

/** The answer before the table: how many motors, how far they can be trusted, what is advised; each count leads to its motors. */
export function FleetAnswer({ rows, locale, onQuery }: Props) {
  const parts = (id: string, skip: readonly string[]) => {
    const column = fleetColumn(id);
    if (column === undefined) return [];
    return countWords(rows, column)
      .filter(({ value }) => value !== '' && !skip.includes(value))
      .map(({ value, count }) => ({
        key: `${id}-${value}`,
        text: `${formatCount(count, locale)} ${column.words?.[value] ?? value}`,
        query: { ...EVERYTHING, words: { [id]: [value] } },
      }));
  };
  const trust = parts('trust', []);
  const acts = parts('decision', ['keep']);
  return (
    <p className={styles.answer}>
      {rows.length === 1 ? 'One motor' : `${formatCount(rows.length, locale)} motors`}
      {trust.length > 0 && ': '}
      <Listed parts={trust} onQuery={onQuery} />
      {trust.length > 0 && '. '}
      {acts.length > 0 && 'Advised: '}
      <Listed parts={acts} onQuery={onQuery} />
      {acts.length > 0 && '.'}
    </p>
  );
}

function Listed({
  parts,
  onQuery,
}: {
  readonly parts: readonly { readonly key: string; readonly text: string; readonly query: FleetQuery }[];
  readonly onQuery: (query: FleetQuery) => void;
}) {
  return parts.map(({ key, text, query }, at) => (
    <span key={key}>
      {at === 0 ? '' : at === parts.length - 1 ? ' and ' : ', '}
      <button type="button" onClick={() => onQuery(query)}>
        {text}
      </button>
    </span>
  ));
}
