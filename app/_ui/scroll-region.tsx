import type { ReactNode } from 'react';
import styles from './scroll-region.module.css';

/** A wide table's place: it scrolls inside itself, never the page, and the keyboard reaches it. */
export function ScrollRegion({ label, children }: { readonly label: string; readonly children: ReactNode }) {
  return (
    <section className={styles.scroll} aria-label={label} tabIndex={0}>
      {children}
    </section>
  );
}
