import { useEffect, useEffectEvent, useState } from 'react';
import { readDraft, writeDraft } from '@/app/_ui/use-draft';
import { type EntryDraft, entryDraft } from '@/lib/features/bench/entry-draft';

/** As {@link readDraft} keeps it, under one name. */
const PART = 'entry';

function read(key: string): EntryDraft | undefined {
  try {
    return entryDraft.safeParse(JSON.parse(readDraft(key).get(PART) ?? 'null')).data;
  } catch {
    return undefined;
  }
}

/** Keeps a typed test in this window until it is kept with its motor, so that a reload or a way back and forth loses none of it. */
export function useEntryDraft(
  study: string,
  { started, entry, put }: { readonly started: boolean; readonly entry: EntryDraft; readonly put: (entry: EntryDraft) => void },
): { readonly restored: boolean; readonly forget: () => void } {
  const key = `draft ${study} bench`;
  const [restored, setRestored] = useState(false);
  const putBack = useEffectEvent(put);
  useEffect(() => {
    const kept = read(key);
    if (!kept) return;
    putBack(kept);
    setRestored(true);
  }, [key]);
  const text = JSON.stringify(entry);
  useEffect(() => {
    if (started) writeDraft(key, [[PART, text]]);
  }, [key, started, text]);
  return {
    restored,
    forget: () => {
      writeDraft(key, []);
      setRestored(false);
    },
  };
}
