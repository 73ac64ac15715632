import type { ReactNode } from 'react';
import { BudgetYears } from '@/app/_ui/budget-years';
import { FigureText } from '@/app/_ui/figure';
import { LowCase } from '@/app/_ui/low-case';
import { NumberHead } from '@/app/_ui/number-head';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { type Drawn, reportOf } from '@/lib/features/sign-off/loaders';
import { formatCount, formatMoney } from '@/lib/platform/format';
import { Overrides } from '../overrides';
import { ByYear } from './by-year';
import { Fleet } from './fleet';
import { FundedList, Measures } from './measures';
import { Method } from './method';

interface Props {
  readonly drawn: Drawn;
  /** Which state it is of, and what vouches for it. */
  readonly standing: ReactNode;
  /** Who stands by it. */
  readonly said: ReactNode;
}

/** What a report of a programme says, frozen or not. */
export function ReportBody({ drawn: content, standing, said }: Props) {
  const { programme, settings } = content;
  const report = reportOf(content);
  const money = (amount: number) => formatMoney(amount, settings.currency, undefined, true);
  return (
    <>
      <h1>{content.study.name}: programme for its motors</h1>
      {(content.study.demo || content.prices.invented) && (
        <p>
          <strong>
            {content.study.demo
              ? 'An invented site: nothing here was measured.'
              : 'Prices are invented: put in your own before anybody decides by this.'}
          </strong>
        </p>
      )}
      <p className={sheet.answer}>
        {report.items.length === 0 ? (
          'Nothing is funded: no option of any motor is worth its money within these budgets.'
        ) : (
          <>
            {formatCount(report.items.length)} of {formatCount(report.fleet.motors)} motors for{' '}
            <strong>{money(report.all.cost)}</strong>. Once all is done they save{' '}
            <FigureText figure={report.all.energy.motors > 0 ? report.all.energy : undefined} name="energy saved" /> and{' '}
            <FigureText
              figure={report.all.money.motors > 0 ? { ...report.all.money, unit: `${settings.currency}/a` } : undefined}
              name="money saved"
            />
            ; the present value over {settings.horizon_years} years is <strong>{money(report.all.worth)}</strong>.
          </>
        )}
      </p>
      {programme.method === 'plan' && programme.low_case && (
        <p>
          <LowCase programme={programme} currency={settings.currency} />
        </p>
      )}
      {standing}
      <Overrides programme={programme} />
      <Fleet report={report} />
      <Measures report={report} currency={settings.currency} />
      <ByYear report={report} currency={settings.currency} />
      <BudgetYears programme={programme} currency={settings.currency} linked={false} />
      <section className={sheet.section} aria-labelledby="not-in">
        <h2 id="not-in">What is not in it</h2>
        {report.waiting > 0 && (
          <p>
            {formatCount(report.waiting)} {report.waiting === 1 ? 'motor is' : 'motors are'} worth another one once they fail;
            that takes none of these budgets, and its savings are not counted here.
          </p>
        )}
        {report.exclusions.length === 0 ? (
          <p>No motor is left out.</p>
        ) : (
          <ScrollRegion label="Why motors are left out">
            <table className={sheet.table}>
              <thead>
                <tr>
                  <NumberHead name="Motors" />
                  <th scope="col">Why they are left out</th>
                </tr>
              </thead>
              <tbody>
                {report.exclusions.map(({ text, motors }) => (
                  <tr key={text}>
                    <th scope="row" className={sheet.number}>
                      {formatCount(motors)}
                    </th>
                    <td>{text}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </ScrollRegion>
        )}
      </section>
      {said}
      <Method content={content} />
      <section className={sheet.section} aria-labelledby="safety">
        <h2 id="safety">Before anybody touches a motor</h2>
        <p>
          Changing or repairing a motor is work for qualified and licensed persons: isolate, lock out and prove dead, let
          capacitors and drives discharge, secure the load against turning, and set the protection anew for the new motor. The
          checks named with an option, such as starting torque and frame, come before the order. Local codes and the site’s rules
          decide.
        </p>
      </section>
      {report.items.length > 0 && <FundedList report={report} programme={programme} currency={settings.currency} />}
    </>
  );
}
