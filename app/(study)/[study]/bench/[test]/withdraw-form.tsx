'use client';

import { useActionState } from 'react';
import { Outcome } from '@/app/_ui/outcome';
import { WhoField } from '@/app/_ui/who-field';
import { type KeepState, withdrawKept } from '@/lib/features/bench/actions';
import styles from '../bench.module.css';

const NOTHING: KeepState = {};

/** Withdraws a test with name and reason; it stays in the book and no longer counts. */
export function WithdrawForm({ study, test, who }: { readonly study: string; readonly test: string; readonly who: string }) {
  const [state, withdraw, busy] = useActionState(withdrawKept, NOTHING);
  const { why = '' } = state.typed ?? {};
  return (
    <form action={withdraw}>
      <Outcome state={state} />
      <input type="hidden" name="study" value={study} />
      <input type="hidden" name="test" value={test} />
      <div className={styles.fields}>
        <WhoField id="who" initial={who} typed={state.typed?.who} refused={state.refused?.who} />
        <div className={styles.field}>
          <label htmlFor="why">Why</label>
          <input
            key={why}
            id="why"
            name="why"
            defaultValue={why}
            autoComplete="off"
            aria-describedby={state.refused?.why === undefined ? undefined : 'why-note'}
            aria-invalid={state.refused?.why !== undefined}
          />
          {state.refused?.why !== undefined && (
            <p id="why-note" className={styles.note}>
              {state.refused.why}
            </p>
          )}
        </div>
      </div>
      <button type="submit" aria-disabled={busy}>
        {busy ? 'Withdrawing…' : 'Withdraw the test'}
      </button>
    </form>
  );
}
