import { ScrollRegion } from '@/app/_ui/scroll-region';
import type { IndicatorHistory } from '@/lib/features/motor/indicator-history';
import { formatCount, formatStated } from '@/lib/platform/format';
import styles from './motor.module.css';

/** Values that came with indicator histories; their trend stands beside each indicator. Nothing where there are none. */
export function ImportedHistory({ history }: { readonly history: readonly IndicatorHistory[] }) {
  if (history.length === 0) return null;
  const count = history.reduce((sum, { values }) => sum + values.length, 0);
  return (
    <details>
      <summary>Imported indicator history ({formatCount(count)})</summary>
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
                  </td>
                  <td>{value.instrument ?? ''}</td>
                </tr>
              )),
            )}
          </tbody>
        </table>
      </ScrollRegion>
    </details>
  );
}
