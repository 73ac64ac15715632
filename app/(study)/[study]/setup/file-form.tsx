'use client';

import { useActionState } from 'react';
import { ProblemNote } from '@/app/_ui/problem-note';
import sheet from '@/app/_ui/sheet-page.module.css';
import { WhoField } from '@/app/_ui/who-field';
import type { SetupState } from '@/lib/features/setup/schema';

interface Props {
  readonly id: string;
  readonly study: string;
  readonly who: string;
  readonly label: string;
  readonly accept: string;
  readonly submit: string;
  readonly action: (state: SetupState, form: FormData) => Promise<SetupState>;
}

/** Sends one file of the setup: a settings file or a price list. */
export function FileForm({ id, study, who, label, accept, submit, action }: Props) {
  const [state, send, pending] = useActionState(action, {});
  return (
    <form action={send} className={sheet.form}>
      <input type="hidden" name="study" value={study} />
      <ProblemNote problem={state.problem} />
      <div role="status">{state.done !== undefined && <p className={sheet.done}>{state.done}</p>}</div>
      <div className={sheet.field}>
        <label htmlFor={`${id}-file`}>{label}</label>
        <input id={`${id}-file`} name="file" type="file" accept={accept} required />
      </div>
      <WhoField id={`${id}-who`} initial={who} />
      <p>
        <button type="submit" aria-disabled={pending}>
          {pending ? 'Reading…' : submit}
        </button>
      </p>
    </form>
  );
}
