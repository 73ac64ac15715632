'use client';

import Link from 'next/link';
import { useRouter } from 'next/navigation';
import sheet from '@/app/_ui/sheet-page.module.css';
import type { EvaluationProgress } from '@/lib/features/evaluation/schema';
import { EvaluationStatus } from './evaluation-status';

interface Props {
  readonly study: string;
  readonly title: string;
  /** What the screen will show, in a sentence for somebody who has never seen it. */
  readonly shows: string;
  /** Read before the page looked for figures: what is done meanwhile is then noticed. */
  readonly progress: EvaluationProgress;
}

/** In place of a screen that lives by the results, as long as there are none: how the evaluation stands; the screen comes by itself when it is done. */
export function NoFigures({ study, title, shows, progress }: Props) {
  const router = useRouter();
  if (progress.empty) {
    return (
      <main id="main" className={sheet.main}>
        <h1>{title}</h1>
        <p>{shows}</p>
        <p>
          This study has no motors yet. <Link href={`/${study}/import`}>Import a sheet</Link> to begin.
        </p>
      </main>
    );
  }
  return (
    <main id="main" className={sheet.main}>
      <h1>{title}</h1>
      <p>{shows}</p>
      {progress.active === undefined && <p>The fleet has not been evaluated yet.</p>}
      <EvaluationStatus study={study} initial={progress} onNewFigures={router.refresh} />
      <p>
        <Link href={`/${study}/fleet`}>See the fleet</Link>, or <Link href={`/${study}/import`}>import a sheet</Link>.
      </p>
    </main>
  );
}
