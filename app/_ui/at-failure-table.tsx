import type { ReactNode } from 'react';
import { motorKey, type PlannedProgramme } from '@/lib/features/plan/loaders';
import { optionWords } from '@/lib/features/plan/words';
import { formatAmount, formatCount } from '@/lib/platform/format';
import { FoldOnPhone } from './fold-on-phone';
import { Head } from './head';
import { rowsForPaper } from './more';
import { MotorCell } from './motor-cell';
import { NumberHead } from './number-head';
import lines from './phone-lines.module.css';
import { CELL, GROUP, ROW, ROW_HEAD, TABLE } from './row-roles';
import { ScrollRegion } from './scroll-region';
import sheet from './sheet-page.module.css';

interface Props {
  readonly study: string;
  readonly currency: string;
  readonly motorIds: ReadonlyMap<string, string>;
  readonly programme: PlannedProgramme;
  /** Lines that a screen shows at most; the last one sums all. */
  readonly most: number;
  /** Whether paper has the others too. */
  readonly paper?: boolean;
  /** A last column: its head, and the cell of each motor. */
  readonly wish?: { readonly head: ReactNode; readonly cell: (motor: PlannedProgramme['at_failure'][number]) => ReactNode };
}

/** What waits until the motor fails: it takes no yearly budget, and its spend is an expectation. */
export function AtFailureTable({ study, currency, motorIds, programme, most, paper = false, wish }: Props) {
  const { at_failure: waiting, years } = programme;
  if (waiting.length === 0) return null;
  const amount = (value: number) => formatAmount(value, currency);
  const shown = rowsForPaper(paper ? waiting : waiting.slice(0, most), most);
  return (
    <section className={sheet.section} aria-labelledby="at-failure">
      <h2 id="at-failure">Once they fail</h2>
      <p>
        {formatCount(waiting.length)} {waiting.length === 1 ? 'motor is' : 'motors are'} worth another one when the time has come.
        That takes no yearly budget: the amounts are what the new motor costs beyond the repair, times the chance that the first
        failure falls into the year; below nothing where the repair is the dearer one.
      </p>
      <FoldOnPhone what={`Motor by motor (${formatCount(Math.min(most, waiting.length))})`}>
        <ScrollRegion label="Motors changed once they fail">
          <table {...TABLE} className={`${sheet.table} ${lines.lines} ${lines.figures} ${lines.thirds}`}>
            <thead {...GROUP}>
              <tr {...ROW}>
                <Head>Motor</Head>
                <Head>Then</Head>
                {years.map(({ year }) => (
                  <NumberHead key={year} name={year} unit={`expected ${currency}`} />
                ))}
                {wish?.head}
              </tr>
            </thead>
            <tbody {...GROUP}>
              {shown.map(({ row: each, className }) => (
                <tr key={motorKey(each)} {...ROW} className={className} data-folds>
                  <MotorCell study={study} motorIds={motorIds} motor={each} />
                  <td {...CELL} className={sheet.named}>
                    {optionWords(each.option)}
                  </td>
                  {years.map(({ year }, at) => (
                    <td key={year} {...CELL} className={sheet.number} data-unit={`${year}, ${currency}`}>
                      {amount(each.expected_spend[at] ?? 0)}
                    </td>
                  ))}
                  {wish?.cell(each)}
                </tr>
              ))}
              <tr {...ROW}>
                <th {...ROW_HEAD} scope="row">
                  All {formatCount(waiting.length)}
                </th>
                <td {...CELL} />
                {years.map(({ year }, at) => (
                  <td key={year} {...CELL} className={sheet.number} data-unit={`${year}, ${currency}`}>
                    {amount(waiting.reduce((sum, each) => sum + (each.expected_spend[at] ?? 0), 0))}
                  </td>
                ))}
                {wish && <td {...CELL} />}
              </tr>
            </tbody>
          </table>
        </ScrollRegion>
      </FoldOnPhone>
    </section>
  );
}
