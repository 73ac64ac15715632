import { useState, useTransition } from 'react';
import { commitChange, previewChange } from '@/lib/features/bulk-edit/actions';
import type { BulkDone, BulkField, BulkPreview } from '@/lib/features/bulk-edit/schema';

/** One fact of many motors and the value it is to have; the versions are those that the list shows. */
interface BulkOrder {
  readonly studyId: string;
  readonly motors: readonly { readonly id: string; readonly version: number }[];
  readonly field: BulkField;
  /** As typed. */
  readonly value: string;
}

/** A change of many motors on its way: first looked at, then made. */
interface BulkChange {
  /** What would change; `undefined` until the order as it is now has been looked at. */
  readonly preview: BulkPreview | undefined;
  readonly problem: string | undefined;
  readonly waiting: boolean;
  readonly look: (order: BulkOrder) => void;
  readonly commit: (order: BulkOrder & { readonly who: string; readonly why: string }, onDone: (done: BulkDone) => void) => void;
  /** Another order is being typed: what was seen of the one before no longer holds. */
  readonly reset: () => void;
}

/** Looks at a change of many motors and makes it; what is refused is said in words. */
export function useBulkChange(): BulkChange {
  const [preview, setPreview] = useState<BulkPreview>();
  const [problem, setProblem] = useState<string>();
  const [waiting, startTransition] = useTransition();
  return {
    preview,
    problem,
    waiting,
    look: (order) =>
      startTransition(async () => {
        const done = await previewChange(order);
        setPreview(done.ok ? done.value : undefined);
        setProblem(done.ok ? undefined : `${done.problem.text} ${done.problem.remedy}`);
      }),
    commit: (order, onDone) =>
      startTransition(async () => {
        const done = await commitChange(order);
        setProblem(done.ok ? undefined : `${done.problem.text} ${done.problem.remedy}`);
        if (!done.ok) return;
        setPreview(undefined);
        onDone(done.value);
      }),
    reset: () => {
      setPreview(undefined);
      setProblem(undefined);
    },
  };
}
