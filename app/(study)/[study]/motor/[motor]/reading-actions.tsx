'use client';

import { useActionState, useId, useMemo } from 'react';
import { Outcome } from '@/app/_ui/outcome';
import { WhoField } from '@/app/_ui/who-field';
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
  const { reason = '' } = state.typed ?? {};
  const outcome = useMemo(() => ({ problem: state.problem }), [state]);
  const noReason = state.refused?.reason;
  return (
    <details className={styles.act}>
      <summary>
        {excluded ? 'Take back in' : 'Leave out'}{' '}
        <span className="unseen">
          the {kind} of {label}
        </span>
      </summary>
      <form action={send} className={styles.form}>
        <Outcome state={outcome} />
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
            <input
              key={reason}
              id={`${id}-reason`}
              name="reason"
              defaultValue={reason}
              required
              minLength={3}
              maxLength={500}
              aria-describedby={noReason === undefined ? undefined : `${id}-no-reason`}
              aria-invalid={noReason !== undefined}
            />
            {noReason !== undefined && (
              <p id={`${id}-no-reason`} className={styles.refused}>
                {noReason}
              </p>
            )}
          </>
        )}
        <WhoField id={`${id}-who`} initial={who} typed={state.typed?.who} refused={state.refused?.who} />
        <button type="submit" aria-disabled={pending}>
          {excluded ? 'Take it back in' : 'Leave it out'}
        </button>
      </form>
    </details>
  );
}
