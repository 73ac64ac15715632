import { usePathname, useRouter } from 'next/navigation';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { Moves } from '@/lib/engine/client';
import { writeMoves } from '@/lib/features/ranking/schema';

/** So long after the last move the page's links learn of it. */
const SETTLED_MS = 500;

/** The moves in force, kept in the address, so that they can be sent on, printed and gone back to. */
export function useMoves(first: Moves, discountRate: number, others: Readonly<Record<string, string>>) {
  const [moves, setMoves] = useState(first);
  const path = usePathname();
  const router = useRouter();
  const timer = useRef<number>(undefined);
  useEffect(() => () => window.clearTimeout(timer.current), []);
  const move = useCallback(
    (next: Moves) => {
      setMoves(next);
      const query = new URLSearchParams({ ...others, ...writeMoves(next, discountRate) }).toString();
      const address = query === '' ? path : `${path}?${query}`;
      window.clearTimeout(timer.current);
      timer.current = window.setTimeout(() => router.replace(address, { scroll: false }), SETTLED_MS);
    },
    [path, router, discountRate, others],
  );
  return [moves, move] as const;
}
