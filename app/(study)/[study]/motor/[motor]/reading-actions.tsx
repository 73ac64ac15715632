'use client';

import { useActionState, useId } from 'react';
import { ProblemNote } from '@/app/_ui/problem-note';
import { excludeReading, includeReading } from '@/lib/features/motor/actions';
import type { EditState } from '@/lib/features/motor/schema';
import styles from './reading-actions.module.css';

interface Props {
  readonly study: string;
  readonly motor: string;
  readonly version: number;
  readonly who: string;
  /** A whole reading, or a single value of an indicator history. */
  readonly kind: 'reading' | 'value';
  readonly reading: string;
  readonly label: string;
  readonly excluded?: { readonly by: string; readonly reason: string } | undefined;
}

/** Leaves a reading or a value out with a reason, or takes it back in. It is never rewritten. */
export function ReadingActions({ study, motor, version, who, kind, reading, label, excluded }: Props) {
  const action: (state: EditState, form: FormData) => Promise<EditState> = excluded ? includeReading : excludeReading;
  const [state, send, pending] = useActionState(action, {});
  const id = useId();
  const { who: typedWho = who, reason = '' } = state.typed ?? {};
  return (
    <details className={styles.act}>
      <summary>
        {excluded ? 'Take back in' : 'Leave out'}{' '}
        <span className="unseen">
          the {kind} of {label}
        </span>
      </summary>
      <form action={send} className={styles.form}>
        <ProblemNote problem={state.problem} />
        <input type="hidden" name="study" value={study} />
        <input type="hidden" name="motor" value={motor} />
        <input type="hidden" name="version" value={version} />
        <input type="hidden" name="kind" value={kind} />
        <input type="hidden" name="reading" value={reading} />
        {excluded ? (
          <p>
            Left out by {excluded.by}: {excluded.reason}
          </p>
        ) : (
          <>
            <label htmlFor={`${id}-reason`}>Why it does not count</label>
            <input key={reason} id={`${id}-reason`} name="reason" defaultValue={reason} required minLength={3} maxLength={500} />
          </>
        )}
        <label htmlFor={`${id}-who`}>Your name</label>
        <input key={typedWho} id={`${id}-who`} name="who" defaultValue={typedWho} required maxLength={80} />
        <button type="submit" aria-disabled={pending}>
          {excluded ? 'Take it back in' : 'Leave it out'}
        </button>
      </form>
    </details>
  );
}
