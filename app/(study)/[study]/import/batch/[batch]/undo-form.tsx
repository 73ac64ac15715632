'use client';

import { useActionState } from 'react';
import { Outcome } from '@/app/_ui/outcome';
import { WhoField } from '@/app/_ui/who-field';
import { type ImportFormState, takeImportBack } from '@/lib/features/import/actions';
import styles from '../../import.module.css';

const NOTHING: ImportFormState = {};

/** Takes the import back whole; says in words when something was built on it since. */
export function UndoForm({ study, batch, who }: { readonly study: string; readonly batch: string; readonly who: string }) {
  const [state, undo, working] = useActionState(takeImportBack, NOTHING);
  return (
    <details className={styles.more} open={state.problem !== undefined}>
      <summary>Take this import back…</summary>
      <p>What it added goes, and what it changed is as it was before. The sheet can be imported again.</p>
      <form action={undo}>
        <Outcome state={state} />
        <input type="hidden" name="study" value={study} />
        <input type="hidden" name="batch" value={batch} />
        <WhoField id="who" initial={who} typed={state.typed?.who} refused={state.refused?.who} />
        <button type="submit" aria-disabled={working}>
          {working ? 'Taking it back…' : 'Take the import back'}
        </button>
      </form>
    </details>
  );
}
