import { useEffect, useState } from 'react';
import type { previewTest, ReadState } from '@/lib/features/bench/actions';
import type { EntryDraft } from '@/lib/features/bench/entry-draft';
import { type EntryRow, emptyTest, entryRows } from './entry-rows';
import { useEntryDraft } from './use-entry-draft';

/** What stands over the points: which motor, which test, how it was made. */
export type About = EntryDraft['about'];
/** A typed test as it is sent. */
export type Typed = Parameters<typeof previewTest>[0];

interface Start {
  readonly study: string;
  readonly tag: string;
  readonly site: string;
  /** How many columns the table of entry has. */
  readonly columns: number;
}

/** A sheet that was read, and which of its tests is wanted. */
interface Sheet {
  readonly read: ReadState;
  readonly chosen: number;
}

/** A test that is being typed. */
export interface Entry {
  readonly about: About;
  readonly setAbout: (about: About) => void;
  readonly rows: readonly EntryRow[];
  readonly setRows: (rows: readonly EntryRow[]) => void;
  readonly typed: Typed;
  /** Whether it has a tag and any point. */
  readonly started: boolean;
  /** Whether it was put back after the page had been left, and the way to be rid of it. */
  readonly draft: { readonly restored: boolean; readonly discard: () => void };
  /** Kept with its motor, it need not be kept in this window. */
  readonly forget: () => void;
}

/** Fills the table from a sheet or from what was typed before, and keeps what is typed. */
export function useEntry({ study, tag, site, columns }: Start, { read, chosen }: Sheet): Entry {
  const fresh: About = { tag, site, name: '', takenAt: '', method: '', conductor: '', decimal: '.' };
  const [rows, setRows] = useState<readonly EntryRow[]>(() => emptyTest(columns));
  const [about, setAbout] = useState<About>(fresh);

  // A sheet just read fills the table; of several tests the chosen one.
  useEffect(() => {
    const test = read.tests?.[chosen];
    if (!test) return;
    setRows(entryRows(test.rows));
    setAbout((old) => ({
      ...old,
      decimal: '.',
      tag: test.tag === '' ? old.tag : test.tag,
      name: test.name === '' ? old.name : test.name,
    }));
  }, [read, chosen]);

  const typed = { study, ...about, rows: rows.map(({ section, cells }) => ({ section, cells: [...cells] })) } as Typed;
  const started = about.tag.trim() !== '' && rows.some((row) => row.cells.some((cell) => cell.trim() !== ''));
  const put = (entry: EntryDraft): void => {
    setAbout(entry.about);
    setRows(entry.rows);
  };
  const { restored, forget } = useEntryDraft(study, { started, entry: { about, rows }, put });
  const discard = (): void => {
    forget();
    put({ about: fresh, rows: emptyTest(columns) });
  };
  return { about, setAbout, rows, setRows, typed, started, draft: { restored, discard }, forget };
}
