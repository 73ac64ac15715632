import { ScrollRegion } from '@/app/_ui/scroll-region';
import type { IndicatorHistory } from '@/lib/features/motor/indicator-history';
import { formatCount, formatStated } from '@/lib/platform/format';
import styles from './motor.module.css';
import { ReadingActions } from './reading-actions';

interface Props {
  readonly history: readonly IndicatorHistory[];
  readonly study: string;
  readonly motor: string;
  readonly version: number;
  readonly who: string;
}

/** Values that came with indicator histories, each with the way to leave it out; their trend stands beside each indicator. Nothing where there are none. */
export function ImportedHistory({ history, study, motor, version, who }: Props) {
  if (history.length === 0) return null;
  const all = history.flatMap(({ values }) => values);
  const out = all.filter(({ excluded }) => excluded !== undefined).length;
  return (
    <details>
      <summary>
        Imported indicator history ({formatCount(all.length)}
        {out > 0 && `, ${formatCount(out)} left out`})
      </summary>
      <ScrollRegion label="Imported indicator history">
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">Indicator</th>
              <th scope="col">Read</th>
              <th scope="col" className={styles.number}>
                Value
              </th>
              <th scope="col">Instrument</th>
              <th scope="col">
                <span className="unseen">Leave out or take back in</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {history.flatMap(({ name, unit, values }) =>
              values.map((value) => (
                <tr key={value.id}>
                  <th scope="row" className={styles.named}>
                    {name}
                  </th>
                  <td className={styles.nowrap}>{value.takenAt === undefined ? 'no date' : formatStated(value.takenAt)}</td>
                  <td className={styles.number}>
                    {Number(value.value.toPrecision(4))}
                    {unit === '1' ? '' : `\u202f${unit}`}
                    {value.excluded && <span className={styles.under}>left out</span>}
                  </td>
                  <td>{value.instrument ?? ''}</td>
                  <td>
                    <ReadingActions
                      study={study}
                      motor={motor}
                      version={version}
                      who={who}
                      kind="value"
                      reading={value.id}
                      label={`${name}, ${value.takenAt === undefined ? 'no date' : formatStated(value.takenAt)}`}
                      {...(value.excluded && { excluded: value.excluded })}
                    />
                  </td>
                </tr>
              )),
            )}
          </tbody>
        </table>
      </ScrollRegion>
    </details>
  );
}
