import styles from './who-field.module.css';

/** The name that is kept with a change. Nobody proves it, and that is said. */
export function WhoField({ id, initial }: { readonly id: string; readonly initial: string }) {
  return (
    <div className={styles.field}>
      <label htmlFor={id}>Your name</label>
      <input
        id={id}
        name="who"
        defaultValue={initial}
        required
        maxLength={80}
        autoComplete="name"
        aria-describedby={`${id}-note`}
      />
      <p id={`${id}-note`} className={styles.note}>
        Kept with the change in the history; not checked.
      </p>
    </div>
  );
}
