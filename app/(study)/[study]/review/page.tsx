import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { loadVersions } from '@/lib/features/sign-off/loaders';
import { currentStudy, loadWho } from '@/lib/features/study/loaders';
import { formatInstant } from '@/lib/platform/format';
import { CheckForm } from './check-form';
import { FreezeForm } from './freeze-form';
import { STANDING_WORDS } from './standing-words';

export const metadata: Metadata = { title: 'Review' };

interface Props {
  readonly params: Promise<{ study: string }>;
}

/** The frozen versions of the programme, what became of each, and the check of a copy. */
export default async function ReviewScreen({ params }: Props) {
  const { study: id } = await params;
  const study = await currentStudy(id);
  if (!study) notFound();
  const versions = await loadVersions(id);
  const who = await loadWho();
  const [latest] = versions;
  return (
    <main id="main" className={sheet.main}>
      <h1>Review</h1>
      <p className={sheet.answer}>
        {latest === undefined
          ? 'Nothing has been frozen for review yet.'
          : `Version ${latest.number} is the latest: ${STANDING_WORDS[latest.standing]}.`}
      </p>
      {versions.length > 0 && (
        <ScrollRegion label="Versions">
          <table className={sheet.table}>
            <thead>
              <tr>
                <th scope="col">Version</th>
                <th scope="col">Frozen (UTC)</th>
                <th scope="col">By</th>
                <th scope="col">Standing</th>
                <th scope="col">Hash</th>
              </tr>
            </thead>
            <tbody>
              {versions.map((version) => (
                <tr key={version.id}>
                  <th scope="row">
                    <Link href={`/${id}/review/${version.number}`} prefetch={false}>
                      Version {version.number}
                    </Link>
                  </th>
                  <td className={sheet.nowrap}>{formatInstant(version.createdAt)}</td>
                  <td>{version.drawnBy} (not verified)</td>
                  <td>{STANDING_WORDS[version.standing]}</td>
                  <td>
                    <code title={version.hash}>{version.hash.slice(0, 12)}</code>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollRegion>
      )}
      <section className={sheet.section} aria-labelledby="freeze">
        <h2 id="freeze">Freeze the programme as it stands</h2>
        <p>
          Fleet, readings, settings, prices, wishes, engine version, table editions, results and the programme by year are kept
          under one hash; what changes in the study afterwards does not touch them. The programme is{' '}
          <Link href={`/${id}/plan`} prefetch={false}>
            the plan
          </Link>{' '}
          as it was worked out last; it must be that of the study as it stands.
        </p>
        <FreezeForm study={id} who={who} />
      </section>
      <section className={sheet.section} aria-labelledby="check">
        <h2 id="check">Check a copy</h2>
        <CheckForm study={id} />
      </section>
    </main>
  );
}
