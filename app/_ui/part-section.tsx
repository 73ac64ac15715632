import type { ReactNode } from 'react';
import { formatCount } from '@/lib/platform/format';
import sheet from './sheet-page.module.css';

interface Props {
  readonly title: string;
  /** How many of the section stand on this page, and of all pages. */
  readonly here: number;
  readonly all: number;
  /** Whether the section shows its title and counts. */
  readonly headed?: boolean;
  readonly children: ReactNode;
}

/** A section of a list whose pages may part it. */
export function PartSection({ title, here, all, headed = true, children }: Props) {
  return (
    <section className={sheet.section} aria-label={title}>
      {headed && (
        <h2>
          {title} ({here < all && `${formatCount(here)} of `}
          {formatCount(all)})
        </h2>
      )}
      {children}
    </section>
  );
}
