import { DoubtfulAmount } from '@/app/_ui/doubtful-amount';
import { FigureText } from '@/app/_ui/figure';
import { Head } from '@/app/_ui/head';
import { MoreOnPhone, rowOnPhone } from '@/app/_ui/more';
import { MotorCell } from '@/app/_ui/motor-cell';
import { NumberHead } from '@/app/_ui/number-head';
import lines from '@/app/_ui/phone-lines.module.css';
import { CELL, GROUP, ROW, TABLE } from '@/app/_ui/row-roles';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { motorKey, type PlannedProgramme, type StoredWish } from '@/lib/features/plan/loaders';
import { foundWords, itemWords, wishWords } from '@/lib/features/plan/words';
import { counted, formatAmount, formatCount, formatMoney } from '@/lib/platform/format';
import styles from './plan.module.css';
import { WishCell, WishHead } from './wish-cell';

interface Props {
  readonly study: string;
  readonly currency: string;
  readonly motorIds: ReadonlyMap<string, string>;
  readonly year: PlannedProgramme['years'][number];
  readonly wishes: readonly StoredWish[];
  /** Whether long lists are shown to their end. */
  readonly all: boolean;
}

/** One year of the plan: what is done with which motor, its cost and its worth, and the way to wish otherwise. */
export function YearItems({ study, currency, motorIds, year: { year, budget, spent, items }, wishes, all }: Props) {
  const money = (amount: number) => formatMoney(amount, currency, undefined, true);
  const amount = (value: number) => formatAmount(value, currency, undefined, true);
  const own = new Map<string, StoredWish[]>();
  for (const wish of wishes) own.set(motorKey(wish), [...(own.get(motorKey(wish)) ?? []), wish]);
  return (
    <section className={sheet.section} aria-labelledby={`year-${year}`}>
      <h2 id={`year-${year}`}>{year}</h2>
      <p>
        {items.length === 0
          ? `Nothing is done; ${money(budget)} are left.`
          : `${counted(items.length, 'motor')}: ${money(spent)} of ${money(budget)}. ± is the 95 % interval.`}
      </p>
      {items.length > 0 && (
        <ScrollRegion label={`Plan of ${year}`}>
          <table {...TABLE} className={`${sheet.table} ${lines.lines} ${lines.figures}`}>
            <thead {...GROUP}>
              <tr {...ROW}>
                <Head>Motor</Head>
                <Head>What is done</Head>
                <NumberHead name="Cost" unit={currency} />
                <NumberHead name="Present value" unit={currency} />
                <NumberHead name="Energy saved" unit="kWh a year" />
                <NumberHead name="Rank" />
                <WishHead />
              </tr>
            </thead>
            <tbody {...GROUP}>
              {items.map((item, at) => {
                const wished = own.get(motorKey(item)) ?? [];
                return (
                  <tr key={motorKey(item)} {...ROW} className={rowOnPhone(at, all)}>
                    <MotorCell study={study} motorIds={motorIds} motor={item} />
                    <td {...CELL} className={sheet.named}>
                      {itemWords(item)}
                      {foundWords(item).map((text) => (
                        <span key={text} className={styles.wish}>
                          {text}
                        </span>
                      ))}
                      {wished.map((wish) => (
                        <span key={wish.kind} className={styles.wish}>
                          {wishWords(wish)}
                        </span>
                      ))}
                    </td>
                    <td {...CELL} className={sheet.number} data-unit={`Cost, ${currency}`}>
                      {amount(item.cost)}
                    </td>
                    <td {...CELL} className={sheet.number} data-unit={`Present value, ${currency}`}>
                      {item.net_present_value === undefined ? (
                        'must be done'
                      ) : (
                        <DoubtfulAmount amount={item.net_present_value} u={item.net_present_value_u} currency={currency} />
                      )}
                    </td>
                    <td {...CELL} className={sheet.number} data-unit="Energy saved, kWh a year">
                      <FigureText
                        figure={item.energy_saved}
                        name={`energy saved by ${item.tag}`}
                        reason="No saving can be worked out: hours or load are missing."
                        unitInHead
                      />
                    </td>
                    <td {...CELL} className={sheet.number} data-unit="Rank">
                      {formatCount(item.rank)}
                    </td>
                    <WishCell study={study} motorIds={motorIds} motor={item} text="move or pin" />
                  </tr>
                );
              })}
            </tbody>
          </table>
        </ScrollRegion>
      )}
      <MoreOnPhone href={`/${study}/plan?all=1#year-${year}`} total={items.length} all={all} />
    </section>
  );
}
