'use client';

import { useActionState } from 'react';
import { Outcome } from '@/app/_ui/outcome';
import sheet from '@/app/_ui/sheet-page.module.css';
import { WhoField } from '@/app/_ui/who-field';
import { freeze, type SignState } from '@/lib/features/sign-off/actions';

const NOTHING: SignState = {};

/** Freezes the programme as it stands, for a reviewer to sign or return. */
export function FreezeForm({ study, who }: { readonly study: string; readonly who: string }) {
  const [state, send, busy] = useActionState(freeze, NOTHING);
  return (
    <form action={send} className={sheet.form}>
      <Outcome state={state} />
      <input type="hidden" name="study" value={study} />
      <WhoField id="freeze-who" initial={who} />
      <button type="submit" data-primary aria-disabled={busy}>
        {busy ? 'Freezing…' : 'Freeze a version'}
      </button>
    </form>
  );
}
