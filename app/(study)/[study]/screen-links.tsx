'use client';

import Link from 'next/link';
import { usePathname } from 'next/navigation';
import styles from './layout.module.css';
import { SCREENS } from './screens';

/** The ways to the screens of a study; the one that is open is marked. */
export function ScreenLinks({ study }: { readonly study: string }) {
  const open = usePathname().split('/')[2];
  return (
    <nav aria-label="Screens">
      <ul className={styles.screens}>
        {SCREENS.map(({ segment, label }) => (
          <li key={segment}>
            <Link href={`/${study}/${segment}`} {...(segment === open ? { 'aria-current': 'page' } : {})}>
              {label}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
