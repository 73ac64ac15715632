'use client';

import { useActionState, useRef } from 'react';
import { DraftNote } from '@/app/_ui/draft-note';
import { Outcome } from '@/app/_ui/outcome';
import { leadingAway, useDraft } from '@/app/_ui/use-draft';
import { WhoField } from '@/app/_ui/who-field';
import { type ImportFormState, startWithSheet } from '@/lib/features/import/actions';
import styles from './page.module.css';

const NOTHING: ImportFormState = {};
const DRAFT = 'start';

interface Props {
  readonly who: string;
  readonly primary: boolean;
}

/** Makes a study and reads its first sheet; without one the study starts empty. */
export function StartForm({ who, primary }: Props) {
  const [state, start, working] = useActionState(leadingAway(DRAFT, startWithSheet), NOTHING);
  const form = useRef<HTMLFormElement>(null);
  const draft = useDraft(form, DRAFT, undefined);
  const { name = '' } = state.typed ?? {};
  return (
    <form ref={form} action={start}>
      <Outcome state={state} />
      <DraftNote draft={draft} />
      <div className={styles.field}>
        <label htmlFor="study-name">Name of the study</label>
        <input
          key={name}
          id="study-name"
          name="name"
          defaultValue={name}
          required
          maxLength={120}
          autoComplete="off"
          aria-describedby="study-name-note"
          aria-invalid={state.refused?.name !== undefined}
        />
        <p id="study-name-note" className={styles.note}>
          {state.refused?.name ?? 'What people will call it, such as the site and the year.'}
        </p>
      </div>
      <WhoField id="start-who" initial={who} typed={state.typed?.who} refused={state.refused?.who} />
      <div className={styles.field}>
        <label htmlFor="sheet">Sheet</label>
        <input
          id="sheet"
          name="file"
          type="file"
          accept=".csv,.txt,.tsv,.xlsx,text/csv,text/plain"
          aria-describedby="sheet-note"
        />
        <p id="sheet-note" className={styles.note}>
          CSV or XLSX. You see what is understood before anything is written. Without a sheet the study starts empty, and rows can
          be pasted.
        </p>
      </div>
      <button type="submit" aria-disabled={working} {...(primary ? { 'data-primary': true } : {})}>
        {working ? 'Starting…' : 'Start the study'}
      </button>
    </form>
  );
}
