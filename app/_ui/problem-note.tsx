import type { Problem } from '@/lib/platform/errors';
import styles from './problem-note.module.css';

/** What went wrong and what to do about it; read out when it appears. */
export function ProblemNote({ problem }: { readonly problem: Pick<Problem, 'text' | 'remedy'> | undefined }) {
  return (
    <div role="alert" className={problem === undefined ? undefined : styles.problem}>
      {problem !== undefined && (
        <>
          <p className={styles.text}>{problem.text}</p>
          <p>{problem.remedy}</p>
        </>
      )}
    </div>
  );
}
