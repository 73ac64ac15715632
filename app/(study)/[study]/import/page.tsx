import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { loadImports } from '@/lib/features/import/loaders';
import { currentStudy } from '@/lib/features/study/loaders';
import { formatBytes, formatCount, formatInstant } from '@/lib/platform/format';
import styles from './import.module.css';
import { SendForm } from './send-form';

interface Props {
  readonly params: Promise<{ study: string }>;
}

export const metadata: Metadata = { title: 'Import' };

/** Where a sheet is brought in, and what was brought in so far. */
export default async function ImportScreen({ params }: Props) {
  const { study: id } = await params;
  const study = await currentStudy(id);
  if (study === undefined) notFound();
  const { imports, waiting } = await loadImports(id);
  return (
    <main id="main" className={styles.main}>
      <h1>Import</h1>
      <p>
        One row is one motor with at most one set of readings. The next screen shows how the sheet is understood and what would
        change; nothing is written before you confirm it there. A blank sheet with all columns:{' '}
        <a href="/api/blank-sheet/csv">CSV</a>, <a href="/api/blank-sheet/xlsx">XLSX</a>. An indicator history comes the same way:
        one value a row, with the columns site, tag, indicator, value, unit, taken_at and instrument.
      </p>
      <SendForm study={id} />
      {waiting.length > 0 && (
        <section className={styles.section} aria-labelledby="waiting">
          <h2 id="waiting">Waiting to be confirmed</h2>
          <ul className={styles.list}>
            {waiting.map((about) => (
              <li key={about.id}>
                <Link href={`/${id}/import/${about.id}`}>{about.fileName}</Link>{' '}
                <span className={styles.soft}>{formatBytes(about.bytes)}</span>
              </li>
            ))}
          </ul>
        </section>
      )}
      <section className={styles.section} aria-labelledby="so-far">
        <h2 id="so-far">So far</h2>
        {imports.length === 0 ? (
          <p className={styles.soft}>Nothing has been imported into this study yet.</p>
        ) : (
          <Imports imports={imports} study={id} />
        )}
      </section>
    </main>
  );
}

interface ImportsProps {
  readonly imports: Awaited<ReturnType<typeof loadImports>>['imports'];
  readonly study: string;
}

/** One import a line, with what it brought. */
function Imports({ imports, study }: ImportsProps) {
  return (
    <div className={styles.scroll}>
      <table className={`${styles.table} ${styles.stack}`}>
        <thead>
          <tr>
            <th scope="col">Sheet</th>
            <th scope="col">When</th>
            <th scope="col">Who</th>
            <th scope="col" className={styles.number}>
              Motors added
            </th>
            <th scope="col" className={styles.number}>
              Motors changed
            </th>
            <th scope="col" className={styles.number}>
              Readings added
            </th>
            <th scope="col" className={styles.number}>
              Rows rejected
            </th>
          </tr>
        </thead>
        <tbody>
          {imports.map((entry) => (
            <tr key={entry.id}>
              <th scope="row">
                <Link href={`/${study}/import/batch/${entry.id}`}>{entry.fileName}</Link>
                {entry.kind === 'indicators' && <span className={styles.state}>indicator history</span>}
                {entry.undoneAt !== undefined && <span className={styles.state}>taken back</span>}
              </th>
              <td data-name="When">{formatInstant(entry.createdAt)} UTC</td>
              <td data-name="Who">{entry.who}</td>
              <td data-name="Motors added" className={styles.number}>
                {formatCount(entry.motorsAdded)}
              </td>
              <td data-name="Motors changed" className={styles.number}>
                {formatCount(entry.motorsChanged)}
              </td>
              <td data-name="Readings added" className={styles.number}>
                {formatCount(entry.readingsAdded)}
              </td>
              <td data-name="Rows rejected" className={styles.number}>
                {formatCount(entry.rowsRejected)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
