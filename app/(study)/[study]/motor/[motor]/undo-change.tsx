'use client';

import { useActionState } from 'react';
import { focusHeir } from '@/app/_ui/focus-heir';
import { ProblemNote } from '@/app/_ui/problem-note';
import { undoPlate } from '@/lib/features/motor/actions';

interface Props {
  readonly study: string;
  readonly motor: string;
  readonly version: number;
  readonly who: string;
  readonly batch: string;
}

/** Takes one change of the plate back; that too stands in the history. */
export function UndoChange({ study, motor, version, who, batch }: Props) {
  const [state, send, pending] = useActionState(undoPlate, {});
  return (
    <form ref={focusHeir} action={send}>
      <ProblemNote problem={state.problem} />
      <input type="hidden" name="study" value={study} />
      <input type="hidden" name="motor" value={motor} />
      <input type="hidden" name="version" value={version} />
      <input type="hidden" name="batch" value={batch} />
      <input type="hidden" name="who" value={who === '' ? 'not named' : who} />
      <button type="submit" aria-disabled={pending}>
        Take it back
      </button>
    </form>
  );
}
