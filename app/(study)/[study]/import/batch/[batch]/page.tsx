import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { loadImport } from '@/lib/features/import/loaders';
import { currentStudy, loadWho } from '@/lib/features/study/loaders';
import { counted, formatCount, formatInstant } from '@/lib/platform/format';
import { RejectedRows } from '../../[upload]/findings';
import { Counts } from '../../counts';
import styles from '../../import.module.css';
import { UndoForm } from './undo-form';

interface Props {
  readonly params: Promise<{ study: string; batch: string }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { study, batch } = await params;
  const found = await loadImport(study, batch);
  return { title: found === undefined ? 'No such import' : `Import of ${found.entry.fileName}` };
}

/** What one import brought, its rejected rows, and the way to take it back. */
export default async function ImportedScreen({ params }: Props) {
  const { study, batch } = await params;
  const found = await loadImport(study, batch);
  if ((await currentStudy(study)) === undefined || found === undefined) notFound();
  const { entry, rejections } = found;
  const history = entry.kind === 'indicators';
  const brought = entry.undoneAt === undefined && entry.motorsAdded + entry.motorsChanged + entry.readingsAdded > 0;
  const counts: readonly (readonly [string, number])[] = [
    ['Rows read', entry.rowsRead],
    ...(history ? [] : [['Motors added', entry.motorsAdded] as const]),
    [history ? 'Motors' : 'Motors changed', entry.motorsChanged],
    [history ? 'Values added' : 'Readings added', entry.readingsAdded],
    [history ? 'Values there already' : 'Readings there already', entry.rowsRepeated],
    ['Rows rejected', entry.rowsRejected],
  ];
  return (
    <main id="main" className={styles.main}>
      <p className={styles.note}>
        <Link href={`/${study}/import`}>Import</Link>
      </p>
      <h1>{entry.fileName}</h1>
      <p className={styles.lead}>
        {entry.undoneAt === undefined
          ? history
            ? `Imported: ${counted(entry.readingsAdded, 'value')} of ${counted(entry.motorsChanged, 'motor')}.`
            : `Imported: ${counted(entry.motorsAdded, 'motor')} added, ${formatCount(entry.motorsChanged)} changed, ${counted(entry.readingsAdded, 'reading')} added.`
          : `This import was taken back on ${formatInstant(entry.undoneAt)} UTC by ${entry.undoneBy ?? 'nobody named'}.`}
      </p>
      <p className={styles.soft}>
        {entry.who}, {formatInstant(entry.createdAt)} UTC
      </p>
      <Counts counts={counts} />
      {brought && (
        <p>
          What they mean is worked out by itself: <em>Fleet</em> lists every motor with its figures, <em>Trust</em> says what to
          read again, <em>Ranking</em> what to do and what that is worth.
        </p>
      )}
      <p className={styles.actions}>
        {entry.undoneAt === undefined && (
          <>
            <Link href={`/${study}/fleet`}>Go to the fleet</Link>
            <Link href={`/${study}/ranking`}>Go to the ranking</Link>
          </>
        )}
        <Link href={`/${study}/import`}>Import another sheet</Link>
      </p>
      <RejectedRows issues={rejections} rows={entry.rowsRejected} file={`/api/studies/${study}/imports/${batch}/rejected`} />
      {entry.undoneAt === undefined && (
        <section className={styles.section}>
          <UndoForm study={study} batch={batch} who={await loadWho()} />
        </section>
      )}
    </main>
  );
}
