import { FigureText } from '@/app/_ui/figure';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import type { OptionResult } from '@/lib/engine';
import type { MotorPage } from '@/lib/features/motor/loaders';
import { optionTitle } from '@/lib/features/motor/words';
import { paybackWords } from '@/lib/features/results/payback-words';
import { ABSENT, formatNumber } from '@/lib/platform/format';
import styles from './motor.module.css';

interface Props {
  readonly page: MotorPage;
  /** Address of a figure's derivation, by its path in the results. */
  readonly why: (path: string) => string | undefined;
  readonly decided: OptionResult | undefined;
  /** The decision holds only until the motor is measured. */
  readonly untilMeasured: boolean;
}

/** The options side by side, with what each costs and brings. */
export function OptionTable({ page, why, decided, untilMeasured }: Props) {
  const { currency } = page.study.settings;
  return (
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
          {page.result.options.map((option) => (
            <tr key={option.id} className={option.id === decided?.id ? styles.chosen : undefined}>
              <th scope="row" className={styles.named}>
                {optionTitle(option, page.ratingUnit)}
                {option.id === decided?.id && (
                  <span className={styles.soft}> ({untilMeasured ? 'until it is measured' : 'decided'})</span>
                )}
              </th>
              <OptionCells option={option} why={why} horizonYears={page.study.settings.horizonYears} />
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
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

/** Why an option has no saving and no value. */
const UNKNOWN = 'hours or load not known';

interface CellsProps extends Pick<Props, 'why'> {
  readonly option: OptionResult;
  readonly horizonYears: number;
}

/** What an option costs and brings, in the order of the heads. */
function OptionCells({ option, why, horizonYears }: CellsProps) {
  const { action, simple_payback: payback, probability_within_policy: chance, internal_rate_of_return: rate } = option;
  const whyOf = (figure: string) => why(`options.${option.id}.${figure}`);
  return (
    <>
      <td className={styles.number}>{action === 'keep' ? ABSENT : formatNumber(option.cost, 0)}</td>
      <td className={styles.number}>
        <FigureText name="energy saved" unitInHead figure={option.energy_saved} why={whyOf('energy_saved')} reason={UNKNOWN} />
      </td>
      <td className={styles.number}>
        <FigureText name="money saved" unitInHead figure={option.money_saved} why={whyOf('money_saved')} reason={UNKNOWN} />
      </td>
      <td className={styles.number}>
        <FigureText
          name="simple payback"
          unitInHead
          figure={payback}
          instead={payback && paybackWords(payback, option.money_saved, horizonYears)}
          why={whyOf('simple_payback')}
          reason={action === 'keep' ? 'nothing is spent' : 'no saving that pays it back'}
        />
      </td>
      <td className={styles.number}>{percent(chance)}</td>
      <td className={styles.number}>
        <FigureText
          name="net present value"
          unitInHead
          figure={option.net_present_value}
          why={whyOf('net_present_value')}
          reason={UNKNOWN}
        />
      </td>
      <td className={styles.number}>{percent(rate)}</td>
    </>
  );
}

function percent(share: number | undefined): string {
  return share === undefined ? ABSENT : formatNumber(100 * share, 0);
}
