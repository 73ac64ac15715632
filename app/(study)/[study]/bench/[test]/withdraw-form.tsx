'use client';

import { useActionState } from 'react';
import { ProblemNote } from '@/app/_ui/problem-note';
import { type KeepState, withdrawKept } from '@/lib/features/bench/actions';
import styles from '../bench.module.css';

const NOTHING: KeepState = {};

/** Withdraws a test with name and reason; it stays in the book and no longer counts. */
export function WithdrawForm({ study, test, who }: { readonly study: string; readonly test: string; readonly who: string }) {
  const [state, withdraw, busy] = useActionState(withdrawKept, NOTHING);
  return (
    <form action={withdraw}>
      <ProblemNote problem={state.problem} />
      <input type="hidden" name="study" value={study} />
      <input type="hidden" name="test" value={test} />
      <div className={styles.fields}>
        <div className={styles.field}>
          <label htmlFor="who">Your name</label>
          <input id="who" name="who" defaultValue={who} autoComplete="name" />
        </div>
        <div className={styles.field}>
          <label htmlFor="why">Why</label>
          <input id="why" name="why" autoComplete="off" />
        </div>
      </div>
      <button type="submit" aria-disabled={busy}>
        {busy ? 'Withdrawing…' : 'Withdraw the test'}
      </button>
    </form>
  );
}
