import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import type { ReactNode } from 'react';
import { ReaderChoices } from '@/app/_ui/reader-choices';
import { currentStudy } from '@/lib/features/study/loaders';
import styles from './layout.module.css';
import { ScreenLinks } from './screen-links';

interface Props {
  readonly children: ReactNode;
  readonly params: Promise<{ study: string }>;
}

/** A window names its screen, then the study: several may be open beside one another. */
export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const name = (await currentStudy((await params).study))?.name ?? 'No such study';
  return { title: { default: name, template: `%s · ${name} · Lossbook` } };
}

/** A study's pages: the margin names what one is looking at and leads to the screens; the page itself brings `main`. */
export default async function StudyLayout({ children, params }: Props) {
  const { study: id } = await params;
  const study = await currentStudy(id);
  if (study === undefined) notFound();
  return (
    <div className={styles.page}>
      <header className={styles.margin}>
        <p className={styles.home}>
          <Link href="/" prefetch={false}>
            Lossbook
          </Link>
        </p>
        <p className={styles.study}>{study.name}</p>
        <p className={styles.facts}>
          {study.demo && <span className={styles.invented}>invented figures</span>}
          <span>as of {study.settings.asOf}</span>
          <span>money in {study.settings.currency}</span>
          {study.archivedAt !== undefined && <span>archived</span>}
        </p>
        <ScreenLinks study={id} />
        <div className={styles.theme}>
          <ReaderChoices />
        </div>
      </header>
      {children}
      <footer className={styles.below}>
        <ReaderChoices />
      </footer>
    </div>
  );
}
