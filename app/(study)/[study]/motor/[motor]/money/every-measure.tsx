import { FoldOnPhone } from '@/app/_ui/fold-on-phone';
import { Head } from '@/app/_ui/head';
import { NumberHead } from '@/app/_ui/number-head';
import lines from '@/app/_ui/phone-lines.module.css';
import { CELL, GROUP, ROW, ROW_HEAD, TABLE } from '@/app/_ui/row-roles';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import type { Stated } from '@/lib/engine';
import type { MoneyPage } from '@/lib/features/motor/money-loader';
import { rateText, stepWords } from '@/lib/features/motor/worth-words';
import { ABSENT, formatMoney, formatNumber, formatPercent } from '@/lib/platform/format';

const HEADS = {
  internal: 'Rate of return',
  modified: 'Modified rate',
  adjusted: 'Adjusted rate',
  ratio: 'Savings to investment',
  lifeCycle: 'Life-cycle cost',
} as const;

/** The options by the measures that finance asks for, and what each dearer one adds to the cheaper ones. */
export function EveryMeasure({ page }: { readonly page: MoneyPage }) {
  const { worth, titles, study } = page;
  const { currency, horizonYears, discountRate } = study.settings;
  const titleOf = (id: string) => titles.get(id) ?? id;
  const reasons = worth.options.flatMap(({ id, ...measures }) =>
    [measures.internalRate, measures.modifiedRate, measures.adjustedRate].flatMap((stated) =>
      stated.kind === 'value' ? [] : [`${titleOf(id)}: ${stated.text}`],
    ),
  );
  const { baseline } = worth;
  return (
    <section className={sheet.section} aria-labelledby="measures-of-worth">
      <h2 id="measures-of-worth">By every measure</h2>
      <ScrollRegion label="Options by every measure">
        <table {...TABLE} className={`${sheet.table} ${sheet.short} ${lines.lines} ${lines.figures}`}>
          <thead {...GROUP}>
            <tr {...ROW}>
              <Head>Option</Head>
              <NumberHead name={HEADS.internal} unit="a year" />
              <NumberHead name={HEADS.modified} unit="a year" />
              <NumberHead name={HEADS.adjusted} unit="a year" />
              <NumberHead name={HEADS.ratio} />
              <NumberHead name={HEADS.lifeCycle} unit={currency} />
            </tr>
          </thead>
          <tbody {...GROUP}>
            {worth.options.map(({ id, internalRate, modifiedRate, adjustedRate, lifeCycleCost }) => {
              const ratio = page.options.find(({ option }) => option.id === id)?.option.savings_to_investment;
              return (
                <tr key={id} {...ROW}>
                  <th {...ROW_HEAD} scope="row">
                    {titleOf(id)}
                  </th>
                  <Rate stated={internalRate} name={HEADS.internal} />
                  <Rate stated={modifiedRate} name={HEADS.modified} />
                  <Rate stated={adjustedRate} name={HEADS.adjusted} />
                  <td {...CELL} className={sheet.number} data-unit={HEADS.ratio}>
                    {ratio === undefined ? ABSENT : formatNumber(ratio, 2)}
                  </td>
                  <td {...CELL} className={sheet.number} data-unit={`${HEADS.lifeCycle}, ${currency}`}>
                    {lifeCycleCost === undefined ? ABSENT : formatNumber(lifeCycleCost, 0)}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </ScrollRegion>
      {baseline && (
        <p>
          {`Doing only what is done anyway costs ${formatMoney(baseline.total, currency)} over ${horizonYears} years, as of today: ${formatMoney(baseline.running, currency)} for running it, ${formatMoney(baseline.repairs, currency)} for repairs and replacements that are expected${baseline.tax === 0 ? '' : `, ${formatMoney(baseline.tax, currency)} of tax on these`}${baseline.failure === 0 ? '' : `, ${formatMoney(baseline.failure, currency)} for unplanned stops`}${baseline.valueLeft > -0.5 ? '' : `, less ${formatMoney(-baseline.valueLeft, currency)} that it is still worth in the end`}.`}
        </p>
      )}
      {reasons.length > 0 && (
        <FoldOnPhone what="Why some of these rates do not exist">
          <ul data-folds className={sheet.soft}>
            {[...new Set(reasons)].map((reason) => (
              <li key={reason}>{reason}</li>
            ))}
          </ul>
        </FoldOnPhone>
      )}
      <h3>What each dearer option adds</h3>
      <ol>
        {worth.steps.increments.map((step) => (
          <li key={step.to}>{stepWords(step, titleOf, currency)}</li>
        ))}
      </ol>
      <p className={sheet.soft}>
        {`The rate of return is the discount rate at which an option would be worth nothing; savings to investment is what it brings over what is put into it, both as of today; the life-cycle cost is all that is spent on the motor over ${horizonYears} years with it, as of today. The modified rate takes what comes in as invested again at ${formatPercent(discountRate, 1)} a year; the adjusted one follows from the ratio of savings to investment. Options are compared by value and by what each adds, never by their rates, which favour the small ones. The order here is by value alone: the decision also keeps the payback policy.`}
      </p>
    </section>
  );
}

function Rate({ stated, name }: { readonly stated: Stated; readonly name: string }) {
  return (
    <td {...CELL} className={sheet.number} data-unit={`${name}, a year`}>
      {rateText(stated) ?? ABSENT}
    </td>
  );
}
