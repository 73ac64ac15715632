import { ChartLine } from '@/app/_ui/chart-line';
import { Head } from '@/app/_ui/head';
import { MotorCell } from '@/app/_ui/motor-cell';
import { NumberHead } from '@/app/_ui/number-head';
import lines from '@/app/_ui/phone-lines.module.css';
import { CELL, GROUP, ROW, TABLE } from '@/app/_ui/row-roles';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import type { PlannedProgramme } from '@/lib/features/plan/loaders';
import { formatAmount, formatCount, formatNumber } from '@/lib/platform/format';

interface Props {
  readonly study: string;
  readonly currency: string;
  readonly motorIds: ReadonlyMap<string, string>;
  readonly programme: PlannedProgramme;
  /** An amount of the plan's objective in words. */
  readonly worth: (amount: number) => string;
}

/** What each limit of hours leaves, and what one more hour would bring. */
export function Hours({ programme, worth }: Pick<Props, 'programme' | 'worth'>) {
  const { limits = [] } = programme;
  if (limits.length === 0) return null;
  return (
    <section className={sheet.section} aria-labelledby="hours">
      <h2 id="hours">Hours by area</h2>
      <ScrollRegion label="Limits of hours">
        <table className={sheet.table}>
          <thead>
            <tr>
              <th scope="col">Where</th>
              <th scope="col">Year</th>
              <th scope="col">Hours of</th>
              <NumberHead name="Limit" unit="h" />
              <NumberHead name="Taken" unit="h" />
              <NumberHead name="One more hour brings" />
            </tr>
          </thead>
          <tbody>
            {limits.map(({ kind, name, year, limit, used, shadow_price: price }) => (
              <tr key={`${kind} ${name} ${year}`}>
                <th scope="row">{name}</th>
                <td>{year}</td>
                <td>{kind}</td>
                <td className={sheet.number}>{formatNumber(limit, 0)}</td>
                <td className={sheet.number}>{formatNumber(used, 0)}</td>
                <td className={sheet.number}>{price < 0.005 ? 'nothing' : worth(price)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollRegion>
    </section>
  );
}

/** What the best plan is worth at other budgets. */
export function OtherBudgets({ programme, currency, worth }: Pick<Props, 'programme' | 'currency' | 'worth'>) {
  const points = (programme.frontier ?? []).flatMap(({ budget, value, spent, multiple }) =>
    value === undefined || spent === undefined ? [] : [{ budget, value, spent, multiple }],
  );
  const [first] = points;
  const last = points.at(-1);
  if (!first || !last || points.length < 2) return null;
  const now = points.find(({ multiple }) => multiple === 1);
  const unit = { energy: 'kWh a year', emissions: 'kg of CO₂ a year' }[programme.objective] ?? currency;
  const more = last.value - (now?.value ?? first.value);
  return (
    <section className={sheet.section} aria-labelledby="other-budgets">
      <h2 id="other-budgets">Other budgets</h2>
      <ChartLine
        sentence={
          more < 0.5
            ? 'More money would bring nothing more: all that is worth it is in the plan.'
            : `${formatNumber(last.multiple, 2)} times the money would bring ${worth(more)} more.`
        }
        points={points.map(({ budget, value }) => ({ at: budget, value }))}
        across={`budget of all years, ${currency}`}
        up={`worth of the best plan, ${unit}`}
        mark={now && { at: now.budget, words: 'as it is' }}
      />
      <ScrollRegion label="Plans at other budgets">
        <table className={sheet.table}>
          <thead>
            <tr>
              <NumberHead name="Times the budget" />
              <NumberHead name="Budget" unit={currency} />
              <NumberHead name="Spent" unit={currency} />
              <NumberHead name="Worth" />
            </tr>
          </thead>
          <tbody>
            {points.map(({ multiple, budget, spent, value }) => (
              <tr key={multiple}>
                <th scope="row" className={sheet.number}>
                  {formatNumber(multiple, 2)}
                </th>
                <td className={sheet.number}>{formatAmount(budget, currency)}</td>
                <td className={sheet.number}>{formatAmount(spent, currency)}</td>
                <td className={sheet.number}>{worth(value)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollRegion>
    </section>
  );
}

const ABOUT = { load: 'its load', hours: 'its hours a year', efficiency: 'its efficiency' } as const;

/** Readings that could change what is chosen, those first that bring most beyond their cost. */
export function MeasureNext({ programme, currency, study, motorIds }: Props) {
  const worthIt = (programme.measure_next ?? []).filter(({ net }) => net > 0);
  if (programme.measure_next === undefined) return null;
  const amount = (value: number) => formatAmount(value, currency);
  return (
    <section className={sheet.section} aria-labelledby="measure-next">
      <h2 id="measure-next">What to measure next</h2>
      {worthIt.length === 0 ? (
        <p>No reading is worth its cost: none is likely enough to change what is done with a motor.</p>
      ) : (
        <>
          <p>
            {formatCount(worthIt.length)} {worthIt.length === 1 ? 'reading is' : 'readings are'} worth more than{' '}
            {worthIt.length === 1 ? 'it costs' : 'they cost'}, since what {worthIt.length === 1 ? 'it shows' : 'they show'} may
            change what is done. A reading is worth at most what perfect knowledge would be.
          </p>
          <ScrollRegion label="Readings worth taking">
            <table {...TABLE} className={`${sheet.table} ${lines.lines} ${lines.figures}`}>
              <thead {...GROUP}>
                <tr {...ROW}>
                  <Head>Motor</Head>
                  <Head>Measure</Head>
                  <NumberHead name="Perfect knowledge is worth" unit={currency} />
                  <NumberHead name="The reading is worth" unit={currency} />
                  <NumberHead name="It costs" unit={currency} />
                  <NumberHead name="Left over" unit={currency} />
                </tr>
              </thead>
              <tbody {...GROUP}>
                {worthIt.map((each) => (
                  <tr key={`${each.site}\n${each.tag}\n${each.about}`} {...ROW}>
                    <MotorCell study={study} motorIds={motorIds} motor={each} />
                    <td {...CELL}>{ABOUT[each.about]}</td>
                    <td {...CELL} className={sheet.number} data-unit={`Perfect knowledge is worth, ${currency}`}>
                      {amount(each.value_of_perfect)}
                    </td>
                    <td {...CELL} className={sheet.number} data-unit={`The reading is worth, ${currency}`}>
                      {amount(each.value_of_reading)}
                    </td>
                    <td {...CELL} className={sheet.number} data-unit={`It costs, ${currency}`}>
                      {amount(each.cost)}
                    </td>
                    <td {...CELL} className={sheet.number} data-unit={`Left over, ${currency}`}>
                      {amount(each.net)}
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </ScrollRegion>
        </>
      )}
    </section>
  );
}
