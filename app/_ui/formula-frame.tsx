'use client';

import { type ReactNode, useEffect, useRef, useState } from 'react';
import styles from './derivation-view.module.css';

/** A formula's place: it scrolls inside itself where it is too wide, and only then the keyboard stops at it. */
export function FormulaFrame({ children }: { readonly children: ReactNode }) {
  const frame = useRef<HTMLDivElement>(null);
  const [wide, setWide] = useState(false);
  useEffect(() => {
    const element = frame.current;
    if (!element) return;
    const watch = new ResizeObserver(() => setWide(element.scrollWidth > element.clientWidth));
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  return (
    <div
      ref={frame}
      className={styles.formula}
      {...(wide ? { tabIndex: 0, role: 'group', 'aria-label': 'Formula, wider than the page' } : {})}
    >
      {children}
    </div>
  );
}
