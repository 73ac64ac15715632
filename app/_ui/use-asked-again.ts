import { useEffect, useEffectEvent } from 'react';
import type { ZodType } from 'zod';

/**
 * Asks the server again and again for how something at work there stands, as long as it is. What cannot be fetched or read is passed over:
 * the server may be starting again, and the next time tells.
 */
export function useAskedAgain<T>(
  active: boolean,
  { address, schema, everyMs }: { readonly address: string; readonly schema: ZodType<T>; readonly everyMs: number },
  hear: (heard: T) => void,
): void {
  const heard = useEffectEvent(hear);
  const read = useEffectEvent((answer: unknown) => schema.safeParse(answer));
  useEffect(() => {
    if (!active) return;
    const stop = new AbortController();
    const ask = async (): Promise<void> => {
      try {
        const response = await fetch(address, { signal: stop.signal });
        const parsed = read(await response.json());
        if (parsed.success) heard(parsed.data);
      } catch {
        // See above.
      }
    };
    const timer = window.setInterval(() => void ask(), everyMs);
    return () => {
      window.clearInterval(timer);
      stop.abort();
    };
  }, [active, address, everyMs]);
}
