import { Head } from '@/app/_ui/head';
import styles from './motor.module.css';

interface Props {
  readonly name: string;
  /** The unit, or what else there is to say of the column. */
  readonly unit: string;
}

/** Head of a column of numbers in a table of the motor's pages. */
export function NumberHead({ name, unit }: Props) {
  return (
    <Head className={styles.number}>
      {name}
      <span className={styles.under}>{unit}</span>
    </Head>
  );
}
