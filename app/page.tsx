import { setArchived } from '@/lib/features/study/actions';
import { loadStudies, loadWho } from '@/lib/features/study/loaders';
import { ReaderChoices } from './_ui/reader-choices';
import { DemoButton } from './demo-button';
import styles from './page.module.css';
import { StartForm } from './start-form';
import { ArchivedList, StudyList } from './study-list';

interface Props {
  readonly searchParams: Promise<{ readonly [name: string]: string | readonly string[] | undefined }>;
}

/** Where everybody comes in: one's studies, the demonstration, a new study from a sheet. */
export default async function FirstPage({ searchParams }: Props) {
  const studies = await loadStudies();
  const { removed } = await searchParams;
  const inUse = studies.filter(({ archivedAt }) => archivedAt === undefined);
  const aside = studies.filter(({ archivedAt }) => archivedAt !== undefined);
  const justRemoved = aside.find(({ id }) => id === removed);
  const first = inUse.length === 0;
  const demo = inUse.find((study) => study.demo);
  return (
    <main id="main" className={styles.page}>
      <h1 className={styles.name}>Lossbook</h1>
      <p className={styles.job}>
        Keeps the book of losses of every motor on a site: how hard each one works, where its energy goes, how far the figures can
        be trusted, what condition it is in, and what to do about it.
      </p>
      {justRemoved !== undefined && (
        <div role="status" className={styles.notice}>
          <p>{justRemoved.name} was put aside; nothing of it is lost yet.</p>
          <form action={setArchived}>
            <input type="hidden" name="study" value={justRemoved.id} />
            <input type="hidden" name="archived" value="no" />
            <button type="submit">Undo</button>
          </form>
        </div>
      )}
      {!first && (
        <section className={styles.section} aria-labelledby="studies">
          <h2 id="studies">Studies</h2>
          <StudyList studies={inUse} />
        </section>
      )}
      <div className={styles.ways}>
        <section className={styles.section} aria-labelledby="start">
          <h2 id="start">{first ? 'Start with your own motors' : 'Another study'}</h2>
          <StartForm who={await loadWho()} primary={!first} />
        </section>
        <div>
          {demo === undefined && (
            <section className={styles.section} aria-labelledby="demo">
              <h2 id="demo">Look around first</h2>
              <p>
                The demonstration is an invented works of some two hundred motors, with the mistakes and faults that real sheets
                have. It stands beside your own studies and can be removed again in one click.
              </p>
              <DemoButton primary={first} />
            </section>
          )}
          <section className={styles.section} aria-labelledby="blank">
            <h2 id="blank">A blank sheet</h2>
            <p>
              All columns, with three rows as examples. Three are always needed: the tag, the rated power and the rated voltage.
              The workbook explains each column with its unit or words.
            </p>
            <p className={styles.downloads}>
              <a href="/api/blank-sheet/xlsx">XLSX</a>
              <a href="/api/blank-sheet/csv">CSV</a>
            </p>
          </section>
        </div>
      </div>
      {aside.length > 0 && (
        <section className={styles.section} aria-labelledby="aside">
          <h2 id="aside">Put aside</h2>
          <ArchivedList studies={aside} />
        </section>
      )}
      <footer className={styles.section}>
        <ReaderChoices />
      </footer>
    </main>
  );
}
