import styles from './trust-mark.module.css';

const WORDS = { sound: 'sound', provisional: 'provisional', 'not-usable': 'not usable' } as const;

/** How far figures may be trusted: a filled circle, a half one, or an open one struck through, and the word. */
export function TrustMark({ level }: { readonly level: keyof typeof WORDS }) {
  return (
    <span className={styles.mark}>
      <svg width="14" height="14" viewBox="0 0 14 14" aria-hidden="true" focusable="false">
        <circle cx="7" cy="7" r="5" fill={level === 'sound' ? 'currentColor' : 'none'} stroke="currentColor" strokeWidth="1.5" />
        {level === 'provisional' && <path d="M7,2 A5,5 0 0 0 7,12 Z" fill="currentColor" />}
        {level === 'not-usable' && <line x1="1" y1="13" x2="13" y2="1" stroke="currentColor" strokeWidth="1.5" />}
      </svg>
      {WORDS[level]}
    </span>
  );
}
