'use client';

import { useState } from 'react';
import type { ViewEntry } from '@/lib/features/saved-views/schema';
import { FilterPanel } from './filter-panel';
import { ColumnsPanel, KeysPanel, SortPanel } from './list-panels';
import { TakePanel } from './take-panel';
import type { Listing } from './use-listing';
import { readAddress, writeAddress } from './use-query';
import type { TableLayout } from './use-table-layout';
import { ViewsPanel } from './views-panel';

/** What the page can open in a window above itself; `change` is about the selected motors, all others about the list. */
export type Panel = 'filter' | 'order' | 'columns' | 'views' | 'take' | 'keys' | 'change';

interface Props {
  readonly panel: Panel | undefined;
  readonly onClose: () => void;
  readonly listing: Listing;
  readonly layout: TableLayout;
  /** Those kept when the page was sent. */
  readonly views: readonly ViewEntry[];
  readonly letters: boolean;
  readonly onLetters: (on: boolean) => void;
}

/** The windows in which the list is chosen, kept and taken along. */
export function FleetPanels({ panel, onClose, listing, layout, views: first, letters, onLetters }: Props) {
  const { study, list, setAddress, query, ask, count, showing } = listing;
  const { shown } = layout;
  const [views, setViews] = useState(first);
  return (
    <>
      <FilterPanel
        open={panel === 'filter'}
        onClose={onClose}
        rows={list.rows}
        count={count}
        query={query}
        onQuery={ask}
        showing={showing}
      />
      <SortPanel open={panel === 'order'} onClose={onClose} query={query} onQuery={ask} />
      <ColumnsPanel
        open={panel === 'columns'}
        onClose={onClose}
        shown={shown}
        onShown={layout.choose}
        dense={layout.dense}
        onDense={layout.setDense}
        currency={list.currency}
      />
      <ViewsPanel
        open={panel === 'views'}
        onClose={onClose}
        study={study}
        views={views}
        onViews={setViews}
        query={writeAddress({ query, columns: shown })}
        onOpen={(text) => setAddress(readAddress(text))}
      />
      <TakePanel
        open={panel === 'take'}
        onClose={onClose}
        study={study}
        query={writeAddress({ query, columns: undefined })}
        count={count}
      />
      <KeysPanel open={panel === 'keys'} onClose={onClose} letters={letters} onLetters={onLetters} />
    </>
  );
}
