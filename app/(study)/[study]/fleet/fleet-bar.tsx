import type { RefObject } from 'react';
import { formatCount } from '@/lib/platform/format';
import styles from './fleet.module.css';
import type { Listing } from './use-listing';
import type { Panel } from './use-panels';
import type { TableLayout } from './use-table-layout';

interface Props {
  readonly listing: Listing;
  readonly layout: TableLayout;
  readonly search: RefObject<HTMLInputElement | null>;
  /** How many motors are selected. */
  readonly selected: number;
  readonly onSelectNone: () => void;
  readonly onPanel: (panel: Panel) => void;
}

/** The line over the table: the search, and the buttons that open a panel. */
export function FleetBar({ listing, layout, search, selected, onSelectNone, onPanel }: Props) {
  const { narrow, coarse } = layout;
  return (
    <div className={styles.bar}>
      <SearchField listing={listing} search={search} />
      <button type="button" onClick={() => onPanel('filter')}>
        Filter
      </button>
      <button type="button" onClick={() => onPanel('order')}>
        Order
      </button>
      {!narrow && (
        <button type="button" onClick={() => onPanel('columns')}>
          Columns
        </button>
      )}
      <button type="button" onClick={() => onPanel('views')}>
        Views
      </button>
      <button type="button" onClick={() => onPanel('take')}>
        Download or print
      </button>
      {!narrow && !coarse && (
        <button type="button" onClick={() => onPanel('keys')}>
          Keys
        </button>
      )}
      {selected > 0 && (
        <>
          <button type="button" data-primary onClick={() => onPanel('change')}>
            Change {formatCount(selected, listing.showing.locale)} selected
          </button>
          <button type="button" onClick={onSelectNone}>
            Select none
          </button>
        </>
      )}
    </div>
  );
}

function SearchField({ listing, search }: Pick<Props, 'listing' | 'search'>) {
  const { query, ask } = listing;
  return (
    <div className={styles.search}>
      <label htmlFor="fleet-search">Search</label>
      <input
        id="fleet-search"
        ref={search}
        type="search"
        value={query.text}
        onChange={(event) => ask({ ...query, text: event.target.value }, true)}
        onKeyDown={(event) => {
          if (event.key !== 'Escape' && event.key !== 'Enter') return;
          event.preventDefault();
          document.querySelector<HTMLElement>('[role="grid"] [tabindex="0"]')?.focus();
        }}
      />
    </div>
  );
}
