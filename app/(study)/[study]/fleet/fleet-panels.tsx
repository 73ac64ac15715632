'use client';

import { useState } from 'react';
import type { ViewEntry } from '@/lib/features/saved-views/schema';
import { FilterPanel } from './filter-panel';
import { ColumnsPanel, KeysPanel, SortPanel } from './list-panels';
import { TakePanel } from './take-panel';
import type { Listing } from './use-listing';
import type { Panels } from './use-panels';
import { readAddress, writeAddress } from './use-query';
import type { TableLayout } from './use-table-layout';
import { ViewsPanel } from './views-panel';

interface Props {
  readonly panels: Panels;
  readonly listing: Listing;
  readonly layout: TableLayout;
  /** Those kept when the page was sent. */
  readonly views: readonly ViewEntry[];
}

/** The windows in which the list is chosen, kept and taken along. */
export function FleetPanels({ panels, listing, layout, views: first }: Props) {
  const { panel, close } = panels;
  const { study, list, setAddress, query, ask, count, showing } = listing;
  const { shown } = layout;
  const [views, setViews] = useState(first);
  return (
    <>
      <FilterPanel
        open={panel === 'filter'}
        onClose={close}
        rows={list.rows}
        count={count}
        query={query}
        onQuery={ask}
        showing={showing}
      />
      <SortPanel open={panel === 'order'} onClose={close} query={query} onQuery={ask} />
      <ColumnsPanel
        open={panel === 'columns'}
        onClose={close}
        shown={shown}
        onShown={layout.choose}
        dense={layout.dense}
        onDense={layout.setDense}
        currency={list.currency}
      />
      <ViewsPanel
        open={panel === 'views'}
        onClose={close}
        study={study}
        views={views}
        onViews={setViews}
        query={writeAddress({ query, columns: shown })}
        onOpen={(text) => setAddress(readAddress(text))}
      />
      <TakePanel
        open={panel === 'take'}
        onClose={close}
        study={study}
        query={writeAddress({ query, columns: undefined })}
        count={count}
      />
      <KeysPanel open={panel === 'keys'} onClose={close} letters={panels.letters} onLetters={panels.setLetters} />
    </>
  );
}
