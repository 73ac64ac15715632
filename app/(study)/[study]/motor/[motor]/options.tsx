import { FigureText } from '@/app/_ui/figure';
import { FindingList } from '@/app/_ui/finding-list';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import type { OptionResult, UnrankedMotor } from '@/lib/engine';
import { formatMoney, formatNumber } from '@/lib/platform/format';
import styles from './motor.module.css';

interface Props {
  readonly result: UnrankedMotor;
  readonly currency: string;
  readonly why: (path: string) => string | undefined;
}

const NAMES = { keep: 'Keep', repair: 'Repair', replace: 'Replace', resize: 'Resize' } as const;

/** What an option is, in words. */
function nameOf(option: OptionResult): string {
  if (option.action === 'keep') return 'Keep';
  const rating =
    option.action === 'repair'
      ? ''
      : ` by ${formatNumber(option.rated_power_kw, option.rated_power_kw < 10 ? 1 : 0)} kW ${option.efficiency_class ?? ''}`;
  return `${NAMES[option.action]}${rating}, ${option.timing === 'now' ? 'now' : 'at failure'}`;
}

/** The options side by side, and the cash flow of the one that was decided. */
export function MotorOptions({ result, currency, why }: Props) {
  const decided = result.options.find((option) => option.id === result.decision.option);
  const withFindings = result.options.filter((option) => option.findings.length > 0 && option.action !== 'keep');
  return (
    <>
      <ScrollRegion label="Options side by side">
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">Option</th>
              <th scope="col" className={styles.number}>
                Cost, {currency}
              </th>
              <th scope="col" className={styles.number}>
                Energy saved, kWh/a
              </th>
              <th scope="col" className={styles.number}>
                Money saved, {currency}/a
              </th>
              <th scope="col" className={styles.number}>
                Payback, a
              </th>
              <th scope="col" className={styles.number}>
                Odds within policy
              </th>
              <th scope="col" className={styles.number}>
                Net present value, {currency}
              </th>
              <th scope="col" className={styles.number}>
                Rate of return
              </th>
            </tr>
          </thead>
          <tbody>
            {result.options.map((option) => (
              <tr key={option.id} className={option.id === decided?.id ? styles.chosen : undefined}>
                <th scope="row">
                  {nameOf(option)}
                  {option.id === decided?.id && <span className={styles.soft}> (decided)</span>}
                </th>
                <td className={styles.number}>{formatMoney(option.cost, currency)}</td>
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
                    why={why(`options.${option.id}.simple_payback`)}
                    reason="no saving that pays it back"
                  />
                </td>
                <td className={styles.number}>
                  {option.probability_within_policy === undefined
                    ? '—'
                    : `${formatNumber(100 * option.probability_within_policy, 0)} %`}
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
                  {option.internal_rate_of_return === undefined
                    ? '—'
                    : `${formatNumber(100 * option.internal_rate_of_return, 0)} %`}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollRegion>
      {withFindings.map((option) => (
        <details key={option.id} open={option.id === decided?.id}>
          <summary>
            {nameOf(option)}: {option.findings.length === 1 ? '1 remark' : `${option.findings.length} remarks`}
          </summary>
          <FindingList findings={option.findings} empty="" />
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
                      {formatMoney(flow, currency)}
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
