'use client';

import { useActionState, useRef } from 'react';
import { DraftNote } from '@/app/_ui/draft-note';
import { Outcome } from '@/app/_ui/outcome';
import { leadingAway, useDraft } from '@/app/_ui/use-draft';
import { WhoField } from '@/app/_ui/who-field';
import { commitUpload, type ImportFormState } from '@/lib/features/import/actions';
import styles from '../import.module.css';
import { COMMIT_FORM } from './words';

const NOTHING: ImportFormState = {};

interface Props {
  readonly study: string;
  readonly upload: string;
  readonly who: string;
  readonly conflicts: number;
  /** What the button says. */
  readonly label: string;
}

/** Brings the sheet in: the one main action of the preview. */
export function CommitForm({ study, upload, who, conflicts, label }: Props) {
  const name = `${upload} commit`;
  const [state, commit, working] = useActionState(leadingAway(name, commitUpload), NOTHING);
  const form = useRef<HTMLFormElement>(null);
  const draft = useDraft(form, name, undefined);
  const keeps = state.typed?.conflicts === 'kept';
  return (
    <form ref={form} id={COMMIT_FORM} action={commit}>
      <Outcome state={state} />
      <DraftNote draft={draft} />
      <input type="hidden" name="study" value={study} />
      <input type="hidden" name="upload" value={upload} />
      {conflicts > 0 && (
        <fieldset className={styles.field}>
          <legend>Where the sheet and the study disagree, unless it is chosen apart below</legend>
          <div className={styles.choices} key={String(keeps)}>
            <label>
              <input type="radio" name="conflicts" value="sheet" defaultChecked={!keeps} /> take over what the sheet says
            </label>
            <label>
              <input type="radio" name="conflicts" value="kept" defaultChecked={keeps} /> keep what the study has
            </label>
          </div>
        </fieldset>
      )}
      <WhoField id="who" initial={who} typed={state.typed?.who} refused={state.refused?.who} />
      <button type="submit" data-primary aria-disabled={working}>
        {working ? 'Importing…' : label}
      </button>
      <p role="status" className="unseen">
        {working ? 'Importing; this can take some seconds.' : ''}
      </p>
    </form>
  );
}
