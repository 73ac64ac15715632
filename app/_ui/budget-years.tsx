import type { Programme } from '@/lib/features/plan/loaders';
import { formatAmount, formatCount, formatNumber } from '@/lib/platform/format';
import { DoubtfulAmount } from './doubtful-amount';
import { Head } from './head';
import { NumberHead } from './number-head';
import lines from './phone-lines.module.css';
import { CELL, GROUP, ROW, ROW_HEAD, TABLE } from './row-roles';
import { ScrollRegion } from './scroll-region';
import sheet from './sheet-page.module.css';

/** Every year's money beside what it buys, and what one more unit of it would bring where the plan knows that. */
export function BudgetYears({
  programme,
  currency,
  linked = true,
}: {
  readonly programme: Programme;
  readonly currency: string;
  /** Whether the page has a section of each year to go to. */
  readonly linked?: boolean;
}) {
  const amount = (value: number) => formatAmount(value, currency, undefined, true);
  const unit = { energy: 'kWh a year', emissions: 'kg of CO₂ a year' }[programme.objective] ?? currency;
  const priced = programme.years.some(({ shadow_price }) => shadow_price !== undefined);
  const worth = (items: Programme['years'][number]['items']) =>
    items.reduce((sum, item) => sum + (item.net_present_value ?? 0), 0);
  return (
    <section className={sheet.section} aria-labelledby="budgets">
      <h2 id="budgets">Budget by year</h2>
      <ScrollRegion label="Money of each year">
        <table {...TABLE} className={`${sheet.table} ${lines.lines} ${lines.figures}`}>
          <thead {...GROUP}>
            <tr {...ROW}>
              <Head>Year</Head>
              <NumberHead name="Budget" unit={currency} />
              <NumberHead name="Spent" unit={currency} />
              <NumberHead name="Left" unit={currency} />
              <NumberHead name="Motors" />
              <NumberHead name="Present value" unit={currency} />
              {priced && <NumberHead name={`One more ${currency} brings`} unit={unit} />}
            </tr>
          </thead>
          <tbody {...GROUP}>
            {programme.years.map(({ year, budget, spent, items, shadow_price: price, net_present_value_u: u }) => (
              <tr key={year} {...ROW}>
                <th {...ROW_HEAD} scope="row">
                  {linked ? <a href={`#year-${year}`}>{year}</a> : year}
                </th>
                <td {...CELL} className={sheet.number} data-unit={`Budget, ${currency}`}>
                  {amount(budget)}
                </td>
                <td {...CELL} className={sheet.number} data-unit={`Spent, ${currency}`}>
                  {amount(spent)}
                </td>
                <td {...CELL} className={sheet.number} data-unit={`Left, ${currency}`}>
                  {amount(budget - spent)}
                </td>
                <td {...CELL} className={sheet.number} data-unit="Motors">
                  {formatCount(items.length)}
                </td>
                <td {...CELL} className={sheet.number} data-unit={`Present value, ${currency}`}>
                  <DoubtfulAmount amount={worth(items)} u={u} currency={currency} />
                </td>
                {priced && (
                  <td {...CELL} className={sheet.number} data-unit={`One more ${currency} brings, ${unit}`}>
                    {price === undefined || price < 0.005 ? 'nothing' : formatNumber(price, 2)}
                  </td>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollRegion>
    </section>
  );
}
