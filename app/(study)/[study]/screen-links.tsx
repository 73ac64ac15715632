'use client';

import Link from 'next/link';
import { usePathname } from 'next/navigation';
import { type FocusEvent, useEffect, useRef } from 'react';
import styles from './layout.module.css';
import { SCREENS } from './screens';

/** A link that is half cut off would stay so when it is focused. */
function showWhole({ target }: FocusEvent<HTMLElement>): void {
  target.scrollIntoView({ block: 'nearest', inline: 'nearest' });
}

/**
 * The ways to the screens of a study; the one that is open is marked. Nothing is fetched beforehand: the style sheets of screens that are
 * not opened would lie idle, and browsers complain of that in their console.
 */
export function ScreenLinks({ study }: { readonly study: string }) {
  const open = usePathname().split('/')[2];
  const list = useRef<HTMLUListElement>(null);
  // Where the links are one line, the open screen's stands in sight.
  useEffect(() => {
    const link = list.current?.querySelector<HTMLElement>('[aria-current]');
    if (open === undefined || !link || !list.current) return;
    list.current.scrollLeft = link.offsetLeft - (list.current.clientWidth - link.offsetWidth) / 2;
  }, [open]);
  return (
    <nav aria-label="Screens">
      <ul ref={list} className={styles.screens} onFocus={showWhole}>
        {SCREENS.map(({ segment, label }) => (
          <li key={segment}>
            <Link href={`/${study}/${segment}`} prefetch={false} {...(segment === open ? { 'aria-current': 'page' } : {})}>
              {label}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
