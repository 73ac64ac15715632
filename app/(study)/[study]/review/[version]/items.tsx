import Link from 'next/link';
import type { ReactNode } from 'react';
import { DoubtfulAmount } from '@/app/_ui/doubtful-amount';
import { Head } from '@/app/_ui/head';
import { MoreOnPhone, rowOnPhone, rowsForPaper } from '@/app/_ui/more';
import { MotorCell, MotorName } from '@/app/_ui/motor-cell';
import { NumberHead } from '@/app/_ui/number-head';
import lines from '@/app/_ui/phone-lines.module.css';
import { CELL, GROUP, ROW, TABLE } from '@/app/_ui/row-roles';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { motorKey } from '@/lib/features/plan/loaders';
import { itemWords, mustWords } from '@/lib/features/plan/words';
import type { Programme, ProgrammeItem } from '@/lib/features/sign-off/loaders';
import { counted, formatAmount, formatAsStated, formatCount, formatMoney, formatPercent, unparted } from '@/lib/platform/format';
import styles from './version.module.css';

interface Props {
  readonly programme: Programme;
  readonly currency: string;
  /** Years within which the policy wants a payback. */
  readonly payback: number | undefined;
  readonly study: string;
  /** Ids that the motors have in the study now. */
  readonly motorIds: ReadonlyMap<string, string>;
  /** Motors of each reason that a screen names at most where they are left out; paper names all. */
  readonly most: number;
  /** The page with all lists to their end, and whether it is this one. */
  readonly all: boolean;
  readonly whole: string;
}

/** What is funded in each year, its sums to the cent, and who is left out and why. */
export function Items({ programme, currency, payback, study, motorIds, most, all, whole }: Props) {
  const money = (amount: number) => formatMoney(amount, currency, undefined, true);
  const amount = (value: number) => formatAmount(value, currency, undefined, true);
  const inTime = payback === undefined ? 'in time' : `within ${formatAsStated(payback)} years`;
  const lowKnown = programme.years.some(({ items }) => items.some(({ low_case_value: low }) => low !== undefined));
  const why = (item: ProgrammeItem, text: ReactNode) => {
    const { tag, option } = item;
    const id = motorIds.get(motorKey(item));
    if (id === undefined) return text;
    const figure = encodeURIComponent(`options.${option}.net_present_value`);
    return (
      <Link href={`/${study}/motor/${id}/why?figure=${figure}`} prefetch={false}>
        {text}
        <span className="unseen">, present value of {tag}: how do we know?</span>
      </Link>
    );
  };
  return (
    <>
      <p className="screen-only">A present value opens its derivation, worked out anew from the study as it is now.</p>
      {programme.years.map(({ year, budget, spent, items }) => (
        <section key={year} className={sheet.section} aria-labelledby={`year-${year}`}>
          <h2 id={`year-${year}`}>{year}</h2>
          <p>
            {items.length === 0
              ? `Nothing is funded; ${money(budget)} are left.`
              : `${counted(items.length, 'motor')}: ${money(spent)} of ${money(budget)}.`}
          </p>
          {items.length > 0 && (
            <ScrollRegion label={`Funded in ${year}`}>
              <table {...TABLE} className={`${sheet.table} ${lines.lines} ${lines.figures}`}>
                <thead {...GROUP}>
                  <tr {...ROW}>
                    <Head>Motor</Head>
                    <Head>What is done</Head>
                    <NumberHead name="Cost" unit={currency} />
                    <NumberHead name="Present value" unit={currency} />
                    {lowKnown && <NumberHead name="In the low case" unit={currency} />}
                    <NumberHead name="Chance to pay back" unit={inTime} />
                  </tr>
                </thead>
                <tbody {...GROUP}>
                  {items.map((item, at) => (
                    <tr key={`${item.site} ${item.tag}`} {...ROW} className={rowOnPhone(at, all)}>
                      <MotorCell study={study} motorIds={motorIds} motor={item} />
                      <td {...CELL} className={sheet.named}>
                        {itemWords(item)}
                        {mustWords(item, programme).map((text) => (
                          <span key={text} className={styles.because}>
                            {text}
                          </span>
                        ))}
                      </td>
                      <td {...CELL} className={sheet.number} data-unit={`Cost, ${currency}`}>
                        {amount(item.cost)}
                      </td>
                      <td {...CELL} className={sheet.number} data-unit={`Present value, ${currency}`}>
                        {item.net_present_value === undefined
                          ? 'must be done'
                          : why(
                              item,
                              <DoubtfulAmount amount={item.net_present_value} u={item.net_present_value_u} currency={currency} />,
                            )}
                      </td>
                      {lowKnown && (
                        <td {...CELL} className={sheet.number} data-unit={`In the low case, ${currency}`}>
                          {item.low_case_value === undefined ? 'not known' : amount(item.low_case_value)}
                        </td>
                      )}
                      <td {...CELL} className={sheet.number} data-unit={`Chance to pay back ${inTime}`}>
                        {chanceWords(item)}
                      </td>
                    </tr>
                  ))}
                </tbody>
              </table>
            </ScrollRegion>
          )}
          <MoreOnPhone href={`${whole}#year-${year}`} total={items.length} all={all} />
        </section>
      ))}
      <section className={sheet.section} aria-labelledby="left-out">
        <h2 id="left-out">Left out</h2>
        <LeftOut study={study} motorIds={motorIds} programme={programme} most={most} whole={`${whole}#left-out`} />
      </section>
    </>
  );
}

/** A repair is not chosen for what it saves: that it pays nothing back is no news. */
function chanceWords({ option, probability_within_policy: chance }: ProgrammeItem): string {
  if (chance === undefined) return 'not known';
  if (chance < 0.005) return option.startsWith('repair') ? 'saves nothing' : 'below 1 %';
  return chance > 0.995 ? 'above 99 %' : formatPercent(chance);
}

/** Who is left out, by reason: the same few hold for many. */
function LeftOut({ study, motorIds, programme, most, whole }: Omit<Props, 'currency' | 'payback' | 'all'>) {
  const reasons = new Map<string, Programme['left_out'][number][]>();
  for (const each of programme.left_out) reasons.set(each.because.text, [...(reasons.get(each.because.text) ?? []), each]);
  if (reasons.size === 0) return <p>No motor is left out.</p>;
  return (
    <dl className={sheet.reasons}>
      {[...reasons].map(([text, motors]) => {
        const named = rowsForPaper(motors, most);
        return (
          <div key={text}>
            <dt>
              {unparted(text)} <span className={sheet.soft}>({formatCount(motors.length)})</span>
            </dt>
            <dd>
              {named.map(({ row: motor, className }, at) => (
                <span key={motorKey(motor)} className={className}>
                  {at > 0 && ', '}
                  <MotorName study={study} motorIds={motorIds} motor={motor} />
                </span>
              ))}
              {motors.length > most && (
                <span className="screen-only">
                  {' '}
                  and {formatCount(motors.length - most)} more.{' '}
                  <Link href={whole} prefetch={false}>
                    Name all
                  </Link>
                </span>
              )}
              {motors.length > named.length && (
                <span className="print-only"> and {formatCount(motors.length - named.length)} more.</span>
              )}
            </dd>
          </div>
        );
      })}
    </dl>
  );
}
