import type { TrustLevel } from '@/lib/engine/client';
import styles from './trust-mark.module.css';

/** Levels of trust as people read them. */
export const TRUST_WORDS: Readonly<Record<TrustLevel, string>> = {
  sound: 'sound',
  provisional: 'provisional',
  'not-usable': 'not usable',
};

/** Whether figures may be used: a filled, a half-filled or a struck-through open circle, and the word. */
export function TrustMark({
  level,
  absent = 'not yet judged',
}: {
  readonly level: TrustLevel | undefined;
  readonly absent?: string;
}) {
  if (level === undefined) return <span className={styles.none}>{absent}</span>;
  return (
    <span className={styles.mark} data-trust={level}>
      <svg width="12" height="12" viewBox="0 0 12 12" aria-hidden="true" focusable="false">
        <circle
          cx="6"
          cy="6"
          r="4.25"
          fill={level === 'sound' ? 'currentColor' : 'none'}
          stroke="currentColor"
          strokeWidth="1.5"
        />
        {level === 'provisional' && <path d="M6 1.75 A4.25 4.25 0 0 0 6 10.25 Z" fill="currentColor" />}
        {level === 'not-usable' && <line x1="1.5" y1="10.5" x2="10.5" y2="1.5" stroke="currentColor" strokeWidth="1.5" />}
      </svg>
      {TRUST_WORDS[level]}
    </span>
  );
}
