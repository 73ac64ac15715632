'use client';

import { useActionState } from 'react';
import { Outcome } from '@/app/_ui/outcome';
import sheet from '@/app/_ui/sheet-page.module.css';
import { WhoField } from '@/app/_ui/who-field';
import type { SetupState } from '@/lib/features/setup/schema';
import { UndoSettings } from '../undo-settings';

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
    <>
      {state.batch === undefined ? (
        <Outcome state={state} />
      ) : (
        <UndoSettings
          key={state.batch}
          study={study}
          who={who}
          batch={state.batch}
          {...(state.done !== undefined && { done: state.done })}
        />
      )}
      <form action={send} className={sheet.form}>
        <input type="hidden" name="study" value={study} />
        <div className={sheet.field}>
          <label htmlFor={`${id}-file`}>{label}</label>
          <input id={`${id}-file`} name="file" type="file" accept={accept} required />
        </div>
        <WhoField id={`${id}-who`} initial={who} typed={state.typed?.who} refused={state.refused?.who} />
        <p>
          <button type="submit" aria-disabled={pending}>
            {pending ? 'Reading…' : submit}
          </button>
        </p>
      </form>
    </>
  );
}
