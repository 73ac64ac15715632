import Link from 'next/link';
import { Head } from '@/app/_ui/head';
import { CELL } from '@/app/_ui/row-roles';
import { motorKey } from '@/lib/features/plan/loaders';
import { nameOf } from '@/lib/features/plan/words';
import styles from './plan.module.css';

interface Props {
  readonly study: string;
  readonly motorIds: ReadonlyMap<string, string>;
  readonly motor: { readonly site: string; readonly tag: string };
  /** What one would do there. */
  readonly text: string;
}

/** The way to what can be wished for a motor. */
export function WishCell({ study, motorIds, motor, text }: Props) {
  const id = motorIds.get(motorKey(motor));
  return (
    <td {...CELL} className={styles.edit}>
      {id !== undefined && (
        <Link href={`/${study}/plan/${id}`} prefetch={false}>
          {text}
          <span className="unseen"> {nameOf(motor)}</span>
        </Link>
      )}
    </td>
  );
}

/** Head over those cells. */
export function WishHead() {
  return (
    <Head className={styles.edit}>
      <span className="unseen">Wish</span>
    </Head>
  );
}
