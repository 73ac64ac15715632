import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import type { Programme } from '@/lib/features/sign-off/loaders';
import { formatMoney } from '@/lib/platform/format';

interface Props {
  readonly programme: Programme;
  readonly currency: string;
}

/** Budget and spend by year beside each other, with what is left. */
export function Budget({ programme, currency }: Props) {
  const money = (amount: number) => formatMoney(amount, currency, undefined, true);
  return (
    <section className={sheet.section} aria-labelledby="budget">
      <h2 id="budget">Budget and spend</h2>
      <ScrollRegion label="By year">
        <table className={sheet.table}>
          <thead>
            <tr>
              <th scope="col">Year</th>
              <th scope="col" className={sheet.number}>
                Budget
              </th>
              <th scope="col" className={sheet.number}>
                Spent
              </th>
              <th scope="col" className={sheet.number}>
                Left
              </th>
            </tr>
          </thead>
          <tbody>
            {programme.years.map(({ year, budget, spent }) => (
              <tr key={year}>
                <th scope="row">{year}</th>
                <td className={sheet.number}>{money(budget)}</td>
                <td className={sheet.number}>{money(spent)}</td>
                <td className={sheet.number}>{money(budget - spent)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollRegion>
    </section>
  );
}
