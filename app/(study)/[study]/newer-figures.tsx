'use client';

import { useRouter } from 'next/navigation';
import type { EvaluationProgress } from '@/lib/features/evaluation/schema';
import { EvaluationStatus } from './evaluation-status';

/** Above figures that are no longer those of what the study holds: how the evaluation stands. They change by themselves when it is done. */
export function NewerFigures({ study, progress }: { readonly study: string; readonly progress: EvaluationProgress }) {
  const router = useRouter();
  if (progress.active === undefined && progress.stopped === undefined) return null;
  return <EvaluationStatus study={study} initial={progress} onNewFigures={router.refresh} />;
}
