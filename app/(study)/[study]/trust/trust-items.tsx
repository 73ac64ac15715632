import Link from 'next/link';
import { TrustMark } from '@/app/_ui/trust-mark';
import type { Doubt, TrustItem } from '@/lib/features/trust/schema';
import { LOAD_WORDS, WANTED_WORDS } from '@/lib/features/trust/words';
import { unparted } from '@/lib/platform/format';
import styles from './trust.module.css';

interface Props {
  readonly items: readonly TrustItem[];
  readonly study: string;
  readonly label: string;
  readonly nameOf: (motor: TrustItem) => string;
}

/** Motors of one area: what may not be used of each, what to measure again and at which load, and what is settled at the desk. */
export function TrustItems({ items, study, label, nameOf }: Props) {
  return (
    <ul className={styles.list} aria-label={label}>
      {items.map((item) => (
        <li key={`${item.site} ${item.tag}`} className={styles.item}>
          <p className={styles.motor}>
            {item.motorId !== undefined && (
              <label className={`${styles.pick} screen-only`}>
                <input type="checkbox" name="m" value={item.motorId} defaultChecked={item.level === 'not-usable'} />
                <span className="unseen">{nameOf(item)} on the round sheet</span>
              </label>
            )}
            {item.motorId === undefined ? (
              <strong>{nameOf(item)}</strong>
            ) : (
              <Link href={`/${study}/motor/${item.motorId}#trust`} prefetch={false}>
                <strong>{nameOf(item)}</strong>
              </Link>
            )}{' '}
            <span className={styles.soft}>{item.description}</span>
            <TrustMark level={item.level} />
          </p>
          <ul className={styles.doubts}>
            {item.doubts.map((doubt) => (
              <li key={doubt.text}>
                {unparted(doubt.text)} <span className={styles.soft}>{todo(doubt)}</span>
              </li>
            ))}
          </ul>
        </li>
      ))}
    </ul>
  );
}

function todo({ readings, load, desk }: Doubt): string {
  if (desk !== undefined) return `At the desk: ${desk}`;
  const list = readings.map((each) => WANTED_WORDS[each]);
  const last = list.at(-1) ?? '';
  const words = list.length < 2 ? last : `${list.slice(0, -1).join(', ')} and ${last}`;
  return load === 'any' ? `Read again: ${words}.` : `Measure again: ${words}, ${LOAD_WORDS[load]}.`;
}
