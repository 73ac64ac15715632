import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { ProblemNote } from '@/app/_ui/problem-note';
import sheet from '@/app/_ui/sheet-page.module.css';
import { eventWords, loadVersion } from '@/lib/features/sign-off/loaders';
import { formatInstant } from '@/lib/platform/format';
import { STANDING_WORDS } from '../../standing-words';
import { PrintedHash } from '../printed-hash';
import { ReportBody } from './report-body';

interface Props {
  readonly params: Promise<{ study: string; version: string }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Report of version ${(await params).version}` };
}

/** The report of a frozen programme, to be printed: for a utility, or for those who decide about the money. */
export default async function ReportScreen({ params }: Props) {
  const { study, version: asked } = await params;
  const version = await loadVersion(study, Number(asked));
  if (!version) notFound();
  const back = (
    <p className={`${sheet.soft} screen-only`}>
      <Link href={`/${study}/review/${version.number}`}>Version {version.number}</Link>
    </p>
  );
  if (!version.sound) {
    return (
      <main id="main" className={sheet.main}>
        {back}
        <h1>Report of version {version.number}</h1>
        <ProblemNote
          problem={{ text: version.damage, remedy: 'Do not rely on it: restore a backup, or freeze a new version.' }}
        />
      </main>
    );
  }
  return (
    <main id="main" className={sheet.main} data-print="wide">
      {back}
      <ReportBody
        drawn={version.content}
        standing={
          <>
            <p>
              Version {version.number}, frozen on {formatInstant(version.createdAt)} UTC by {version.drawnBy} (name not verified),
              as of {version.content.settings.as_of}; it is {STANDING_WORDS[version.standing]}. The stored bytes were checked
              against their hash for this page.
            </p>
            <PrintedHash hash={version.hash} />
          </>
        }
        said={
          <section className={sheet.section} aria-labelledby="said">
            <h2 id="said">Who stands by it</h2>
            {version.events.length === 0 ? (
              <p>Nobody has signed or returned it yet.</p>
            ) : (
              <ol>
                {version.events.map((event) => (
                  <li key={event.hash}>{eventWords(event)}</li>
                ))}
              </ol>
            )}
          </section>
        }
      />
    </main>
  );
}
