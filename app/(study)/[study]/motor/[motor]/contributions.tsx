import { Head } from '@/app/_ui/head';
import { NumberHead } from '@/app/_ui/number-head';
import lines from '@/app/_ui/phone-lines.module.css';
import { CELL, GROUP, ROW, ROW_HEAD, TABLE } from '@/app/_ui/row-roles';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import type { Contribution } from '@/lib/engine';
import type { ReadingDates } from '@/lib/features/fleet/reading-dates';
import { contributionWords, points, standing } from '@/lib/features/motor/contribution-words';
import { formatFigure, formatNumber } from '@/lib/platform/format';
import styles from './motor.module.css';

const FITTED_DIGITS = 4;

interface Props {
  readonly rows: readonly Contribution[];
  readonly label: string;
  readonly dates: ReadingDates;
  /** Widths with their sources in place of residual and influence. */
  readonly withSources?: boolean;
}

/** What each stamp, reading or typical value says, what the fit finds in its place, and what the load would be without it. */
export function Contributions({ rows, label, dates, withSources = false }: Props) {
  const several = new Set(rows.map(({ row }) => row).filter((row) => row !== undefined)).size > 1;
  return (
    <ScrollRegion label={label}>
      <table {...TABLE} className={`${styles.table} ${lines.lines} ${lines.figures}`}>
        <thead {...GROUP}>
          <tr {...ROW}>
            <Head>What is known</Head>
            <NumberHead name="Given" unit="± 95 %" className={styles.number} />
            <NumberHead name="Fits best" unit="as the machine shows it" className={styles.number} />
            {withSources ? (
              <Head className={styles.words}>Where its width comes from</Head>
            ) : (
              <>
                <NumberHead name="Misses by" unit="in its own deviations" className={styles.number} />
                <NumberHead name="Load without it" unit="% of rating" className={styles.number} />
                <NumberHead name="It moves the load by" unit="points" className={styles.number} />
              </>
            )}
            <NumberHead name="Part in the doubt" unit="of the load, %" className={styles.number} />
            {!withSources && <Head>In words</Head>}
          </tr>
        </thead>
        <tbody {...GROUP}>
          {rows.map((row) => (
            <tr {...ROW} key={row.name}>
              <th {...ROW_HEAD} scope="row" className={styles.named}>
                {contributionWords(row, several, dates)}
              </th>
              <td {...CELL} className={styles.number} data-unit="Given, ± 95 %">
                {formatFigure(row.given).text}
              </td>
              <td {...CELL} className={styles.number} data-unit="Fits best">
                {short(row.fitted)}
              </td>
              {withSources ? (
                <td {...CELL}>{row.widthSource}</td>
              ) : (
                <>
                  <td {...CELL} className={styles.number} data-unit="Misses by, in its own deviations">
                    {formatNumber(row.residual, 1)}
                  </td>
                  <td {...CELL} className={styles.number} data-unit="Load without it, % of rating">
                    {formatNumber(100 * row.loadWithout, 1)}
                  </td>
                  <td {...CELL} className={styles.number} data-unit="It moves the load by, points">
                    {points(row.pull)}
                  </td>
                </>
              )}
              <td {...CELL} className={styles.number} data-unit="Part in the doubt of the load, %">
                {formatNumber(100 * row.share, row.share < 0.1 ? 1 : 0)}
              </td>
              {!withSources && <td {...CELL}>{standing(row)}</td>}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  );
}

function short(value: number): string {
  return formatNumber(value, Math.max(0, FITTED_DIGITS - 1 - Math.floor(Math.log10(Math.abs(value) || 1))));
}
