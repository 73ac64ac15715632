'use client';

import { useActionState } from 'react';
import { ProblemNote } from '@/app/_ui/problem-note';
import { type FormState, removeStudy } from '@/lib/features/study/actions';
import styles from './page.module.css';

const NOTHING: FormState = {};

/** Removes a study for good, after a box was ticked on purpose. */
export function RemoveForm({ study, name }: { readonly study: string; readonly name: string }) {
  const [state, remove, working] = useActionState(removeStudy, NOTHING);
  return (
    <details className={styles.more}>
      <summary>
        Remove for good…<span className="unseen"> {name}</span>
      </summary>
      <form action={remove}>
        <ProblemNote problem={state.problem} />
        <input type="hidden" name="study" value={study} />
        <label className={styles.tick}>
          <input type="checkbox" name="confirmed" value="yes" required /> Its motors, readings and history may go. A backup made
          before still has them.
        </label>
        <button type="submit" aria-disabled={working}>
          Remove {name}
        </button>
      </form>
    </details>
  );
}
