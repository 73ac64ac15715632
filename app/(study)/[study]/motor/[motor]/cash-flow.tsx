import { Head } from '@/app/_ui/head';
import lines from '@/app/_ui/phone-lines.module.css';
import { CELL, GROUP, ROW, ROW_HEAD, TABLE } from '@/app/_ui/row-roles';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import { formatNumber } from '@/lib/platform/format';
import styles from './motor.module.css';

interface Props {
  /** Year by year from 0, the year of the investment, against the baseline. */
  readonly flows: readonly number[];
  readonly currency: string;
}

/** The cash flow of what was decided. */
export function CashFlow({ flows, currency }: Props) {
  return (
    <details>
      <summary>Cash flow of what was decided, year by year</summary>
      <ScrollRegion label="Cash flow">
        <table {...TABLE} className={`${styles.table} ${lines.lines} ${lines.figures} ${lines.thirds}`}>
          <thead {...GROUP}>
            <tr {...ROW}>
              <Head>Year</Head>
              {flows.map((_, year) => (
                <Head key={String(year)} className={styles.number}>
                  {year}
                </Head>
              ))}
            </tr>
          </thead>
          <tbody {...GROUP}>
            <tr {...ROW}>
              <th {...ROW_HEAD} scope="row">
                Change against the baseline, {currency}
              </th>
              {flows.map((flow, year) => (
                <td key={String(year)} {...CELL} className={styles.number} data-unit={`Year ${year}`}>
                  {formatNumber(flow, 0)}
                </td>
              ))}
            </tr>
          </tbody>
        </table>
      </ScrollRegion>
      <p className={styles.soft}>Investments fall at the start of a year, savings at its end. Year 0 is the investment.</p>
    </details>
  );
}
