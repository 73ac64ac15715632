import Link from 'next/link';
import { FoldOnPhone } from '@/app/_ui/fold-on-phone';
import { readingDates } from '@/lib/features/fleet/reading-dates';
import { standingWords } from '@/lib/features/motor/contribution-words';
import type { MotorPage } from '@/lib/features/motor/loaders';
import { Contributions } from './contributions';
import styles from './motor.module.css';

/** What each reading and stamp contributes to what is known of the load. */
export function Evidence({ page, here }: { readonly page: MotorPage; readonly here: string }) {
  const { result } = page;
  const evidence = page.contributions.filter(({ kind }) => kind !== 'typical');
  if (evidence.length === 0) return null;
  const dates = readingDates(result.readings);
  return (
    <>
      <h3>What each reading and stamp contributes</h3>
      <p>{standingWords(evidence, dates)}</p>
      <FoldOnPhone what={`All ${evidence.length} readings and stamps`} nothing={evidence.length < 2}>
        <p data-folds className={styles.soft}>
          {(result.losses_by_cause?.drive ?? result.losses_by_cause?.harmonics) !== undefined &&
            'Input power stands here less what the waveform of the supply adds to the losses. '}
          The heaviest in the load’s doubt come first. A miss beyond 2 deserves a look, beyond 3 the value or an assumption is
          wrong. What is taken for typical stands, with its source, behind{' '}
          <Link href={`${here}/why?figure=load_fraction#machine`} prefetch={false}>
            how the load is known
          </Link>
          .
        </p>
        <div data-folds>
          <Contributions label="Table of what each reading and stamp contributes" rows={evidence} dates={dates} />
        </div>
      </FoldOnPhone>
    </>
  );
}
