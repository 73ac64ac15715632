import styles from './page.module.css';

export default function FirstPage() {
  return (
    <main id="main" className={styles.page}>
      <h1 className={styles.name}>Lossbook</h1>
      <p className={styles.job}>
        Keeps the book of losses of every motor on a site: how hard each one works, where its energy goes, how far the figures can
        be trusted, what condition it is in, and what to do about it.
      </p>
    </main>
  );
}
