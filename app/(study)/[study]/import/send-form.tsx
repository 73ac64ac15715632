'use client';

import { useActionState, useState } from 'react';
import { ProblemNote } from '@/app/_ui/problem-note';
import { type ImportFormState, sendSheet } from '@/lib/features/import/actions';
import styles from './import.module.css';

const NOTHING: ImportFormState = {};

/** Sends a file or pasted rows; nothing is written until the preview is confirmed. */
export function SendForm({ study }: { readonly study: string }) {
  const [state, send, sending] = useActionState(sendSheet, NOTHING);
  const [pasted, setPasted] = useState('');
  return (
    <form action={send}>
      <ProblemNote problem={state.problem} />
      <input type="hidden" name="study" value={study} />
      <div className={styles.field}>
        <label htmlFor="file">A file</label>
        <input id="file" name="file" type="file" accept=".csv,.txt,.tsv,.xlsx,text/csv,text/plain" aria-describedby="file-note" />
        <p id="file-note" className={styles.note}>
          CSV or XLSX, its column names in the first row; up to 200 MB.
        </p>
      </div>
      <div className={styles.field}>
        <label htmlFor="pasted">Or rows pasted from a spreadsheet, with their column names</label>
        {/* The browser empties a form that was sent; rows that were refused stay to be mended. */}
        <textarea
          id="pasted"
          name="pasted"
          value={pasted}
          onChange={({ target }) => setPasted(target.value)}
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
