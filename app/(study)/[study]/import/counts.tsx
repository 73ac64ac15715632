import { formatCount } from '@/lib/platform/format';
import styles from './import.module.css';

interface Props {
  readonly counts: readonly (readonly [name: string, count: number])[];
}

/** What an import brings or brought, counted by kind. */
export function Counts({ counts }: Props) {
  return (
    <dl className={styles.counts}>
      {counts.map(([name, count]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{formatCount(count)}</dd>
        </div>
      ))}
    </dl>
  );
}
