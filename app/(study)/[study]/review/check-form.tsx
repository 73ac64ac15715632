'use client';

import { useActionState } from 'react';
import { Outcome } from '@/app/_ui/outcome';
import sheet from '@/app/_ui/sheet-page.module.css';
import { check, type SignState } from '@/lib/features/sign-off/actions';

const NOTHING: SignState = {};

/** Says whether a file or a printed page is a version of this study. */
export function CheckForm({ study }: { readonly study: string }) {
  const [state, send, busy] = useActionState(check, NOTHING);
  return (
    <form action={send} className={sheet.form}>
      <Outcome state={state} />
      <input type="hidden" name="study" value={study} />
      <div className={sheet.field}>
        <label htmlFor="check-file">An exported file</label>
        <input id="check-file" name="file" type="file" accept=".json,application/json" />
      </div>
      <div className={sheet.field}>
        <label htmlFor="check-hash">Or the hash of a printed page</label>
        <input id="check-hash" name="hash" autoComplete="off" spellCheck={false} aria-describedby="check-hash-note" />
        <p id="check-hash-note">Its first twelve digits are enough.</p>
      </div>
      <button type="submit" aria-disabled={busy}>
        {busy ? 'Checking…' : 'Check the copy'}
      </button>
    </form>
  );
}
