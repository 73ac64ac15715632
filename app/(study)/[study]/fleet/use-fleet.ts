import { useCallback, useEffect, useState } from 'react';
import { type FleetPack, type FleetRow, rowsOfPack } from '@/lib/features/results/fleet-row';
import { listAddress } from './list-address';

/** The list as far as it is there. `rows` stay while a newer list is on its way. */
export interface FleetList {
  readonly state: 'loading' | 'ready' | 'failed';
  readonly rows: readonly FleetRow[];
  readonly currency: string;
  readonly horizonYears: number;
  readonly runId: string | undefined;
}

/** Fetches the study's list, at first and whenever `reload` is called. */
export function useFleet(study: string, first: Pick<FleetList, 'currency' | 'horizonYears'>): readonly [FleetList, () => void] {
  const [list, setList] = useState<FleetList>({ state: 'loading', rows: [], runId: undefined, ...first });
  const [asked, setAsked] = useState(0);
  useEffect(() => {
    const stop = new AbortController();
    const load = async (): Promise<void> => {
      try {
        const response = await fetch(listAddress(study, asked), { signal: stop.signal });
        if (!response.ok) throw new Error(response.statusText);
        const pack: FleetPack = await response.json();
        const { currency, horizonYears, runId } = pack;
        setList({ state: 'ready', rows: rowsOfPack(pack), currency, horizonYears, runId });
      } catch {
        if (!stop.signal.aborted) setList((before) => ({ ...before, state: 'failed' }));
      }
    };
    void load();
    return () => stop.abort();
  }, [study, asked]);
  const reload = useCallback(() => {
    setList((before) => ({ ...before, state: 'loading' }));
    setAsked((count) => count + 1);
  }, []);
  return [list, reload] as const;
}
