import type { ReactNode } from 'react';
import { FigureText } from '@/app/_ui/figure';
import { Head } from '@/app/_ui/head';
import { NumberHead } from '@/app/_ui/number-head';
import lines from '@/app/_ui/phone-lines.module.css';
import { CELL, GROUP, ROW, ROW_HEAD, TABLE } from '@/app/_ui/row-roles';
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
  const heads = headsOf(page.study.settings.currency);
  return (
    <ScrollRegion label="Options side by side">
      <table {...TABLE} className={`${styles.table} ${lines.lines} ${lines.figures}`}>
        <thead {...GROUP}>
          <tr {...ROW}>
            <Head>Option</Head>
            {Object.values(heads).map((head) => (
              <NumberHead key={head.name} {...head} className={styles.number} />
            ))}
          </tr>
        </thead>
        <tbody {...GROUP}>
          {page.result.options.map((option) => (
            <tr key={option.id} {...ROW} className={option.id === decided?.id ? styles.chosen : undefined}>
              <th {...ROW_HEAD} scope="row" className={styles.named}>
                {optionTitle(option, page.ratingUnit)}
                {option.id === decided?.id && (
                  <span className={styles.soft}> ({untilMeasured ? 'until it is measured' : 'decided'})</span>
                )}
              </th>
              <OptionCells option={option} why={why} heads={heads} horizonYears={page.study.settings.horizonYears} />
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  );
}

interface FigureHead {
  readonly name: string;
  readonly unit: string;
}

/** The columns of figures, in their order. */
function headsOf(currency: string) {
  return {
    cost: { name: 'Cost', unit: currency },
    energy: { name: 'Energy saved', unit: 'kWh a year' },
    money: { name: 'Money saved', unit: `${currency} a year` },
    payback: { name: 'Payback', unit: 'years' },
    chance: { name: 'Chance to keep policy', unit: '%' },
    worth: { name: 'Net present value', unit: currency },
    rate: { name: 'Rate of return', unit: '% a year' },
  } as const;
}

/** Why an option has no saving and no value. */
const UNKNOWN = 'hours or load not known';

interface CellsProps extends Pick<Props, 'why'> {
  readonly option: OptionResult;
  readonly heads: ReturnType<typeof headsOf>;
  readonly horizonYears: number;
}

/** What an option costs and brings, in the order of the heads. */
function OptionCells({ option, why, heads, horizonYears }: CellsProps) {
  const { action, simple_payback: payback, probability_within_policy: chance, internal_rate_of_return: rate } = option;
  const whyOf = (figure: string) => why(`options.${option.id}.${figure}`);
  return (
    <>
      <FigureCell head={heads.cost} none={action === 'keep'}>
        {action === 'keep' ? ABSENT : formatNumber(option.cost, 0)}
      </FigureCell>
      <FigureCell head={heads.energy}>
        <FigureText name="energy saved" unitInHead figure={option.energy_saved} why={whyOf('energy_saved')} reason={UNKNOWN} />
      </FigureCell>
      <FigureCell head={heads.money}>
        <FigureText name="money saved" unitInHead figure={option.money_saved} why={whyOf('money_saved')} reason={UNKNOWN} />
      </FigureCell>
      <FigureCell head={heads.payback} none={action === 'keep'}>
        <FigureText
          name="simple payback"
          unitInHead
          figure={payback}
          instead={payback && paybackWords(payback, option.money_saved, horizonYears)}
          why={whyOf('simple_payback')}
          reason={action === 'keep' ? 'nothing is spent' : 'no saving that pays it back'}
        />
      </FigureCell>
      <FigureCell head={heads.chance} none={chance === undefined}>
        {percent(chance)}
      </FigureCell>
      <FigureCell head={heads.worth}>
        <FigureText
          name="net present value"
          unitInHead
          figure={option.net_present_value}
          why={whyOf('net_present_value')}
          reason={UNKNOWN}
        />
      </FigureCell>
      <FigureCell head={heads.rate} none={rate === undefined}>
        {percent(rate)}
      </FigureCell>
    </>
  );
}

function percent(share: number | undefined): string {
  return share === undefined ? ABSENT : formatNumber(100 * share, 0);
}

interface FigureCellProps {
  readonly head: FigureHead;
  /** There is no such figure of this option: a phone has no line for it. */
  readonly none?: boolean;
  readonly children: ReactNode;
}

/** A figure under the head of its column, which a phone writes with it. */
function FigureCell({ head: { name, unit }, none = false, children }: FigureCellProps) {
  return (
    <td {...CELL} className={none ? `${styles.number} ${lines.none}` : styles.number} data-unit={`${name}, ${unit}`}>
      {children}
    </td>
  );
}
