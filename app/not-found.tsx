import Link from 'next/link';
import styles from './page.module.css';

export default function NotFound() {
  return (
    <main id="main" className={styles.page}>
      <h1>There is no such page</h1>
      <p>
        The address is wrong, or what it showed has been removed. <Link href="/">Go to the first page</Link>.
      </p>
    </main>
  );
}
