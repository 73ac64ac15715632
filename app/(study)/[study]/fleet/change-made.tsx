'use client';

import { useRouter } from 'next/navigation';
import { useTransition } from 'react';
import { undoChange } from '@/lib/features/bulk-edit/actions';
import type { BulkDone } from '@/lib/features/bulk-edit/schema';
import styles from './fleet.module.css';
import type { Listing } from './use-listing';

/** A change of many motors with the name of who made it. */
export interface Change extends BulkDone {
  readonly who: string;
}

interface Props {
  readonly listing: Listing;
  readonly change: Change;
  /** Called when it stays or has been taken back; in the latter case with how that went, in words. */
  readonly onSettled: (said?: string) => void;
}

/** Says what has just been changed, with the way to take it back. */
export function ChangeMade({ listing, change, onSettled }: Props) {
  const router = useRouter();
  const [waiting, startTransition] = useTransition();
  const undo = (): void =>
    startTransition(async () => {
      const back = await undoChange({ studyId: listing.study, batch: change.batch, who: change.who });
      onSettled(back.ok ? back.value.sentence : `${back.problem.text} ${back.problem.remedy}`);
      listing.reload();
      router.refresh();
    });
  return (
    <div className={styles.done} role="status">
      {change.sentence}
      <button type="button" disabled={waiting} onClick={undo}>
        Undo
      </button>
      <button type="button" onClick={() => onSettled()}>
        Keep
      </button>
    </div>
  );
}
