import Link from 'next/link';
import { ABSENT, type FigureOptions, formatFigure, type ShownFigure } from '@/lib/platform/format';
import styles from './figure.module.css';

interface Props extends FigureOptions {
  readonly figure: ShownFigure | undefined;
  /** Where the value comes from, as one word; shown on hover and in print. */
  readonly origin?: string | undefined;
  /** Address of "how do we know?"; the figure is then underlined with dots and can be opened. */
  readonly why?: string | undefined;
  /** What the figure is, for those who cannot see where it stands. */
  readonly name: string;
  /** Why there is none. */
  readonly reason?: string | undefined;
  /** Units stand in the head of a table's column, not in its cells. */
  readonly unitInHead?: boolean | undefined;
  /** Words in place of a figure that would promise too much: short to be seen, long to be read; the derivation still gives it. */
  readonly instead?: { readonly short: string; readonly long: string } | undefined;
}

/** Every number of the program: value, 95 % interval in soft ink, unit, origin, and the way to its derivation. */
export function FigureText({ figure, origin, why, name, reason, unitInHead = false, instead, ...options }: Props) {
  if (!figure) {
    return (
      <span className={styles.absent} title={reason}>
        <span aria-hidden="true">{ABSENT}</span>
        <span className="unseen">{reason ?? 'not known'}</span>
      </span>
    );
  }
  const text = formatFigure(figure, options);
  const shown = instead ? (
    <>
      <span aria-hidden="true">{instead.short}</span>
      <span className="unseen">{instead.long}</span>
    </>
  ) : (
    <>
      <span className={styles.value}>{text.value}</span>
      {text.plusMinus !== undefined && <span className={styles.interval}> ± {text.plusMinus}</span>}
      {text.plusMinus === undefined && text.low !== undefined && (
        <span className={styles.interval}>
          {' '}
          ({text.low} to {text.high})
        </span>
      )}
      {!unitInHead && text.unit !== '' && <span className={styles.unit}>{`\u202f${text.unit}`}</span>}
      {origin !== undefined && <span className={styles.origin}>{origin}</span>}
    </>
  );
  if (why === undefined) {
    return (
      <span className={styles.figure} title={instead?.long ?? origin}>
        {shown}
      </span>
    );
  }
  return (
    <Link
      className={`${styles.figure} ${styles.opens}`}
      href={why}
      title={instead ? `${instead.long}: how do we know ${name}?` : `How do we know ${name}?`}
      prefetch={false}
    >
      {shown}
      <span className="unseen">, {name}: how do we know?</span>
    </Link>
  );
}
