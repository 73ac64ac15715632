import type { Finding } from '@/lib/engine';
import styles from './finding-list.module.css';

const SEVERITY = { note: 'note', warning: 'caution', disqualifies: 'may not be used' } as const;
const ORDER = { disqualifies: 0, warning: 1, note: 2 } as const;

/** Findings, the weightiest first: what was found, why it is likely so, and what to do. */
export function FindingList({ findings, empty }: { readonly findings: readonly Finding[]; readonly empty: string }) {
  if (findings.length === 0) return <p className={styles.empty}>{empty}</p>;
  const seen = new Set<string>();
  const shown = [...findings]
    .sort((a, b) => ORDER[a.severity] - ORDER[b.severity])
    .filter((finding) => {
      const key = `${finding.code} ${finding.text}`;
      if (seen.has(key)) return false;
      seen.add(key);
      return true;
    });
  return (
    <ul className={styles.list}>
      {shown.map((finding) => (
        <li key={`${finding.code} ${finding.text}`} className={styles.finding} data-severity={finding.severity}>
          <p className={styles.text}>
            <strong className={styles.severity}>{SEVERITY[finding.severity]}</strong> {finding.text}
          </p>
          <dl className={styles.more}>
            <dt>Likely cause</dt>
            <dd>{finding.cause}</dd>
            <dt>What to do</dt>
            <dd>{finding.next}</dd>
          </dl>
        </li>
      ))}
    </ul>
  );
}
