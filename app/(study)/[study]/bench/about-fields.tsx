import styles from './bench.module.css';
import { DecimalOptions } from './decimal-options';
import type { About } from './use-entry';

interface Props {
  readonly about: About;
  readonly onAbout: (about: About) => void;
  readonly methods: readonly { readonly id: string; readonly words: string }[];
  /** What is wrong with each refused field. */
  readonly refused: Readonly<Record<string, string>> | undefined;
}

/** Which motor, which test, by which procedure, and what the table does not say of it. */
export function AboutFields({ about, onAbout, methods, refused }: Props) {
  const every = { about, onAbout, refused };
  return (
    <div className={styles.fields}>
      <AboutField id="tag" label="Tag of the motor" {...every} />
      <AboutField id="site" label="Site" note="Only where the tag stands at several sites." {...every} />
      <AboutField id="name" label="Name of the test" note="Such as: before rewind." {...every} />
      <AboutField id="takenAt" label="Date, as 2026-03-14" {...every} />
      <div className={styles.field}>
        <label htmlFor="method">Procedure</label>
        <select id="method" value={about.method} onChange={(event) => onAbout({ ...about, method: event.target.value })}>
          <option value="">by what was measured</option>
          {methods.map((method) => (
            <option key={method.id} value={method.id}>
              {method.words}
            </option>
          ))}
        </select>
      </div>
      <div className={styles.field}>
        <label htmlFor="decimal">Decimal sign that you type</label>
        <select
          id="decimal"
          value={about.decimal}
          onChange={(event) => onAbout({ ...about, decimal: event.target.value === ',' ? ',' : '.' })}
        >
          <DecimalOptions />
        </select>
      </div>
      <div className={styles.field}>
        <label htmlFor="conductor">Conductor of the rotor</label>
        <select id="conductor" value={about.conductor} onChange={(event) => onAbout({ ...about, conductor: event.target.value })}>
          <option value="">not stated (aluminium)</option>
          <option value="aluminium">aluminium</option>
          <option value="copper">copper</option>
        </select>
      </div>
    </div>
  );
}

interface FieldProps extends Pick<Props, 'about' | 'onAbout' | 'refused'> {
  readonly id: keyof About;
  readonly label: string;
  readonly note?: string;
}

/** A field to type into. */
function AboutField({ id, label, note, about, onAbout, refused }: FieldProps) {
  const said = refused?.[id] ?? note;
  return (
    <div className={styles.field}>
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        value={about[id]}
        onChange={(event) => onAbout({ ...about, [id]: event.target.value })}
        autoComplete="off"
        aria-describedby={said === undefined ? undefined : `${id}-note`}
        aria-invalid={refused?.[id] !== undefined}
      />
      {said !== undefined && (
        <p id={`${id}-note`} className={styles.note}>
          {said}
        </p>
      )}
    </div>
  );
}
