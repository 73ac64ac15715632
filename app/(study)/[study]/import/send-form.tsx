'use client';

import { useActionState, useEffect, useState } from 'react';
import { DraftNote } from '@/app/_ui/draft-note';
import { ProblemNote } from '@/app/_ui/problem-note';
import { keyOf, leadingAway, readDraft, writeDraft } from '@/app/_ui/use-draft';
import { type ImportFormState, sendSheet } from '@/lib/features/import/actions';
import styles from './import.module.css';

const NOTHING: ImportFormState = {};
/** As {@link readDraft} keeps it, under one name. */
const PART = 'pasted';

/** Sends a file or pasted rows; nothing is written until the preview is confirmed. Pasted rows that were not read stay in this window. */
export function SendForm({ study }: { readonly study: string }) {
  const name = `${study} import`;
  const key = keyOf(name);
  const [pasted, setPasted] = useState('');
  const [restored, setRestored] = useState(false);
  useEffect(() => {
    const kept = readDraft(key).get(PART) ?? '';
    if (kept === '') return;
    setPasted(kept);
    setRestored(true);
  }, [key]);
  const put = (text: string): void => {
    setPasted(text);
    writeDraft(key, text === '' ? [] : [[PART, text]]);
  };
  const discard = (): void => {
    put('');
    setRestored(false);
  };
  const [state, send, sending] = useActionState(leadingAway(name, sendSheet), NOTHING);
  return (
    <form action={send}>
      <ProblemNote problem={state.problem} />
      <DraftNote draft={{ restored, discard }} />
      <input type="hidden" name="study" value={study} />
      <div className={styles.field}>
        <label htmlFor="file">A file</label>
        <input id="file" name="file" type="file" accept=".csv,.txt,.tsv,.xlsx,text/csv,text/plain" aria-describedby="file-note" />
        <p id="file-note" className={styles.note}>
          CSV or XLSX, its column names in the first row or below a title; up to 200 MB.
        </p>
      </div>
      <div className={styles.field}>
        <label htmlFor="pasted">Or rows pasted from a spreadsheet, with their column names</label>
        {/* The browser empties a form that was sent; rows that were refused stay to be mended. */}
        <textarea
          id="pasted"
          name="pasted"
          value={pasted}
          onChange={({ target }) => put(target.value)}
          spellCheck={false}
          autoComplete="off"
        />
      </div>
      <button type="submit" data-primary aria-disabled={sending}>
        {sending ? 'Reading the sheet…' : 'Read the sheet'}
      </button>
    </form>
  );
}
