import { FoldOnPhone } from '@/app/_ui/fold-on-phone';
import { Head } from '@/app/_ui/head';
import { MoreThanOnPaper, rowsForPaper } from '@/app/_ui/more';
import { NumberHead } from '@/app/_ui/number-head';
import lines from '@/app/_ui/phone-lines.module.css';
import { CELL, GROUP, ROW, ROW_HEAD, TABLE } from '@/app/_ui/row-roles';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import type { Programme } from '@/lib/features/sign-off/loaders';
import { formatCount, formatNumber } from '@/lib/platform/format';
import styles from './version.module.css';

interface Props {
  readonly programme: Programme;
  readonly currency: string;
  /** Motors that a screen shows at most, and the page with all of them. */
  readonly most: number;
  readonly whole: string;
}

/** What each funded option changes year by year, before discounting, as if it were carried out at once; and all of them together in their years. */
export function CashFlow({ programme, currency, most, whole }: Props) {
  const items = programme.years.flatMap(({ items }, at) => items.map((item) => ({ at, ...item })));
  const last = Math.max(0, ...items.map(({ at, cash_flow }) => at + cash_flow.length - 1));
  const longest = Math.max(0, ...items.map(({ cash_flow }) => cash_flow.length));
  const columns = Array.from({ length: Math.max(longest, last + 1) }, (_, year) => year);
  const horizon = longest - 1;
  // What is done later is followed to the horizon of the study, as its present value is.
  const together = columns.map((year) =>
    year > horizon ? undefined : items.reduce((sum, { at, cash_flow }) => sum + (cash_flow[year - at] ?? 0), 0),
  );
  if (items.length === 0) return null;
  return (
    <section className={sheet.section} aria-labelledby="cash-flow">
      <h2 id="cash-flow">Cash flow</h2>
      <p>
        In {currency}, before discounting, against going on as now; year 0 is when the money is spent. The first line has every
        motor in its year of the programme, to the horizon of the study; what is spent later is taken at the prices of the study’s
        day.
      </p>
      <FoldOnPhone what={`Motor by motor (${formatCount(Math.min(most, items.length))})`}>
        <ScrollRegion label="Cash flow by year">
          <table {...TABLE} className={`${sheet.table} ${styles.flow} ${lines.lines} ${lines.figures} ${lines.thirds}`}>
            <thead {...GROUP}>
              <tr {...ROW}>
                <Head>Motor</Head>
                <Head>Year</Head>
                {columns.slice(0, longest).map((year) => (
                  <NumberHead key={year} name={year} />
                ))}
              </tr>
            </thead>
            <tbody {...GROUP}>
              <tr {...ROW}>
                <th {...ROW_HEAD} scope="row">
                  <strong>All together</strong>
                </th>
                <td {...CELL}>all</td>
                {columns.slice(0, longest).map((year) => (
                  <td {...CELL} key={year} className={sheet.number} data-unit={`Year ${year}`}>
                    {together[year] !== undefined && <strong>{formatNumber(together[year], 0)}</strong>}
                  </td>
                ))}
              </tr>
              {rowsForPaper(items, most).map(({ row: { site, tag, at, cash_flow }, className }) => (
                <tr {...ROW} key={`${site} ${tag}`} className={className} data-folds>
                  <th {...ROW_HEAD} scope="row" className={sheet.nowrap}>
                    {tag}
                  </th>
                  <td {...CELL}>{programme.years[at]?.year}</td>
                  {columns.slice(0, longest).map((year) => (
                    <td {...CELL} key={year} className={sheet.number} data-unit={`Year ${year}`}>
                      {cash_flow[year] === undefined ? '' : formatNumber(cash_flow[year], 0)}
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollRegion>
        <div data-folds>
          <MoreThanOnPaper href={whole} shown={most} total={items.length} />
        </div>
      </FoldOnPhone>
    </section>
  );
}
