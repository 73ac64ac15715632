'use client';

import { type ReactNode, useId, useState } from 'react';
import styles from './fold-on-phone.module.css';

interface Props {
  /** What the key opens, as short words: "10 within their limits". */
  readonly what: string;
  /** Nothing is worth folding. */
  readonly nothing?: boolean;
  /** Something inside must be seen, such as a field that was refused. */
  readonly wanted?: boolean;
  readonly children: ReactNode;
}

/**
 * Evidence that a phone shows when it is asked for; a wide screen and paper always have it. Folded is what carries `data-folds`, so that of
 * one table some rows may stay.
 */
export function FoldOnPhone({ what, nothing = false, wanted = false, children }: Props) {
  const [pressed, setOpen] = useState(false);
  const open = pressed || wanted;
  const id = useId();
  if (nothing) return children;
  return (
    <>
      <button type="button" className={styles.key} aria-expanded={open} aria-controls={id} onClick={() => setOpen(!pressed)}>
        {what}
      </button>
      <div id={id} className={open ? undefined : styles.folded}>
        {children}
      </div>
    </>
  );
}
