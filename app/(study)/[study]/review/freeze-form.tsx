'use client';

import { useActionState, useRef } from 'react';
import { DraftNote } from '@/app/_ui/draft-note';
import { Outcome } from '@/app/_ui/outcome';
import sheet from '@/app/_ui/sheet-page.module.css';
import { leadingAway, useDraft } from '@/app/_ui/use-draft';
import { WhoField } from '@/app/_ui/who-field';
import { freeze, type SignState } from '@/lib/features/sign-off/actions';

const NOTHING: SignState = {};

/** Freezes the programme as it stands, for a reviewer to sign or return. */
export function FreezeForm({ study, who }: { readonly study: string; readonly who: string }) {
  const name = `${study} freeze`;
  const [state, send, busy] = useActionState(leadingAway(name, freeze), NOTHING);
  const form = useRef<HTMLFormElement>(null);
  const draft = useDraft(form, name, undefined);
  return (
    <form ref={form} action={send} className={sheet.form}>
      <Outcome state={state} />
      <DraftNote draft={draft} />
      <input type="hidden" name="study" value={study} />
      <WhoField id="freeze-who" initial={who} typed={state.typed?.who} refused={state.refused?.who} />
      <button type="submit" data-primary aria-disabled={busy}>
        {busy ? 'Freezing…' : 'Freeze a version'}
      </button>
    </form>
  );
}
