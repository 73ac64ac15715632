import type { ReactNode } from 'react';
import styles from './scroll-region.module.css';

interface Props {
  readonly label: string;
  readonly children: ReactNode;
  /** What else holds of the place, such as a width from which nothing need scroll. */
  readonly className?: string | undefined;
}

/** A wide table's place: it scrolls inside itself, never the page, and the keyboard reaches it. */
export function ScrollRegion({ label, children, className = '' }: Props) {
  return (
    <section className={`${styles.scroll} ${className}`} aria-label={label} tabIndex={0}>
      {children}
    </section>
  );
}
