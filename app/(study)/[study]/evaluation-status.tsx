'use client';

import { useEffect, useRef, useState, useTransition } from 'react';
import { focusHeir, keepFocus } from '@/app/_ui/focus-heir';
import { useAskedAgain } from '@/app/_ui/use-asked-again';
import { startEvaluation, stopEvaluation } from '@/lib/features/evaluation/actions';
import { type EvaluationProgress, evaluationProgress } from '@/lib/features/evaluation/schema';
import { formatCount } from '@/lib/platform/format';
import styles from './evaluation-status.module.css';

interface Props {
  readonly study: string;
  readonly initial: EvaluationProgress;
  /** Called when another run's figures are there to be shown. */
  readonly onNewFigures: () => void;
}

const ASK_AGAIN_MS = 700;

/** How the evaluation stands: progress that can be stopped, or why there are no newer figures; nothing when all is done. */
export function EvaluationStatus({ study, initial, onNewFigures }: Props) {
  const [progress, setProgress] = useState(initial);
  const [problem, setProblem] = useState<string>();
  const [waiting, startTransition] = useTransition();
  const shownRun = useRef(initial.shown?.id);
  const { active, stopped } = progress;

  const address = `/api/studies/${encodeURIComponent(study)}/evaluation`;
  useAskedAgain(active !== undefined, { address, schema: evaluationProgress, everyMs: ASK_AGAIN_MS }, setProgress);

  const run = progress.shown?.id;
  useEffect(() => {
    if (run === shownRun.current) return;
    shownRun.current = run;
    onNewFigures();
  }, [run, onNewFigures]);

  const act = (button: HTMLElement, action: typeof startEvaluation): void => {
    keepFocus(button);
    startTransition(async () => {
      const done = await action({ studyId: study });
      setProblem(done.ok ? undefined : `${done.problem.text} ${done.problem.remedy}`);
      if (done.ok) setProgress(done.value);
    });
  };

  if (active) {
    const known = active.state === 'running' && active.total > 0;
    return (
      <div ref={focusHeir} tabIndex={-1} className={styles.status}>
        <p role="status" className={styles.text}>
          {active.stopping ? 'Stopping the evaluation.' : 'Evaluating.'}{' '}
          {progress.shown
            ? 'The figures are those of the last evaluation until it is done.'
            : 'The figures come when it is done.'}
        </p>
        <progress
          className={styles.bar}
          aria-label="Motors evaluated"
          {...(known ? { max: active.total, value: active.done } : {})}
        />
        {known && (
          <span className="number">
            {formatCount(active.done)} of {formatCount(active.total)} motors
          </span>
        )}
        <button
          type="button"
          disabled={waiting || active.stopping}
          onClick={({ currentTarget }) => act(currentTarget, stopEvaluation)}
        >
          Stop
        </button>
      </div>
    );
  }
  // That there are no motors, and how they come in, each screen says by itself.
  if (progress.empty) return null;
  if (stopped || problem !== undefined || progress.shown === undefined) {
    return (
      <div ref={focusHeir} tabIndex={-1} className={styles.status}>
        <p role="status" className={styles.text}>
          {problem ??
            (stopped === undefined
              ? 'These motors have not been evaluated.'
              : (stopped.problem ?? 'The evaluation was stopped.'))}{' '}
          {progress.shown && 'The figures are those of the evaluation before.'}
        </p>
        <button type="button" disabled={waiting} onClick={({ currentTarget }) => act(currentTarget, startEvaluation)}>
          Evaluate now
        </button>
      </div>
    );
  }
  return (
    <p role="status" className="unseen">
      Evaluated.
    </p>
  );
}
