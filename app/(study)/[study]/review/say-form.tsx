'use client';

import { useActionState, useRef } from 'react';
import { DraftNote } from '@/app/_ui/draft-note';
import { Outcome } from '@/app/_ui/outcome';
import sheet from '@/app/_ui/sheet-page.module.css';
import { useDraft } from '@/app/_ui/use-draft';
import { WhoField } from '@/app/_ui/who-field';
import { type SignState, say } from '@/lib/features/sign-off/actions';

const NOTHING: SignState = {};

interface Props {
  readonly study: string;
  readonly number: number;
  readonly hash: string;
  readonly signed: boolean;
  readonly who: string;
}

/** Signs a version, or returns it; once it is signed, rejects it. */
export function SayForm({ study, number, hash, signed, who }: Props) {
  const [state, send, busy] = useActionState(say, NOTHING);
  const form = useRef<HTMLFormElement>(null);
  const draft = useDraft(form, `${study} say of ${number}`, state.done === undefined ? undefined : state);
  const { comment = '' } = state.typed ?? {};
  return (
    <form ref={form} action={send} className={sheet.form}>
      <Outcome state={state} />
      <DraftNote draft={draft} />
      <input type="hidden" name="study" value={study} />
      <input type="hidden" name="number" value={number} />
      <input type="hidden" name="hash" value={hash} />
      <div className={sheet.field}>
        <label htmlFor="say-comment">Comment</label>
        <textarea
          key={comment}
          id="say-comment"
          name="comment"
          defaultValue={comment}
          rows={3}
          maxLength={2000}
          aria-describedby="say-note"
          aria-invalid={state.refused?.comment !== undefined}
        />
        <p id="say-note">
          {state.refused?.comment ??
            (signed
              ? 'Needed to reject. The signature stays, and the rejection stands after it.'
              : 'Needed to return it; kept with a signature as well.')}
        </p>
      </div>
      <WhoField id="say-who" initial={who} typed={state.typed?.who} refused={state.refused?.who} />
      <p className={sheet.bar}>
        <button type="submit" name="kind" value="signed" data-primary aria-disabled={busy}>
          {signed ? 'Sign as well' : 'Sign'}
        </button>
        <button type="submit" name="kind" value={signed ? 'rejected' : 'returned'} aria-disabled={busy}>
          {signed ? 'Reject' : 'Return'}
        </button>
      </p>
    </form>
  );
}
