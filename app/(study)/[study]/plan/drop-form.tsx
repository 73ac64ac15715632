'use client';

import { useActionState } from 'react';
import { focusMain } from '@/app/_ui/focus-heir';
import { Outcome } from '@/app/_ui/outcome';
import sheet from '@/app/_ui/sheet-page.module.css';
import { WhoField } from '@/app/_ui/who-field';
import { type PlanState, takeWishesBack } from '@/lib/features/plan/actions';
import styles from './plan.module.css';

const NOTHING: PlanState = {};

/** Takes every wish back at once. */
export function DropForm({ study, who }: { readonly study: string; readonly who: string }) {
  const [state, send, busy] = useActionState(takeWishesBack, NOTHING);
  return (
    <details ref={focusMain} className={styles.change}>
      <summary>Take all wishes back</summary>
      <form action={send} className={sheet.form}>
        <Outcome state={state} />
        <input type="hidden" name="study" value={study} />
        <WhoField id="drop-who" initial={who} typed={state.typed?.who} refused={state.refused?.who} />
        <button type="submit" aria-disabled={busy}>
          {busy ? 'Taking back…' : 'Take all back and plan anew'}
        </button>
      </form>
    </details>
  );
}
