import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { ProblemNote } from '@/app/_ui/problem-note';
import { BEYOND_READING } from '@/lib/features/fleet/issue-codes';
import { dismissUpload, suggestAnew } from '@/lib/features/import/actions';
import { loadPreview, type Preview, type PreviewResult } from '@/lib/features/import/loaders';
import { currentStudy, loadWho } from '@/lib/features/study/loaders';
import { counted, formatCount, formatStated } from '@/lib/platform/format';
import { Counts } from '../counts';
import styles from '../import.module.css';
import { CommitForm } from './commit-form';
import { ConflictTable, RejectedRows, ToBeChecked } from './findings';
import { HistoryAnswer } from './history-answer';
import { ReadingForm } from './reading-form';
import { addsNothing, COMMIT_FORM, commitWords, remainder, summaryWords } from './words';

interface Props {
  readonly params: Promise<{ study: string; upload: string }>;
}

export const metadata: Metadata = { title: 'Preview of an import' };

/** How a sheet is understood and what its import would change; nothing is written before it is confirmed here. */
export default async function PreviewScreen({ params }: Props) {
  const { study, upload } = await params;
  const preview = await loadPreview(study, upload);
  if (preview === undefined) return (await currentStudy(study)) === undefined ? notFound() : <Gone study={study} />;
  const { about, result, history, problem, recipe } = preview;
  const namesInRow = preview.sample?.namesInRow;
  const undecided = problem === undefined && result === undefined && history === undefined && recipe.decimal === undefined;
  return (
    <main id="main" className={styles.main}>
      <h1>{about.fileName}</h1>
      {namesInRow !== undefined ? (
        // What the first row lacks as a head is no news then.
        <ProblemNote
          problem={{
            text: `The column names seem to stand in row ${formatCount(namesInRow)}, and the first row holds something else.`,
            remedy: 'Delete the rows above them in the file, and send it once more.',
          }}
        />
      ) : (
        problem !== undefined && <ProblemNote problem={problem} />
      )}
      {undecided && (
        <p className={styles.lead}>
          Which sign marks the decimals? The numbers of this sheet can be read in two ways, so you have to say. Then the preview
          follows.
        </p>
      )}
      {result !== undefined && <Answer preview={preview} result={result} who={await loadWho()} />}
      {history !== undefined && <HistoryAnswer study={study} upload={upload} history={history} who={await loadWho()} />}
      {problem !== undefined && BEYOND_READING.has(problem.code) ? (
        <p>
          <Link href={`/${study}/import`}>Choose another file</Link>
        </p>
      ) : (
        <Reading preview={preview} />
      )}
      <form action={dismissUpload} className={styles.actions}>
        <input type="hidden" name="study" value={study} />
        <input type="hidden" name="upload" value={upload} />
        <button type="submit">Do not import</button>
      </form>
    </main>
  );
}

function Reading({ preview }: { readonly preview: Preview }) {
  const { study, about, sample } = preview;
  return (
    <section className={styles.section} aria-labelledby="reading">
      <h2 id="reading">How the sheet is read</h2>
      {about.remembered !== undefined && (
        <div className={styles.actions}>
          <p className={styles.note}>
            A sheet with the same header ({about.remembered.name}) was imported on {formatStated(about.remembered.usedAt)}; this
            one is read the same way.
          </p>
          <form action={suggestAnew}>
            <input type="hidden" name="study" value={study.id} />
            <input type="hidden" name="upload" value={about.id} />
            <button type="submit">Start from the sheet alone</button>
          </form>
        </div>
      )}
      <ReadingForm preview={preview} />
      {sample?.kind === 'xlsx' && <p className={styles.note}>Of a workbook the first sheet is read.</p>}
    </section>
  );
}

function Answer({ preview, result, who }: { readonly preview: Preview; readonly result: PreviewResult; readonly who: string }) {
  const { study, about } = preview;
  const nothing = addsNothing(result);
  return (
    <>
      <p role="status" className={styles.lead}>
        {summaryWords(result)}
      </p>
      {result.missing.map(({ name, label }) => (
        <p key={name} className={styles.missing}>
          No column of the sheet gives the {label.charAt(0).toLowerCase()}
          {label.slice(1)} ({name}), and a new motor needs it. If it stands in the sheet under another name, place that column
          below and read the sheet again.
        </p>
      ))}
      <Counts counts={countsOf(result)} />
      {nothing ? (
        <p>
          There is nothing to import. <Link href={`/${study.id}/import`}>Choose another sheet</Link>
          {result.rowsRejected > 0 ? ', or mend the rejected rows below.' : '.'}
        </p>
      ) : (
        <CommitForm study={study.id} upload={about.id} who={who} conflicts={result.conflictCount} label={commitWords(result)} />
      )}
      <RejectedRows
        issues={result.rejections}
        rows={result.rowsRejected}
        file={`/api/studies/${study.id}/uploads/${about.id}/rejected`}
      >
        {remainder(nothing)}
      </RejectedRows>
      {result.conflictCount > 0 && (
        <section className={styles.section} aria-labelledby="conflicts">
          <h2 id="conflicts">{counted(result.conflictCount, 'fact')} stated otherwise than the study has it</h2>
          <ConflictTable conflicts={result.conflicts} total={result.conflictCount} form={COMMIT_FORM} />
        </section>
      )}
      <ToBeChecked warnings={result.warnings} />
    </>
  );
}

function countsOf(result: PreviewResult) {
  return [
    ['Rows', result.rows],
    ['New motors', result.motorsAdded],
    ['Changed motors', result.motorsChanged],
    ['Unchanged motors', result.motorsUnchanged],
    ['New readings', result.readingsAdded],
    ['Readings there already', result.readingsRepeated + result.repeats],
    ['Facts filled in', result.factsFilled],
    ['Rejected rows', result.rowsRejected],
  ] as const;
}

function Gone({ study }: { readonly study: string }) {
  return (
    <main id="main" className={styles.main}>
      <h1>The sheet is no longer here</h1>
      <p>
        It was imported or dismissed, or it waited for more than two weeks. <Link href={`/${study}/import`}>Choose a sheet</Link>.
      </p>
    </main>
  );
}
