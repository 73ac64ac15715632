'use client';

import { useActionState, useMemo } from 'react';
import { Outcome } from '@/app/_ui/outcome';
import { undoSettings } from '@/lib/features/setup/actions';

interface Props {
  readonly study: string;
  readonly who: string;
  readonly batch: string;
  /** What is said of the change, until it was taken back. */
  readonly done?: string;
}

/** Gives the settings that one act changed their former values; that too stands in the history. */
export function UndoSettings({ study, who, batch, done }: Props) {
  const [state, send, pending] = useActionState(undoSettings, {});
  const first = useMemo(() => ({ done }), [done]);
  if (state.done !== undefined) return <Outcome state={state} />;
  return (
    <>
      <Outcome state={state.problem || done === undefined ? state : first} />
      <form action={send}>
        <input type="hidden" name="study" value={study} />
        <input type="hidden" name="batch" value={batch} />
        <input type="hidden" name="who" value={who === '' ? 'not named' : who} />
        <button type="submit" aria-disabled={pending}>
          {pending ? 'Taking it back…' : 'Take it back'}
        </button>
      </form>
    </>
  );
}
