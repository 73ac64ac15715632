import styles from './who-field.module.css';

interface Props {
  readonly id: string;
  readonly initial: string;
  /** The name as it was sent with a form that was refused: a form is cleared when it is sent. */
  readonly typed?: string | undefined;
  /** Why it is not taken. */
  readonly refused?: string | undefined;
}

/** The name that is kept with a change. Nobody proves it, and that is said; a name that is remembered takes one line. */
export function WhoField({ id, initial, typed, refused }: Props) {
  const shown = typed ?? initial;
  const known = initial !== '' && refused === undefined;
  return (
    <div className={known ? `${styles.field} ${styles.known}` : styles.field}>
      <label htmlFor={id}>Your name</label>
      <input
        key={shown}
        id={id}
        name="who"
        defaultValue={shown}
        required
        maxLength={80}
        autoComplete="name"
        aria-describedby={`${id}-note`}
        aria-invalid={refused !== undefined}
      />
      <p id={`${id}-note`} className={known ? 'unseen' : refused === undefined ? styles.note : styles.refused}>
        {refused ?? 'Kept with the change in the history; not checked.'}
      </p>
    </div>
  );
}
