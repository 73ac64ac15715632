import Link from 'next/link';
import { nameOf } from '@/lib/features/plan/words';
import type { RoundMotor } from '@/lib/features/trust/loaders';
import { readingAddress } from '@/lib/features/trust/schema';
import { LOAD_WORDS } from '@/lib/features/trust/words';
import styles from './round.module.css';

interface Props {
  readonly motor: RoundMotor;
  readonly study: string;
  /** Ids of the motors of the round, in its order. */
  readonly round: readonly string[];
}

/** One motor of a round: why it is visited, at which load, and the blanks with what to expect. */
export function RoundMotorBlock({ motor, study, round }: Props) {
  return (
    <section className={styles.motor} aria-label={nameOf(motor)} id={motor.id}>
      <h2>
        {nameOf(motor)} <span className={styles.soft}>{[motor.area, motor.description].filter(Boolean).join(' · ')}</span>
      </h2>
      <p className={styles.plate}>
        {motor.plate}. <strong>Read {LOAD_WORDS[motor.load]}.</strong> Expected at {motor.loads}.
        {motor.hazardous && <strong> Hazardous area: by permit only.</strong>}{' '}
        <Link href={readingAddress(study, motor.id, round)} prefetch={false} className="screen-only">
          Enter a reading
        </Link>
      </p>
      {motor.why.length > 0 && (
        <ul className={styles.why}>
          {motor.why.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      )}
      <table className={styles.blanks}>
        <thead>
          <tr>
            <th scope="col">Reading</th>
            <th scope="col">Unit</th>
            <th scope="col">Expect</th>
            <th scope="col">Read</th>
          </tr>
        </thead>
        {motor.places.map(({ place, lines }) => (
          <tbody key={place}>
            <tr>
              <th scope="rowgroup" colSpan={4} className={styles.place}>
                {place}
              </th>
            </tr>
            {lines.map((line) => (
              <tr key={line.name}>
                <th scope="row">{line.name} </th>
                <td className={styles.unit}>{line.unit}</td>
                <td>{line.expect}</td>
                <td>
                  <span className={styles.cells}>
                    {Array.from({ length: line.blanks }, (_, index) => `${line.name} ${index}`).map((key) => (
                      <span key={key} className={styles.blank} />
                    ))}
                  </span>
                </td>
              </tr>
            ))}
          </tbody>
        ))}
      </table>
      <p className={styles.note}>Time, and anything out of the ordinary:</p>
    </section>
  );
}
