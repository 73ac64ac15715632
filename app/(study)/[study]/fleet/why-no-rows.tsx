import Link from 'next/link';
import { EVERYTHING } from '@/lib/features/results/fleet-filter';
import styles from './fleet.module.css';
import type { Listing } from './use-listing';

/** Why there is no table, or no newer one, and what to do about it; nothing where all is well. */
export function WhyNoRows({ listing }: { readonly listing: Listing }) {
  const { study, list, reload, rows, query, ask } = listing;
  const empty = list.rows.length === 0;
  return (
    <>
      {list.state === 'failed' && (
        <div className={empty ? styles.state : styles.done} role="alert">
          <p>The list could not be fetched; the program may have been stopped.</p>
          <button type="button" onClick={reload}>
            Try again
          </button>
        </div>
      )}
      {list.state === 'loading' && empty && (
        <div className={styles.state}>
          <p>Fetching the motors.</p>
        </div>
      )}
      {list.state === 'ready' && empty && (
        <div className={styles.state}>
          <p>This study has no motors yet.</p>
          <Link href={`/${study}/import`} prefetch={false} data-primary>
            Import a sheet
          </Link>
        </div>
      )}
      {!empty && rows.length === 0 && (
        <div className={styles.state}>
          <p>No motor passes this filter.</p>
          <button type="button" onClick={() => ask({ ...EVERYTHING, sort: query.sort })}>
            Clear the filter
          </button>
        </div>
      )}
    </>
  );
}
