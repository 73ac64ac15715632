'use client';

import { useEffect } from 'react';
import styles from './version.module.css';

/** The hash of a version; in the margin at the foot of each sheet of paper, where no text can run into it. */
export function PrintedHash({ hash }: { readonly hash: string }) {
  useEffect(() => {
    // A page's margin takes its words from a style sheet alone; one made by a script needs no leave for inline styles.
    const foot = `@bottom-left { content: "Hash ${hash}"; font: 7pt monospace; white-space: nowrap; }`;
    const margin = new CSSStyleSheet();
    margin.replaceSync(`@media print { @page { ${foot} } @page wide { ${foot} } }`);
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, margin];
    return () => {
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((sheet) => sheet !== margin);
    };
  }, [hash]);
  return (
    <p className={styles.hash}>
      Hash <code>{hash}</code>
    </p>
  );
}
