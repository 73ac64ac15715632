import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { ENTRY_COLUMNS, sectionsWith } from '@/lib/features/bench/columns';
import { loadTests } from '@/lib/features/bench/loaders';
import { currentStudy, loadWho } from '@/lib/features/study/loaders';
import { formatInstant, formatStated } from '@/lib/platform/format';
import styles from './bench.module.css';
import { Cautions } from './cautions';
import { EntryForm } from './entry-form';
import { METHOD_WORDS, SECTION_WORDS } from './words';

interface Props {
  readonly params: Promise<{ study: string }>;
  readonly searchParams: Promise<{ tag?: string | string[]; site?: string | string[] }>;
}

export const metadata: Metadata = { title: 'Bench test' };

const one = (value: string | string[] | undefined): string => (typeof value === 'string' ? value : '');

/** Where bench tests enter the book, and those that are in it. */
export default async function BenchScreen({ params, searchParams }: Props) {
  const { study: id } = await params;
  const study = await currentStudy(id);
  if (study === undefined) notFound();
  const { tag, site } = await searchParams;
  const tests = await loadTests(id);
  return (
    <main id="main" className={styles.main}>
      <h1>Bench test</h1>
      <p>
        Measured points of a motor on a test bench, or of an uncoupled run on site. They are worked out while you type, by the
        procedure you choose; kept, they stay with the motor. <a href="/api/bench-sheet">Blank sheet (CSV)</a>.
      </p>
      <Cautions />
      <EntryForm
        study={id}
        who={await loadWho()}
        tag={one(tag)}
        site={one(site)}
        columns={ENTRY_COLUMNS.map(({ name, label, meaning, kind, field }) => ({
          name,
          label,
          meaning,
          unit: kind.type === 'number' ? kind.unit : '',
          sections: field === undefined ? [] : sectionsWith(field),
        }))}
        sections={SECTION_WORDS}
        methods={METHOD_WORDS}
      />
      <section className={styles.section} aria-labelledby="kept">
        <h2 id="kept">Tests in the book</h2>
        {tests.length === 0 ? (
          <p className={styles.soft}>No test has been kept yet. Type or read one above, then keep it with its motor.</p>
        ) : (
          <ul className={styles.list}>
            {tests.map((stored) => (
              <li key={stored.id}>
                <Link href={`/${id}/bench/${stored.id}`}>
                  {stored.test.tag}
                  {stored.test.test === '' ? '' : `, ${stored.test.test}`}
                </Link>{' '}
                <span className={styles.soft}>
                  {stored.takenAt === undefined ? `added ${formatInstant(stored.createdAt)} UTC` : formatStated(stored.takenAt)}{' '}
                  by {stored.addedBy}
                  {stored.withdrawn && ', withdrawn'}
                </span>
              </li>
            ))}
          </ul>
        )}
      </section>
    </main>
  );
}
