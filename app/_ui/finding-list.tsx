import type { Finding } from '@/lib/engine';
import { unparted } from '@/lib/platform/format';
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
  // One slip of many readings is said for each, and its remedy once.
  const alike = new Map<string, Finding[]>();
  for (const finding of shown) {
    const key = `${finding.severity} ${finding.cause} ${finding.next}`;
    alike.set(key, [...(alike.get(key) ?? []), finding]);
  }
  return (
    <ul className={styles.list}>
      {[...alike].map(([key, [first, ...others]]) => first && <Alike key={key} first={first} others={others} />)}
    </ul>
  );
}

function Alike({ first, others }: { readonly first: Finding; readonly others: readonly Finding[] }) {
  return (
    <li className={styles.finding} data-severity={first.severity}>
      <p className={styles.text}>
        <strong className={styles.severity}>{SEVERITY[first.severity]}</strong> {unparted(first.text)}
      </p>
      {others.map(({ code, text }) => (
        <p key={`${code} ${text}`} className={styles.text}>
          {unparted(text)}
        </p>
      ))}
      <dl className={styles.more}>
        <dt>Likely cause</dt>
        <dd>{unparted(first.cause)}</dd>
        <dt>What to do</dt>
        <dd>{unparted(first.next)}</dd>
      </dl>
    </li>
  );
}
