import { Head } from '@/app/_ui/head';
import { MoreThanOnPaper, rowsForPaper } from '@/app/_ui/more';
import { NumberHead } from '@/app/_ui/number-head';
import lines from '@/app/_ui/phone-lines.module.css';
import { CELL, GROUP, ROW, ROW_HEAD, TABLE } from '@/app/_ui/row-roles';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { motorKey } from '@/lib/features/plan/loaders';
import { itemWords, namer, optionWords } from '@/lib/features/plan/words';
import { type Content, type MotorChoice, notChosen } from '@/lib/features/sign-off/loaders';
import { formatAmount, formatCount, formatMoney, formatNumber } from '@/lib/platform/format';
import styles from './version.module.css';

interface Props {
  readonly content: Content;
  /** Motors that a screen shows at most, and the page with all of them. */
  readonly most: number;
  readonly whole: string;
}

/** For each funded motor, what else could have been done with it: cost, worth and cash flow of every other option, opened one by one. */
export function NotChosen({ content, most, whole }: Props) {
  const choices = notChosen(content).filter(({ others }) => others.length > 0);
  if (choices.length === 0) return null;
  const name = namer(content.programme);
  return (
    <section className={sheet.section} aria-labelledby="not-chosen">
      <h2 id="not-chosen">Options that were not chosen</h2>
      <p className={sheet.soft}>
        Cash flow in {content.settings.currency}, before discounting, against going on as now, as if done at once; present values
        for the year of the programme. What waits until the motor fails costs what it takes beyond the repair that would come
        then.
      </p>
      {rowsForPaper(choices, most).map(({ row: choice, className }) => (
        <div key={motorKey(choice.item)} className={className}>
          <Choice choice={choice} name={name(choice.item)} currency={content.settings.currency} />
        </div>
      ))}
      <MoreThanOnPaper href={whole} shown={most} total={choices.length} />
    </section>
  );
}

interface ChoiceProps {
  readonly choice: MotorChoice;
  readonly name: string;
  readonly currency: string;
}

function Choice({ choice: { year, item, others }, name, currency }: ChoiceProps) {
  const longest = Math.max(item.cash_flow.length, ...others.map(({ cashFlow }) => cashFlow.length));
  const years = Array.from({ length: longest }, (_, at) => at);
  const money = (value: number) => formatMoney(value, currency, undefined, true);
  const amount = (value: number | undefined) => (value === undefined ? '' : formatAmount(value, currency, undefined, true));
  const flow = (amounts: readonly number[]) =>
    years.map((at) => (
      <td {...CELL} key={at} className={sheet.number} data-unit={`Year ${at}`}>
        {amounts[at] === undefined ? '' : formatNumber(amounts[at], 0)}
      </td>
    ));
  return (
    <details className={styles.choice}>
      <summary>
        {name}, {itemWords(item)} in {year}: {formatCount(others.length)} {others.length === 1 ? 'other option' : 'other options'}
      </summary>
      <ScrollRegion label={`Options of ${name}`}>
        <table {...TABLE} className={`${sheet.table} ${styles.flow} ${lines.lines} ${lines.figures} ${lines.thirds}`}>
          <thead {...GROUP}>
            <tr {...ROW}>
              <Head>Option</Head>
              <Head>Against the chosen one</Head>
              <NumberHead name="Cost" unit={currency} />
              <NumberHead name="Present value" unit={currency} />
              {years.map((at) => (
                <NumberHead key={at} name={at} />
              ))}
            </tr>
          </thead>
          <tbody {...GROUP}>
            <tr {...ROW}>
              <th {...ROW_HEAD} scope="row" className={styles.option}>
                {optionWords(item.option)}
              </th>
              <td {...CELL}>chosen</td>
              <td {...CELL} className={sheet.number} data-unit={`Cost, ${currency}`}>
                {amount(item.cost)}
              </td>
              <td {...CELL} className={sheet.number} data-unit={`Present value, ${currency}`}>
                {amount(item.net_present_value)}
              </td>
              {flow(item.cash_flow)}
            </tr>
            {others.map((other) => (
              <tr {...ROW} key={other.id}>
                <th {...ROW_HEAD} scope="row" className={styles.option}>
                  {optionWords(other.id)}
                  {other.against.kind === 'waits' && ', at failure'}
                </th>
                <td {...CELL} className={styles.why}>
                  {againstWords(other.against, money)}
                </td>
                <td {...CELL} className={sheet.number} data-unit={`Cost, ${currency}`}>
                  {amount(other.cost)}
                </td>
                <td {...CELL} className={sheet.number} data-unit={`Present value, ${currency}`}>
                  {amount(other.worth)}
                </td>
                {flow(other.cashFlow)}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollRegion>
    </details>
  );
}

function againstWords(against: MotorChoice['others'][number]['against'], money: (amount: number) => string): string {
  switch (against.kind) {
    case 'ruled-out':
      return `ruled out: ${against.text}`;
    case 'waits':
      return 'waits until the motor fails, and takes none of the budget';
    case 'unknown':
      return 'its value, or that of the chosen one, is not known';
    case 'pinned':
      return `somebody asked for the chosen one${against.less === undefined ? '' : `; ${lessWords(against.less, money)}`}`;
    case 'worth':
      return against.less < 0
        ? `${lessWords(against.less, money)}; as a whole the plan brings more this way`
        : lessWords(against.less, money);
  }
}

function lessWords(less: number, money: (amount: number) => string): string {
  if (Math.abs(less) < 0.005) return 'worth the same';
  return less > 0 ? `worth ${money(less)} less` : `worth ${money(-less)} more`;
}
