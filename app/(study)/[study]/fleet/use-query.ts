import { useCallback, useEffect, useState } from 'react';
import { type FleetQuery, readQuery, writeQuery } from '@/lib/features/results/fleet-filter';

/** Parts of the address that are not the query: the columns of a view that was opened. */
export interface AddressState {
  readonly query: FleetQuery;
  /** Column names, when the address states them. */
  readonly columns: readonly string[] | undefined;
}

/** The state that an address's query says. */
export function readAddress(search: string): AddressState {
  const params = new URLSearchParams(search);
  const columns = params.get('cols')?.split(',');
  return { query: readQuery(params), columns };
}

/** The address's query for a state, without `?`. */
export function writeAddress({ query, columns }: AddressState): string {
  const params = writeQuery(query);
  if (columns !== undefined) params.set('cols', columns.join(','));
  return params.toString();
}

/**
 * The query as the address has it. Choosing a filter makes an entry in the browser's history, so that Back takes it off again; typing
 * in the search does not make one for each letter.
 */
export function useQuery(initial: string) {
  const [state, setState] = useState(() => readAddress(initial));
  useEffect(() => {
    const back = (): void => setState(readAddress(window.location.search));
    // A page that the browser kept may have been made for another query than the address has now.
    if (window.location.search.replace(/^\?/, '') !== initial) back();
    window.addEventListener('popstate', back);
    return () => window.removeEventListener('popstate', back);
  }, [initial]);
  const change = useCallback((next: AddressState, keepEntry = false) => {
    setState(next);
    const search = writeAddress(next);
    const address = `${window.location.pathname}${search === '' ? '' : `?${search}`}`;
    if (keepEntry) window.history.replaceState(window.history.state, '', address);
    else window.history.pushState(window.history.state, '', address);
  }, []);
  return [state, change] as const;
}
