import { useEffect, useRef, useState } from 'react';
import { type Preview, previewTest } from '@/lib/features/bench/actions';
import type { Entry, Typed } from './use-entry';

/** Pause after the last key before the test is worked out. */
const PAUSE_MS = 500;

/** What the typed test gave when it was last worked out. Of several answers on their way the one asked for last counts. */
export function usePreview({ typed, started }: Entry): Preview | undefined {
  const [preview, setPreview] = useState<Preview | undefined>();
  const latest = useRef(0);
  const key = JSON.stringify(typed);
  useEffect(() => {
    if (!started) return;
    const turn = ++latest.current;
    const timer = setTimeout(() => {
      previewTest(JSON.parse(key) as Typed).then(
        (found) => turn === latest.current && setPreview(found),
        () =>
          turn === latest.current &&
          setPreview({
            issues: [],
            problem: { text: 'The program did not answer.', remedy: 'Your entry is still here; try again.' },
          }),
      );
    }, PAUSE_MS);
    return () => clearTimeout(timer);
  }, [key, started]);
  return preview;
}
