import { useSyncExternalStore } from 'react';

function subscribe(query: string) {
  return (changed: () => void): (() => void) => {
    const list = window.matchMedia(query);
    list.addEventListener('change', changed);
    return () => list.removeEventListener('change', changed);
  };
}

const NARROW = '(max-width: 40rem)';
const COARSE = '(pointer: coarse)';
const narrow = subscribe(NARROW);
const coarse = subscribe(COARSE);

/** Whether the screen is as narrow as a phone's. */
export function useNarrow(): boolean {
  return useSyncExternalStore(
    narrow,
    () => window.matchMedia(NARROW).matches,
    () => false,
  );
}

/** Whether it is worked with fingers. */
export function useCoarse(): boolean {
  return useSyncExternalStore(
    coarse,
    () => window.matchMedia(COARSE).matches,
    () => false,
  );
}
