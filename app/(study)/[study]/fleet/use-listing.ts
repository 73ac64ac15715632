import { useCallback, useMemo } from 'react';
import type { Showing } from '@/lib/features/results/fleet-column';
import { applyQuery, type FleetQuery, isFiltered } from '@/lib/features/results/fleet-filter';
import type { FleetRow } from '@/lib/features/results/fleet-row';
import type { ReaderUnits } from '@/lib/features/study/reader-units';
import { counted, formatCount } from '@/lib/platform/format';
import { type FleetList, useFleet } from './use-fleet';
import { type AddressState, useQuery } from './use-query';

/** What the page was sent with to list the motors of a study. */
export interface ListingStart {
  readonly study: string;
  readonly currency: string;
  /** Horizon of the study. */
  readonly horizonYears: number;
  readonly locale: string;
  readonly units: ReaderUnits;
  /** The address's query, without `?`. */
  readonly search: string;
}

/** The motors of a study, those of them that the address asks for, and how their figures are written. */
export interface Listing {
  readonly study: string;
  /** Every motor, as far as they are there. */
  readonly list: FleetList;
  readonly reload: () => void;
  readonly address: AddressState;
  readonly setAddress: (next: AddressState, keepEntry?: boolean) => void;
  readonly query: FleetQuery;
  /** @param typing of one who types: no entry in the browser's history for each letter. */
  readonly ask: (next: FleetQuery, typing?: boolean) => void;
  /** The motors asked for, in the order asked for. */
  readonly rows: readonly FleetRow[];
  /** How many these are, in words. */
  readonly count: string;
  readonly showing: Showing;
}

/** Fetches the list and keeps to the query of the address. */
export function useListing(start: ListingStart): Listing {
  const { study, locale, units } = start;
  const [list, reload] = useFleet(study, start);
  const [address, setAddress] = useQuery(start.search);
  const { query } = address;
  const { currency, horizonYears } = list;
  const showing = useMemo((): Showing => ({ locale, currency, horizonYears, units }), [locale, currency, horizonYears, units]);
  const rows = useMemo(() => applyQuery(list.rows, query), [list.rows, query]);
  const ask = useCallback(
    (next: FleetQuery, typing = false) => setAddress({ ...address, query: next }, typing),
    [address, setAddress],
  );
  const all = counted(list.rows.length, 'motor', locale);
  const count = isFiltered(query) ? `${formatCount(rows.length, locale)} of ${all}` : all;
  return { study, list, reload, address, setAddress, query, ask, rows, count, showing };
}
