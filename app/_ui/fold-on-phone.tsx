'use client';

import { type ReactNode, useId, useState } from 'react';
import styles from './fold-on-phone.module.css';

interface Props {
  /** What the key opens, as short words: "10 within their limits". */
  readonly what: string;
  /** Nothing is worth folding. */
  readonly nothing?: boolean;
  readonly children: ReactNode;
}

/**
 * Evidence that a phone shows when it is asked for; a wide screen and paper always have it. Folded is what carries `data-folds`, so that of
 * one table some rows may stay.
 */
export function FoldOnPhone({ what, nothing = false, children }: Props) {
  const [open, setOpen] = useState(false);
  const id = useId();
  if (nothing) return children;
  return (
    <>
      <button type="button" className={styles.key} aria-expanded={open} aria-controls={id} onClick={() => setOpen(!open)}>
        {what}
      </button>
      <div id={id} className={open ? undefined : styles.folded}>
        {children}
      </div>
    </>
  );
}
