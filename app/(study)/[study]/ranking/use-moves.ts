import { useSearchParams } from 'next/navigation';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { Moves } from '@/lib/engine/client';
import { FLEET_LEVERS, readMoves, writeMoves } from '@/lib/features/ranking/schema';

/** So long after the last move the address learns of it: a browser refuses to write one for each step of a slide. */
const SETTLED_MS = 500;

/**
 * The moves in force, kept in the address, so that they can be sent on, printed and gone back to. The address is written in place: what the
 * server has to say does not depend on the moves, and a page that is asked for anew is without its title for a moment.
 */
export function useMoves(discountRate: number) {
  const stated = useSearchParams();
  const [moves, setMoves] = useState(() => readMoves((name) => stated.get(name) ?? undefined, discountRate));
  const timer = useRef<number>(undefined);
  useEffect(() => () => window.clearTimeout(timer.current), []);
  const move = useCallback(
    (next: Moves) => {
      setMoves(next);
      window.clearTimeout(timer.current);
      timer.current = window.setTimeout(() => {
        const query = new URLSearchParams(window.location.search);
        for (const { name } of FLEET_LEVERS) query.delete(name);
        for (const [name, value] of Object.entries(writeMoves(next, discountRate))) query.set(name, value);
        const text = query.toString();
        const { pathname } = window.location;
        window.history.replaceState(null, '', text === '' ? pathname : `${pathname}?${text}`);
      }, SETTLED_MS);
    },
    [discountRate],
  );
  return [moves, move] as const;
}
