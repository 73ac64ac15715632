import styles from './round.module.css';

/** What whoever goes round has to mind; the first thing on the sheet. */
export function RoundCautions() {
  return (
    <section className={styles.cautions} aria-label="Cautions">
      <h2>Before you go</h2>
      <ul>
        <li>
          A live reading is energized work: qualified persons only, within the shock and arc-flash boundaries of the panel, with
          meters and clamps within their category. Above 1 kV use installed transformers. Never open a current-transformer
          secondary.
        </li>
        <li>Guards stay on; keep clear of turning parts. Under a stroboscope a turning shaft looks still.</li>
        <li>
          Before contact, resistance and insulation tests: isolate, lock out, prove dead. Disconnect drives, capacitors, arresters
          and sensors; wait for the DC bus of a drive. Afterwards discharge for 15 minutes or four times the test, whichever is
          longer. No start below the minimum insulation resistance.
        </li>
        <li>Uncoupled runs: secure the key, respect the starts permitted, never with lightly loaded roller bearings for long.</li>
        <li>
          Never raise the process load for a reading without the process owner: if the load asked for is not there, leave the
          blank.
        </li>
        <li>Hazardous areas: by permit only, with certified instruments.</li>
        <li>Local codes, the site’s rules and licensed persons decide.</li>
      </ul>
    </section>
  );
}
