'use client';

import { useActionState } from 'react';
import { Outcome } from '@/app/_ui/outcome';
import sheet from '@/app/_ui/sheet-page.module.css';
import { WhoField } from '@/app/_ui/who-field';
import { changeStudyName } from '@/lib/features/study/actions';

/** Gives the study another name. */
export function NameForm({ study, name, who }: { readonly study: string; readonly name: string; readonly who: string }) {
  const [state, send, pending] = useActionState(changeStudyName, {});
  const typed = state.typed?.name ?? name;
  return (
    <form action={send} className={sheet.form}>
      <input type="hidden" name="study" value={study} />
      <Outcome state={state} />
      <div className={sheet.field}>
        <label htmlFor="study-name">Name of the study</label>
        <input
          key={typed}
          id="study-name"
          name="name"
          defaultValue={typed}
          required
          maxLength={120}
          aria-invalid={state.refused?.name !== undefined}
        />
      </div>
      <WhoField id="name-who" initial={who} typed={state.typed?.who} refused={state.refused?.who} />
      <p>
        <button type="submit" aria-disabled={pending}>
          Rename the study
        </button>
      </p>
    </form>
  );
}
