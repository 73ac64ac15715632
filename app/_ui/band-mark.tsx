import styles from './band-mark.module.css';

const WORDS = { within: 'within', near: 'near', beyond: 'beyond' } as const;
/** End of the bar, in a box where the limit stands at 12. */
const REACH = { within: 7, near: 12, beyond: 17 } as const;

/** Where a value stands against its limit: a bar short of the tick, touching it, or crossing it, and the word. */
export function BandMark({ band }: { readonly band: keyof typeof WORDS | undefined }) {
  if (!band) return <span className={styles.none}>no verdict</span>;
  return (
    <span className={styles.mark} data-band={band}>
      <svg width="20" height="12" viewBox="0 0 20 12" aria-hidden="true" focusable="false">
        <line x1="1" y1="6" x2={REACH[band]} y2="6" strokeWidth="4" stroke="currentColor" />
        <line x1="13" y1="1" x2="13" y2="11" strokeWidth="1.5" stroke="var(--ink)" />
      </svg>
      {WORDS[band]}
    </span>
  );
}
