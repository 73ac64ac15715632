import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { PageFoot } from '@/app/_ui/page-foot';
import { ProblemNote } from '@/app/_ui/problem-note';
import sheet from '@/app/_ui/sheet-page.module.css';
import { loadDraft } from '@/lib/features/sign-off/loaders';
import { formatInstant } from '@/lib/platform/format';
import { ReportBody } from '../../review/[version]/report/report-body';

export const metadata: Metadata = { title: 'Draft of the report' };

interface Props {
  readonly params: Promise<{ study: string }>;
}

/** The report of the plan as it stands, before anybody has frozen it: marked as a draft on each sheet, without a hash. */
export default async function DraftScreen({ params }: Props) {
  const { study } = await params;
  const draft = await loadDraft(study);
  if (!draft) notFound();
  const back = (
    <p className={`${sheet.soft} screen-only`}>
      <Link href={`/${study}/plan`}>Plan</Link>
    </p>
  );
  if (draft === 'stale') {
    return (
      <main id="main" className={sheet.main}>
        {back}
        <h1>Draft of the report</h1>
        <ProblemNote
          problem={{
            text: 'The plan is not worked out as the study stands now.',
            remedy: 'Work it out on the plan screen, then open the draft again.',
          }}
        />
        <p>
          <Link href={`/${study}/plan`}>Go to the plan</Link>
        </p>
      </main>
    );
  }
  const { plannedAt, settings } = draft;
  return (
    <main id="main" className={sheet.main} data-print="wide">
      {back}
      <p className={sheet.caution}>
        <strong>Draft, not frozen.</strong> It can change at any time, and nobody can sign it.
      </p>
      <PageFoot head="DRAFT, not frozen" foot={`Draft of the plan worked out on ${formatInstant(plannedAt)} UTC; no hash`} />
      <ReportBody
        drawn={draft}
        standing={
          <p>
            The plan as it was worked out on {formatInstant(plannedAt)} UTC, as of {settings.as_of}.{' '}
            <Link href={`/${study}/review`} prefetch={false} className="screen-only">
              Freeze it for review
            </Link>
          </p>
        }
        said={
          <section className={sheet.section} aria-labelledby="said">
            <h2 id="said">Who stands by it</h2>
            <p>Nobody: this is a draft. It is frozen before it is signed.</p>
          </section>
        }
      />
    </main>
  );
}
