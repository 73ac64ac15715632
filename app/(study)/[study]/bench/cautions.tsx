import styles from './bench.module.css';

/** The usual cautions of a test bench; printed with each report. */
export function Cautions() {
  return (
    <aside className={styles.caution} aria-label="Safety">
      <p>
        <strong>For qualified persons only.</strong> A running bench is energized, turning work: respect shock and arc-flash
        boundaries, keep guards on the coupling and the emergency stop in reach. Local codes and licensed practice come first.
      </p>
      <details className={styles.more}>
        <summary>Before you measure</summary>
        <ul>
          <li>
            Isolate, lock out and prove dead before connecting meters or measuring resistance. Never open a current-transformer
            secondary.
          </li>
          <li>
            Uncoupled: secure the key, keep within the starts the maker allows, no cylindrical-roller bearings without load for
            long.
          </li>
          <li>
            Locked rotor: a lock rated for the torque, reduced voltage, seconds only. Rotor removed: barriers at the open bore.
          </li>
          <li>A strobe makes a turning shaft look still. Motors for hazardous areas: by permit, in a safe place.</li>
        </ul>
      </details>
    </aside>
  );
}
