import styles from '../import.module.css';

/** Stands while a sheet is read: a large one takes some seconds. */
export default function Reading() {
  return (
    <main id="main" className={styles.main}>
      <h1>Reading the sheet…</h1>
      <p role="status">A sheet of ten thousand rows takes some seconds. Nothing is written meanwhile.</p>
    </main>
  );
}
