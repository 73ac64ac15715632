import Link from 'next/link';
import { oddsWords, SUSPICION_TITLES } from '@/lib/features/condition/words';
import type { RiskParts, WorkItem } from '@/lib/features/worklist/schema';
import { formatMoney, formatNumber } from '@/lib/platform/format';
import styles from './worklist.module.css';

interface Props {
  readonly items: readonly WorkItem[];
  readonly study: string;
  readonly currency: string;
  readonly label: string;
  readonly nameOf: (motor: WorkItem) => string;
}

/** Motors that need a person, each with the likeliest suspicion, why it stands here, and what to do. */
export function WorkItems({ items, study, currency, label, nameOf }: Props) {
  return (
    <ol className={styles.list} aria-label={label}>
      {items.map((item) => (
        <li key={`${item.site} ${item.tag}`} className={styles.item}>
          <p className={styles.motor}>
            {item.motorId === undefined ? (
              <strong>{nameOf(item)}</strong>
            ) : (
              <Link href={`/${study}/motor/${item.motorId}#condition`} prefetch={false}>
                <strong>{nameOf(item)}</strong>
              </Link>
            )}{' '}
            <span className={styles.soft}>{item.area}</span>
            {item.mustDo && <strong className={styles.must}>must do</strong>}
          </p>
          <p className={styles.suspicion}>
            {item.leading
              ? `${SUSPICION_TITLES[item.leading.id]}: ${oddsWords(item.leading.odds)}, ${item.leading.strength}`
              : item.failed
                ? 'Failed'
                : 'No suspicion'}
            <span className={styles.risk}>
              {item.risk === undefined
                ? 'no cost known'
                : `risk about ${formatMoney(Number(item.risk.toPrecision(2)), currency)}`}
              {item.riskParts && <span className={styles.parts}>{partsWords(item.riskParts)}</span>}
            </span>
          </p>
          <div className={styles.words}>
            <p>{item.why}</p>
            {item.apart.length > 0 && <p>{item.apart.join('; ')}.</p>}
            <p>
              <span className={styles.soft}>{item.outage ? 'Needs a stop:' : 'While it runs:'}</span> {item.next}
            </p>
          </div>
        </li>
      ))}
    </ol>
  );
}

/** `38 % × 12,000 × 0.5 (near and getting worse)`. */
function partsWords({ chance, consequence, urgency, because }: RiskParts): string {
  const percent = chance < 0.01 ? formatNumber(100 * chance, 1) : formatNumber(100 * chance, 0);
  return `${percent}\u202f% × ${formatNumber(consequence, 0)} × ${formatNumber(urgency, 1)} (${because})`;
}
