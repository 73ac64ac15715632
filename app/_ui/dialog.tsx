'use client';

import { type ReactNode, useEffect, useId, useRef } from 'react';
import styles from './dialog.module.css';

interface Props {
  readonly title: string;
  readonly open: boolean;
  readonly onClose: () => void;
  readonly children: ReactNode;
  /** Stands at the right edge at full height instead of in the middle. */
  readonly side?: boolean;
}

/** A window above the page: Esc and the button close it, and focus goes back to where it was. */
export function Dialog({ title, open, onClose, children, side = false }: Props) {
  const ref = useRef<HTMLDialogElement>(null);
  const id = useId();
  useEffect(() => {
    const dialog = ref.current;
    if (dialog === null) return;
    if (open && !dialog.open) dialog.showModal();
    if (!open && dialog.open) dialog.close();
  }, [open]);
  return (
    <dialog ref={ref} className={styles.dialog} data-side={side} aria-labelledby={id} onClose={onClose}>
      {open && (
        <>
          <header className={styles.head}>
            <h2 id={id}>{title}</h2>
            <button type="button" onClick={onClose}>
              Close
            </button>
          </header>
          <div className={styles.body}>{children}</div>
        </>
      )}
    </dialog>
  );
}
