'use client';

import { useActionState, useEffect, useRef, useState, useTransition } from 'react';
import { DraftNote } from '@/app/_ui/draft-note';
import { FindingList } from '@/app/_ui/finding-list';
import { ProblemNote } from '@/app/_ui/problem-note';
import {
  type KeepState,
  keepTyped,
  type Preview,
  previewTest,
  type ReadState,
  readBenchSheet,
} from '@/lib/features/bench/actions';
import type { EntryDraft } from '@/lib/features/bench/entry-draft';
import { formatFigure } from '@/lib/platform/format';
import styles from './bench.module.css';
import { type EntryColumn, type EntryRow, emptyTest, entryRows } from './entry-rows';
import { EntryTable } from './entry-table';
import { RegressionChart } from './regression-chart';
import { useEntryDraft } from './use-entry-draft';

interface Props {
  readonly study: string;
  readonly who: string;
  readonly tag: string;
  readonly site: string;
  readonly columns: readonly EntryColumn[];
  readonly sections: readonly { readonly id: string; readonly words: string }[];
  readonly methods: readonly { readonly id: string; readonly words: string }[];
}

type About = EntryDraft['about'];

const NOTHING: ReadState = {};
/** Pause after the last key before the test is worked out. */
const PAUSE_MS = 500;

/** Entry of a test: read a sheet or type into the table; what it gives stands below while one types. */
export function EntryForm({ study, who, tag, site, columns, sections, methods }: Props) {
  const [read, readSheet, reading] = useActionState(readBenchSheet, NOTHING);
  const fresh: About = { tag, site, name: '', takenAt: '', method: '', conductor: '', decimal: '.' };
  const [rows, setRows] = useState<readonly EntryRow[]>(() => emptyTest(columns.length));
  const [about, setAbout] = useState<About>(fresh);
  const [name, setName] = useState(who);
  const [preview, setPreview] = useState<Preview | undefined>();
  const [kept, setKept] = useState<KeepState>({});
  const [keeping, keep] = useTransition();
  const [chosen, setChosen] = useState(0);
  const latest = useRef(0);

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

  const typed = { study, ...about, rows: rows.map(({ section, cells }) => ({ section, cells: [...cells] })) } as Parameters<
    typeof previewTest
  >[0];
  const key = JSON.stringify(typed);
  const started = about.tag.trim() !== '' && rows.some((row) => row.cells.some((cell) => cell.trim() !== ''));

  const put = (entry: EntryDraft): void => {
    setAbout(entry.about);
    setRows(entry.rows);
  };
  const { restored, forget } = useEntryDraft(study, { started, entry: { about, rows }, put });
  const discard = (): void => {
    forget();
    put({ about: fresh, rows: emptyTest(columns.length) });
  };

  const send = async (): Promise<void> => {
    try {
      setKept(await keepTyped({ ...typed, who: name }));
    } catch (error) {
      // Kept, it leads to its report, which comes as an error as well; one that got no answer is a TypeError.
      if (!(error instanceof TypeError)) forget();
      throw error;
    }
  };

  useEffect(() => {
    if (!started) return;
    const turn = ++latest.current;
    const timer = setTimeout(() => {
      previewTest(JSON.parse(key) as Parameters<typeof previewTest>[0]).then(
        (found) => turn === latest.current && setPreview(found),
        () =>
          turn === latest.current &&
          setPreview({
            issues: [],
            problem: { text: 'The program did not answer.', remedy: 'Your entry is still here; try again.' },
          }),
      );
    }, PAUSE_MS);
    return () => clearTimeout(timer);
  }, [key, started]);

  const field = (id: keyof About, label: string, note?: string) => (
    <div className={styles.field}>
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        value={about[id]}
        onChange={(event) => setAbout({ ...about, [id]: event.target.value })}
        autoComplete="off"
        aria-describedby={note ? `${id}-note` : undefined}
      />
      {note && (
        <p id={`${id}-note`} className={styles.note}>
          {note}
        </p>
      )}
    </div>
  );

  return (
    <>
      <details className={styles.more}>
        <summary>Read a sheet</summary>
        <form action={readSheet}>
          <ProblemNote problem={read.problem} />
          <div className={styles.fields}>
            <div className={styles.field}>
              <label htmlFor="file">A file (CSV or XLSX)</label>
              <input id="file" name="file" type="file" accept=".csv,.txt,.tsv,.xlsx,text/csv,text/plain" />
            </div>
            <div className={styles.field}>
              <label htmlFor="sheet-decimal">Decimal sign of the sheet</label>
              <select id="sheet-decimal" name="decimal" defaultValue=".">
                <option value=".">point: 0.52</option>
                <option value=",">comma: 0,52</option>
              </select>
            </div>
          </div>
          <div className={styles.field}>
            <label htmlFor="pasted">Or rows pasted from a spreadsheet, with their column names</label>
            <textarea id="pasted" name="pasted" rows={4} spellCheck={false} autoComplete="off" />
          </div>
          <button type="submit" aria-disabled={reading}>
            {reading ? 'Reading…' : 'Read into the table'}
          </button>
        </form>
      </details>
      {read.issues && read.issues.length > 0 && (
        <ul className={styles.issues}>
          {read.issues.map((issue) => (
            <li key={`${issue.row} ${issue.column} ${issue.code}`}>
              Row {issue.row} of the sheet: {issue.text} {issue.remedy}
            </li>
          ))}
        </ul>
      )}
      {read.tests && read.tests.length > 1 && (
        <div className={styles.field}>
          <label htmlFor="which">Test of the sheet</label>
          <select id="which" value={chosen} onChange={(event) => setChosen(Number(event.target.value))}>
            {read.tests.map((test, at) => (
              <option key={`${test.tag} ${test.name}`} value={at}>
                {[test.tag, test.name].filter(Boolean).join(', ') || `test ${at + 1}`}
              </option>
            ))}
          </select>
        </div>
      )}

      <form
        className={styles.entry}
        onSubmit={(event) => {
          event.preventDefault();
          keep(send);
        }}
      >
        <h2 id="points">The test</h2>
        <DraftNote draft={{ restored, discard }} />
        <div className={styles.fields}>
          {field('tag', 'Tag of the motor')}
          {field('site', 'Site', 'Only where the tag stands at several sites.')}
          {field('name', 'Name of the test', 'Such as: before rewind.')}
          {field('takenAt', 'Date, as 2026-03-14')}
          <div className={styles.field}>
            <label htmlFor="method">Procedure</label>
            <select id="method" value={about.method} onChange={(event) => setAbout({ ...about, method: event.target.value })}>
              <option value="">by what was measured</option>
              {methods.map((method) => (
                <option key={method.id} value={method.id}>
                  {method.words}
                </option>
              ))}
            </select>
          </div>
          <div className={styles.field}>
            <label htmlFor="decimal">Decimal sign that you type</label>
            <select
              id="decimal"
              value={about.decimal}
              onChange={(event) => setAbout({ ...about, decimal: event.target.value === ',' ? ',' : '.' })}
            >
              <option value=".">point: 0.52</option>
              <option value=",">comma: 0,52</option>
            </select>
          </div>
          <div className={styles.field}>
            <label htmlFor="conductor">Conductor of the rotor</label>
            <select
              id="conductor"
              value={about.conductor}
              onChange={(event) => setAbout({ ...about, conductor: event.target.value })}
            >
              <option value="">not stated (aluminium)</option>
              <option value="aluminium">aluminium</option>
              <option value="copper">copper</option>
            </select>
          </div>
        </div>
        <EntryTable
          rows={rows}
          columns={columns}
          sections={sections}
          issues={preview?.issues ?? []}
          doubts={started ? (preview?.result?.findings ?? []) : []}
          onChange={setRows}
        />
        <PreviewPart preview={started ? preview : undefined} />
        <ProblemNote problem={kept.problem} />
        <div className={styles.fields}>
          <div className={styles.field}>
            <label htmlFor="who">Your name</label>
            <input id="who" value={name} onChange={(event) => setName(event.target.value)} autoComplete="name" />
          </div>
        </div>
        <button type="submit" data-primary aria-disabled={keeping}>
          {keeping ? 'Keeping…' : 'Keep with the motor'}
        </button>
      </form>
    </>
  );
}

/** Whether the test would be accepted as it stands. */
function standing({ accepted, findings }: NonNullable<Preview['result']>): string {
  if (!accepted) return 'As it stands the test would not be accepted.';
  const cautions = findings.filter(({ severity }) => severity === 'warning').length;
  if (cautions === 0) return 'Nothing speaks against the test so far.';
  return `It would be accepted; ${cautions === 1 ? 'one caution stands' : `${cautions} cautions stand`} below.`;
}

/** What the typed test gives so far. */
function PreviewPart({ preview }: { readonly preview: Preview | undefined }) {
  if (!preview) return <p className={styles.soft}>Write the tag and the first points: what they give will stand here.</p>;
  const { result, problem } = preview;
  const rated = result?.points.find((point) => point.load_fraction === 1);
  return (
    <section aria-label="What it gives so far" aria-live="polite">
      {problem && (
        <p className={styles.problem}>
          {problem.text} {problem.remedy}
        </p>
      )}
      {result && (
        <>
          <p className={styles.answer}>
            {rated ? `Efficiency at rated load ${formatFigure(rated.efficiency, { percent: true }).text}. ` : ''}
            {standing(result)}
          </p>
          <div className={styles.charts}>
            {result.lines.no_load && <RegressionChart line={result.lines.no_load} kind="no-load" />}
            {result.lines.stray && (
              <RegressionChart line={result.lines.stray} kind="stray" correlation={result.stray_load_loss?.correlation} />
            )}
          </div>
          <FindingList findings={result.findings} empty="" />
        </>
      )}
    </section>
  );
}
