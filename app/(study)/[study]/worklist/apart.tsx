import Link from 'next/link';
import sheet from '@/app/_ui/sheet-page.module.css';
import type { ApartItem } from '@/lib/features/worklist/schema';
import { formatCount } from '@/lib/platform/format';
import styles from './worklist.module.css';

interface Props {
  readonly items: readonly ApartItem[];
  /** Motors that are shown at most. */
  readonly most: number;
  readonly study: string;
  readonly nameOf: (motor: ApartItem) => string;
}

/** Motors within their limits that stand apart from like motors on the bad side: a place to look, no more. */
export function Apart({ items, most, study, nameOf }: Props) {
  if (items.length === 0) return null;
  return (
    <section className={sheet.section} aria-labelledby="apart">
      <h2 id="apart">Within limits, but unlike their sisters ({formatCount(items.length)})</h2>
      <p className={sheet.soft}>
        These are worse than motors of the same type at the site, or of the same area and duty. That is no fault, and moves no
        verdict: read again, and look for what is different about them.
        {items.length > most &&
          ` Here are the first ${formatCount(most)}; all on one page holds the others, and so does an area.`}
      </p>
      <ul className={styles.list} aria-label="Motors unlike their sisters">
        {items.slice(0, most).map((item) => (
          <li key={item.motorId} className={styles.apart}>
            <p className={styles.motor}>
              <Link href={`/${study}/motor/${item.motorId}#condition`} prefetch={false}>
                <strong>{nameOf(item)}</strong>
              </Link>{' '}
              <span className={styles.soft}>{item.area}</span>
            </p>
            <div className={styles.words}>
              {item.apart.map((words) => (
                <p key={words}>{words}</p>
              ))}
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}
