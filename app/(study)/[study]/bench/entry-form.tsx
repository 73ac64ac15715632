'use client';

import { useActionState, useState, useTransition } from 'react';
import { DraftNote } from '@/app/_ui/draft-note';
import { Outcome } from '@/app/_ui/outcome';
import { WhoField } from '@/app/_ui/who-field';
import { type KeepState, keepTyped, type ReadState, readBenchSheet } from '@/lib/features/bench/actions';
import { AboutFields } from './about-fields';
import styles from './bench.module.css';
import type { EntryColumn } from './entry-rows';
import { EntryTable } from './entry-table';
import { PreviewPart } from './preview-part';
import { SheetReader, TestChoice } from './sheet-reader';
import { useEntry } from './use-entry';
import { usePreview } from './use-preview';

interface Props {
  readonly study: string;
  readonly who: string;
  readonly tag: string;
  readonly site: string;
  readonly columns: readonly EntryColumn[];
  readonly sections: readonly { readonly id: string; readonly words: string }[];
  readonly methods: readonly { readonly id: string; readonly words: string }[];
}

const NOTHING: ReadState = {};

/** Entry of a test: read a sheet or type into the table; what it gives stands below while one types. */
export function EntryForm({ study, who, tag, site, columns, sections, methods }: Props) {
  const [read, readSheet, reading] = useActionState(readBenchSheet, NOTHING);
  const [chosen, setChosen] = useState(0);
  const entry = useEntry({ study, tag, site, columns: columns.length }, { read, chosen });
  const preview = usePreview(entry);
  const shown = entry.started ? preview : undefined;
  const [kept, setKept] = useState<KeepState>({});
  const [keeping, keep] = useTransition();

  const send = async (name: string): Promise<void> => {
    try {
      setKept(await keepTyped({ ...entry.typed, who: name }));
    } catch (error) {
      // Kept, it leads to its report, which comes as an error as well; one that got no answer is a TypeError.
      if (!(error instanceof TypeError)) entry.forget();
      throw error;
    }
  };

  return (
    <>
      <SheetReader read={read} readSheet={readSheet} reading={reading} />
      {read.tests && read.tests.length > 1 && <TestChoice tests={read.tests} chosen={chosen} onChosen={setChosen} />}

      <form
        className={styles.entry}
        onSubmit={(event) => {
          event.preventDefault();
          const name = String(new FormData(event.currentTarget).get('who') ?? '');
          keep(() => send(name));
        }}
      >
        <h2 id="points">The test</h2>
        <DraftNote draft={entry.draft} />
        <AboutFields about={entry.about} onAbout={entry.setAbout} methods={methods} refused={kept.refused} />
        <EntryTable
          rows={entry.rows}
          columns={columns}
          sections={sections}
          issues={shown?.issues ?? []}
          doubts={shown?.result?.findings ?? []}
          onChange={entry.setRows}
        />
        <PreviewPart preview={shown} />
        <Outcome state={kept} />
        <div className={styles.fields}>
          <WhoField id="who" initial={who} refused={kept.refused?.who} />
        </div>
        <button type="submit" data-primary aria-disabled={keeping}>
          {keeping ? 'Keeping…' : 'Keep with the motor'}
        </button>
      </form>
    </>
  );
}
