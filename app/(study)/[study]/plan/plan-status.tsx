'use client';

import { useRouter } from 'next/navigation';
import { useState, useTransition } from 'react';
import { focusHeir, keepFocus } from '@/app/_ui/focus-heir';
import { useAskedAgain } from '@/app/_ui/use-asked-again';
import { startPlanning, stopPlanning } from '@/lib/features/plan/actions';
import { type PlanProgress, type PlanStage, planProgress } from '@/lib/features/plan/schema';
import { formatCount } from '@/lib/platform/format';
import styles from '../evaluation-status.module.css';

interface Props {
  readonly study: string;
  readonly initial: PlanProgress;
  /** Why the plan that is shown is not the newest; absent when it is. */
  readonly stale?: string | undefined;
}

const ASK_AGAIN_MS = 500;

const STAGE_WORDS: Readonly<Record<PlanStage, string>> = {
  waiting: 'Waiting for the evaluation of the fleet.',
  reading: 'Reading the results.',
  solving: 'Choosing what to fund in which year.',
  keeping: 'Keeping the plan.',
};

/** How working the plan out stands: progress that can be stopped, or why the plan shown is not the newest, with the way to a new one. */
export function PlanStatus({ study, initial, stale }: Props) {
  const router = useRouter();
  // What the page brought counts until something newer is heard.
  const [heard, setHeard] = useState({ initial, progress: initial });
  const progress = heard.initial === initial ? heard.progress : initial;
  const [problem, setProblem] = useState<string>();
  const [waiting, startTransition] = useTransition();
  const { active, stopped } = progress;

  const hear = (heard: PlanProgress): void => {
    setHeard({ initial, progress: heard });
    if (heard.active === undefined) router.refresh();
  };
  const address = `/api/studies/${encodeURIComponent(study)}/plan`;
  useAskedAgain(active !== undefined, { address, schema: planProgress, everyMs: ASK_AGAIN_MS }, hear);

  const act = (button: HTMLElement, action: typeof startPlanning): void => {
    keepFocus(button);
    startTransition(async () => {
      const done = await action({ studyId: study });
      setProblem(done.ok ? undefined : `${done.problem.text} ${done.problem.remedy}`);
      if (done.ok) hear(done.value);
    });
  };

  if (active) {
    return (
      <div ref={focusHeir} tabIndex={-1} className={styles.status}>
        <p role="status" className={styles.text}>
          {STAGE_WORDS[active.stage]} {progress.shown !== undefined && 'The plan below is the one before.'}
        </p>
        <progress className={styles.bar} aria-label="Working the plan out" />
        <span className="number">{formatCount(active.seconds)} s</span>
        <button type="button" disabled={waiting} onClick={({ currentTarget }) => act(currentTarget, stopPlanning)}>
          Stop
        </button>
      </div>
    );
  }
  const why = problem ?? stopped ?? stale;
  if (why === undefined) {
    return (
      <p role="status" className="unseen">
        The plan is up to date.
      </p>
    );
  }
  return (
    <div ref={focusHeir} tabIndex={-1} className={styles.status}>
      <p role="status" className={styles.text}>
        {why} {progress.shown !== undefined && 'The plan below is the one before.'}
      </p>
      <button type="button" data-primary disabled={waiting} onClick={({ currentTarget }) => act(currentTarget, startPlanning)}>
        Work the plan out
      </button>
    </div>
  );
}
