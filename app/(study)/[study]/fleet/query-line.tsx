import { filterParts, sortWords } from '@/lib/features/results/fleet-filter';
import styles from './fleet.module.css';
import type { Listing } from './use-listing';

/** How many motors are listed, by which filter, each part of which can be taken off, and in which order. */
export function QueryLine({ listing }: { readonly listing: Listing }) {
  const { query, ask, count, showing } = listing;
  return (
    <div className={styles.force}>
      <p className={styles.count} role="status">
        {count}
      </p>
      {filterParts(query, showing.currency, showing.units).map((part) => (
        <span key={part.key} className={styles.part}>
          {part.text}
          <button type="button" aria-label={`Take off: ${part.text}`} onClick={() => ask(part.without)}>
            ×
          </button>
        </span>
      ))}
      <p className={styles.note}>
        ±, or from and to in brackets, is the 95 % interval.{query.sort.length > 0 && ` By ${sortWords(query)}.`}
      </p>
    </div>
  );
}
