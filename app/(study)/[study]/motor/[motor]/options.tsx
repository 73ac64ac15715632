import Link from 'next/link';
import { FigureText } from '@/app/_ui/figure';
import { FindingList } from '@/app/_ui/finding-list';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import type { OptionResult } from '@/lib/engine';
import { findingsInLabels } from '@/lib/features/fleet/screen-words';
import type { MotorPage } from '@/lib/features/motor/loaders';
import { optionTitle } from '@/lib/features/motor/words';
import { paybackWords } from '@/lib/features/results/payback-words';
import { ABSENT, formatNumber } from '@/lib/platform/format';
import styles from './motor.module.css';

interface Props {
  readonly page: MotorPage;
  readonly why: (path: string) => string | undefined;
}

/** Said once above the table, not with each option. */
const SCREENING = 'screening-only';

/** The options side by side, and the cash flow of the one that was decided. */
export function MotorOptions({ page, why }: Props) {
  const { result } = page;
  const { currency, policy, horizonYears } = page.study.settings;
  const unit = page.ratingUnit;
  const nameOf = (option: OptionResult) => optionTitle(option, unit);
  const screening = result.options.flatMap((option) => option.findings).find((finding) => finding.code === SCREENING);
  const remarks = (option: OptionResult) => option.findings.filter((finding) => finding.code !== SCREENING);
  const failed = page.stored.motor.plate.status === 'failed';
  const untilMeasured = result.decision.action === 'keep' && result.trust.level === 'not-usable' && screening !== undefined;
  const decided = result.options.find((option) => option.id === result.decision.option);
  const withValue = result.options.some((option) => option.action !== 'keep' && option.net_present_value !== undefined);
  const withFindings = result.options.filter((option) => remarks(option).length > 0 && option.action !== 'keep');
  return (
    <>
      <FindingList findings={findingsInLabels([...(screening ? [screening] : []), ...page.findings.options])} empty="" />
      <ScrollRegion label="Options side by side">
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">Option</th>
              <Head name="Cost" unit={currency} />
              <Head name="Energy saved" unit="kWh a year" />
              <Head name="Money saved" unit={`${currency} a year`} />
              <Head name="Payback" unit="years" />
              <Head name="Chance to keep policy" unit="%" />
              <Head name="Net present value" unit={currency} />
              <Head name="Rate of return" unit="% a year" />
            </tr>
          </thead>
          <tbody>
            {result.options.map((option) => (
              <tr key={option.id} className={option.id === decided?.id ? styles.chosen : undefined}>
                <th scope="row" className={styles.named}>
                  {nameOf(option)}
                  {option.id === decided?.id && (
                    <span className={styles.soft}> ({untilMeasured ? 'until it is measured' : 'decided'})</span>
                  )}
                </th>
                <td className={styles.number}>{option.action === 'keep' ? ABSENT : formatNumber(option.cost, 0)}</td>
                <td className={styles.number}>
                  <FigureText
                    name="energy saved"
                    unitInHead
                    figure={option.energy_saved}
                    why={why(`options.${option.id}.energy_saved`)}
                    reason="hours or load not known"
                  />
                </td>
                <td className={styles.number}>
                  <FigureText
                    name="money saved"
                    unitInHead
                    figure={option.money_saved}
                    why={why(`options.${option.id}.money_saved`)}
                    reason="hours or load not known"
                  />
                </td>
                <td className={styles.number}>
                  <FigureText
                    name="simple payback"
                    unitInHead
                    figure={option.simple_payback}
                    instead={option.simple_payback && paybackWords(option.simple_payback, option.money_saved, horizonYears)}
                    why={why(`options.${option.id}.simple_payback`)}
                    reason={option.action === 'keep' ? 'nothing is spent' : 'no saving that pays it back'}
                  />
                </td>
                <td className={styles.number}>
                  {option.probability_within_policy === undefined
                    ? ABSENT
                    : formatNumber(100 * option.probability_within_policy, 0)}
                </td>
                <td className={styles.number}>
                  <FigureText
                    name="net present value"
                    unitInHead
                    figure={option.net_present_value}
                    why={why(`options.${option.id}.net_present_value`)}
                    reason="hours or load not known"
                  />
                </td>
                <td className={styles.number}>
                  {option.internal_rate_of_return === undefined ? ABSENT : formatNumber(100 * option.internal_rate_of_return, 0)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollRegion>
      <ul className={styles.hints}>
        {failed ? (
          <li>Savings and value are counted against the repair. It has failed, so to keep it as it is is no option.</li>
        ) : (
          <li>
            <em>Now</em> is counted against keeping it. <em>At failure</em> is counted against{' '}
            {policy.atFailure === 'repair' ? 'repairing' : 'replacing'} it then: its cost is what the new motor costs beyond the
            repair, and less than nothing where the repair is dearer.
          </li>
        )}
        <li>
          Policy: back within {formatNumber(policy.maxSimplePaybackYears, 1)} years, with a chance of{' '}
          {formatNumber(100 * policy.minProbability, 0)} % or better. Net present value over {horizonYears} years. ± is the 95 %
          interval; a payback of “or never” belongs to a saving that may be nothing.
        </li>
      </ul>
      {withValue && (
        <p className={`${styles.soft} screen-only`}>
          <Link href={`/${page.study.id}/motor/${page.stored.id}/money`} prefetch={false}>
            What the money hangs on
          </Link>
          : when it is back, prices and hours at which it stops being worth it. For finance:{' '}
          <a href={`/api/studies/${page.study.id}/workbook?motor=${page.stored.id}`}>a workbook with live formulas</a>.
        </p>
      )}
      {withFindings.map((option) => (
        <details key={option.id} open={option.id === decided?.id}>
          <summary>
            {nameOf(option)}: {remarks(option).length === 1 ? '1 remark' : `${remarks(option).length} remarks`}
          </summary>
          <FindingList findings={findingsInLabels(remarks(option))} empty="" />
        </details>
      ))}
      {decided && decided.action !== 'keep' && decided.cash_flow.length > 0 && (
        <details>
          <summary>Cash flow of what was decided, year by year</summary>
          <ScrollRegion label="Cash flow">
            <table className={styles.table}>
              <thead>
                <tr>
                  <th scope="col">Year</th>
                  {decided.cash_flow.map((_, year) => (
                    <th key={String(year)} scope="col" className={styles.number}>
                      {year}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                <tr>
                  <th scope="row">Change against the baseline, {currency}</th>
                  {decided.cash_flow.map((flow, year) => (
                    <td key={String(year)} className={styles.number}>
                      {formatNumber(flow, 0)}
                    </td>
                  ))}
                </tr>
              </tbody>
            </table>
          </ScrollRegion>
          <p className={styles.soft}>Investments fall at the start of a year, savings at its end. Year 0 is the investment.</p>
        </details>
      )}
    </>
  );
}

function Head({ name, unit }: { readonly name: string; readonly unit: string }) {
  return (
    <th scope="col" className={styles.number}>
      {name}
      <span className={styles.under}>{unit}</span>
    </th>
  );
}
