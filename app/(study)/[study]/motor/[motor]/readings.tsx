import { FigureText } from '@/app/_ui/figure';
import { Head } from '@/app/_ui/head';
import { NumberHead } from '@/app/_ui/number-head';
import lines from '@/app/_ui/phone-lines.module.css';
import { CELL, GROUP, ROW, ROW_HEAD, TABLE } from '@/app/_ui/row-roles';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import { TrustMark } from '@/app/_ui/trust-mark';
import type { MotorPage } from '@/lib/features/motor/loaders';
import { ABSENT, formatFigure, formatStated } from '@/lib/platform/format';
import styles from './motor.module.css';
import { ReadingActions } from './reading-actions';

interface Props {
  readonly page: MotorPage;
  readonly study: string;
  readonly motor: string;
  readonly who: string;
}

/** Every stored reading, the latest first, with what follows from it and the way to leave it out. */
export function Readings({ page, study, motor, who }: Props) {
  const { stored, rowInUse } = page;
  if (stored.readings.length === 0) return <p className={styles.soft}>Not measured yet. Add a reading to know its load.</p>;
  const results = new Map(page.result.readings.map((reading) => [reading.row, reading]));
  return (
    <ScrollRegion label="Table of readings">
      <table {...TABLE} className={`${styles.table} ${lines.lines} ${lines.figures}`}>
        <thead {...GROUP}>
          <tr {...ROW}>
            <Head>Taken</Head>
            <NumberHead name="Power" unit="kW" className={styles.number} />
            <NumberHead name="Voltage" unit="V" className={styles.number} />
            <NumberHead name="Current" unit="A" className={styles.number} />
            <NumberHead name="Speed" unit="r/min" className={styles.number} />
            <NumberHead name="Load" unit="% of rating, ± 95 %" className={styles.number} />
            <Head>Trust</Head>
            <Head className={styles.words}>Also read</Head>
            <Head>
              <span className="unseen">Leave out or take back in</span>
            </Head>
          </tr>
        </thead>
        <tbody {...GROUP}>
          {[...stored.readings].reverse().map(({ id, reading, excluded }) => {
            const result = excluded ? undefined : results.get(reading.row);
            const label = reading.takenAt === undefined ? 'no date' : formatStated(reading.takenAt);
            const words = page.readingWords.get(id);
            return (
              <tr {...ROW} key={id}>
                <th {...ROW_HEAD} scope="row" className={`${styles.nowrap} ${styles.named}`}>
                  {label}
                  {!excluded && reading.row === rowInUse && <span className={styles.under}>the figures stand on it</span>}
                  {words !== undefined && words.by !== '' && <span className={styles.under}>{words.by}</span>}
                </th>
                <td {...CELL} className={styles.number} data-unit="Power, kW">
                  {plain(reading.inputPowerKw)}
                </td>
                <td {...CELL} className={styles.number} data-unit="Voltage, V">
                  {plain(reading.voltageV)}
                </td>
                <td {...CELL} className={styles.number} data-unit="Current, A">
                  {plain(reading.currentA)}
                </td>
                <td {...CELL} className={styles.number} data-unit="Speed, r/min">
                  {plain(reading.shaftSpeedRpm)}
                </td>
                <td {...CELL} className={styles.number} data-unit="Load, % of rating, ± 95 %">
                  <FigureText
                    name="load"
                    figure={result?.load_fraction}
                    percent
                    unitInHead
                    reason={excluded ? 'left out' : 'no usable load'}
                  />
                </td>
                <td {...CELL} className={styles.nowrap}>
                  {result ? <TrustMark level={result.trust} /> : <span className={styles.soft}>left out</span>}
                </td>
                <td {...CELL} className={`${styles.words} ${styles.soft}`}>
                  {words?.also.join(', ')}
                </td>
                <td {...CELL}>
                  <ReadingActions
                    study={study}
                    motor={motor}
                    version={stored.version}
                    who={who}
                    kind="reading"
                    reading={id}
                    label={label}
                    {...(excluded && { excluded: { by: excluded.by, reason: excluded.reason } })}
                  />
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </ScrollRegion>
  );
}

function plain(value: number | undefined): string {
  return value === undefined ? ABSENT : formatFigure({ value, u: 0, unit: '1' }).text;
}
