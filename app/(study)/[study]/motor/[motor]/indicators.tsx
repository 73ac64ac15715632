import { BandMark } from '@/app/_ui/band-mark';
import { FigureText } from '@/app/_ui/figure';
import { FindingList } from '@/app/_ui/finding-list';
import { FoldOnPhone } from '@/app/_ui/fold-on-phone';
import { Head } from '@/app/_ui/head';
import lines from '@/app/_ui/phone-lines.module.css';
import { CELL, GROUP, ROW, ROW_HEAD, TABLE } from '@/app/_ui/row-roles';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import type { SisterResult, TrendResult } from '@/lib/engine';
import { indicatorFigure, LIMIT_STATUS_WORDS, marginWords, SISTERS_WANTED, sisterWords } from '@/lib/features/condition/words';
import { findingsInLabels } from '@/lib/features/fleet/screen-words';
import type { MotorPage } from '@/lib/features/motor/loaders';
import { counted, formatStated } from '@/lib/platform/format';
import styles from './motor.module.css';

/** How an indicator moved. */
function trendWords({ direction, readings, since }: TrendResult): string {
  const moved = direction === 'steady' ? 'steady' : `getting ${direction}`;
  return `${moved}, ${readings} readings since ${formatStated(since)}`;
}

/** How the value stands among those of like motors. */
function Sisters({ found }: { readonly found: SisterResult | undefined }) {
  return found ? <span className={styles.under}>{sisterWords(found)}</span> : null;
}

const ORDER = { beyond: 0, near: 1, within: 2 } as const;

/** The condition indicators against their limits, what is beyond them first. */
export function Indicators({ page, why }: { readonly page: MotorPage; readonly why: (path: string) => string | undefined }) {
  const indicators = [...page.result.condition.indicators].sort(
    (a, b) => (a.band ? ORDER[a.band] : 3) - (b.band ? ORDER[b.band] : 3),
  );
  if (indicators.length === 0) return <p className={styles.soft}>No condition reading yet.</p>;
  const title = (id: string) => page.indicatorTitles.get(id) ?? id;
  const calm = new Set(
    indicators
      .filter(({ id, band, trend }) => band === 'within' && trend?.direction !== 'worse' && !page.sisters.get(id)?.worse)
      .map(({ id }) => id),
  );
  return (
    <>
      <h3>Indicators against their limits</h3>
      <p className={styles.soft}>
        <em>near</em> comes close to its limit, <em>beyond</em> passes it. Each stands on the latest reading that carries it.
        Sisters are motors of the same rating, poles, voltage and kind at this site, else of the same area and driven machine
        within twice the rating: {SISTERS_WANTED}, each at whatever load it was read. They move no verdict.
      </p>
      <FoldOnPhone what={`${counted(calm.size, 'indicator')} within the limits, none getting worse`} nothing={calm.size < 2}>
        <ScrollRegion label="Condition indicators">
          <table {...TABLE} className={`${styles.table} ${lines.lines} ${styles.lines}`}>
            <thead {...GROUP}>
              <tr {...ROW}>
                <Head>Indicator</Head>
                <Head className={styles.number}>Value, ± 95 %</Head>
                <Head>Verdict</Head>
                <Head className={styles.words}>Limit</Head>
                <Head className={styles.words}>Source of the limit</Head>
                <Head>Read</Head>
              </tr>
            </thead>
            <tbody {...GROUP}>
              {indicators.map((indicator) => (
                <tr key={indicator.id} {...ROW} data-folds={calm.has(indicator.id) || undefined}>
                  <th {...ROW_HEAD} scope="row" className={styles.named}>
                    {title(indicator.id)}
                  </th>
                  <td {...CELL} className={styles.number}>
                    <FigureText
                      name={title(indicator.id)}
                      figure={indicatorFigure(indicator)}
                      why={why(`condition.indicators.${indicator.id}`)}
                    />
                    <Sisters found={page.sisters.get(indicator.id)} />
                  </td>
                  <td {...CELL} className={styles.verdict}>
                    <BandMark band={indicator.band} />
                    {indicator.trend && <span className={styles.under}>{trendWords(indicator.trend)}</span>}
                  </td>
                  <td {...CELL} className={styles.words}>
                    {indicator.limit}
                    {indicator.margin && <span className={styles.under}>{marginWords(indicator.margin)}</span>}
                  </td>
                  <td {...CELL} className={styles.source}>
                    {indicator.source}{' '}
                    <span className={styles.soft}>({LIMIT_STATUS_WORDS[indicator.status] ?? indicator.status})</span>
                  </td>
                  <td {...CELL} className={styles.read}>
                    {indicator.taken_at === undefined ? '' : formatStated(indicator.taken_at)}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollRegion>
      </FoldOnPhone>
      <FindingList findings={findingsInLabels(indicators.flatMap((indicator) => indicator.findings))} empty="" />
    </>
  );
}
