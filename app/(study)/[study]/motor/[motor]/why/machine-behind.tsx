import sheet from '@/app/_ui/sheet-page.module.css';
import { Typeset } from '@/app/_ui/typeset';
import type { Contribution, Model } from '@/lib/engine';
import type { ReadingDates } from '@/lib/features/fleet/reading-dates';
import { Contributions } from '../contributions';
import styles from '../motor.module.css';

interface Props {
  readonly model: Model;
  readonly rows: readonly Contribution[];
  readonly dates: ReadingDates;
}

/** The machine behind a figure: what it was fitted to, how wide each assumption is and why, its equations and what their solution leaves. */
export function MachineBehind({ model, rows, dates }: Props) {
  return (
    <section className={styles.section} aria-labelledby="machine">
      <h2 id="machine">The machine behind it</h2>
      <p>
        One circuit and one load are fitted to all that is known of this motor at once, each value weighed by its own doubt. The
        fit settled after {model.fit.iterations} steps; its last one moved no unknown by more than{' '}
        {model.fit.residual.toExponential(0)}.
      </p>
      <h3>What readings and stamps say</h3>
      <Contributions label="Readings and stamps" dates={dates} rows={rows.filter(({ kind }) => kind !== 'typical')} />
      <h3>What is taken for typical, and how wide</h3>
      <Contributions label="Typical values" dates={dates} rows={rows.filter(({ kind }) => kind === 'typical')} withSources />
      <h3>Where the widths of readings and stamps come from</h3>
      <Contributions
        label="Widths of readings and stamps"
        dates={dates}
        rows={rows.filter(({ kind }) => kind !== 'typical')}
        withSources
      />
      <details className={styles.figures}>
        <summary>Numbers of the circuit</summary>
        <p className={styles.soft}>
          Per unit of rated shaft power and rated voltage; slip as a fraction, temperatures in °C, rises in K.
        </p>
        <ul>
          {model.numbers.map(({ symbol, meaning, value }) => (
            <li key={symbol}>
              <Typeset tex={`${symbol} = ${Number(value.toPrecision(5))}`} inline />{' '}
              <span className={styles.soft}>{meaning}</span>
            </li>
          ))}
        </ul>
      </details>
      {model.systems.map(({ title, equations, valid, source, residual }) => (
        <details key={title}>
          <summary>
            Equations: {title}
            {residual !== undefined && <span className={styles.soft}> · left by the solution: {residual.toExponential(0)}</span>}
          </summary>
          <p className={sheet.soft}>
            Holds for: {valid} Source: {source}.
          </p>
          {equations.map(({ name, symbol, tex }) => (
            <Typeset key={name} tex={`${symbol} = ${tex}`} />
          ))}
        </details>
      ))}
    </section>
  );
}
