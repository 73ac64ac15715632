import Link from 'next/link';
import { FigureText } from '@/app/_ui/figure';
import lines from '@/app/_ui/phone-lines.module.css';
import { CELL, GROUP, ROW, ROW_HEAD, TABLE } from '@/app/_ui/row-roles';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { TrustMark } from '@/app/_ui/trust-mark';
import { ratingWords } from '@/lib/features/motor/words';
import type { RankedMotor } from '@/lib/features/ranking/schema';
import { type PaybackWords, paybackWords } from '@/lib/features/results/payback-words';
import { type ReaderUnits, shaftUnit } from '@/lib/features/study/reader-units';
import { ABSENT, capitalised, formatFigure, formatMoney, formatNumber, formatPercent } from '@/lib/platform/format';
import { decisionWords } from './decisions';
import { RankHeads } from './rank-heads';
import styles from './ranking.module.css';
import { Reasons } from './reasons';

interface Props {
  readonly motors: readonly RankedMotor[];
  readonly study: string;
  readonly currency: string;
  readonly manySites: boolean;
  readonly horizonYears: number;
  readonly units: ReaderUnits;
}

/** The motors in rank order, with what was decided and why. */
export function Motors({ motors, study, currency, manySites, horizonYears, units }: Props) {
  const of = (motor: RankedMotor, figure: string, name: string) => ({ motor, study, figure, name });
  return (
    <ScrollRegion label="Motors in rank order" className={styles.list}>
      <table {...TABLE} className={`${sheet.table} ${lines.lines} ${styles.table}`}>
        <thead {...GROUP}>
          <tr {...ROW}>
            <RankHeads currency={currency} reasons={sheet.because} />
          </tr>
        </thead>
        <tbody {...GROUP}>
          {motors.map((motor) => (
            <tr key={motor.rank} {...ROW}>
              <td {...CELL} className={`${sheet.number} ${styles.rank}`}>
                {motor.rank}
              </td>
              <th {...ROW_HEAD} scope="row" className={styles.motor}>
                {motor.motorId === undefined ? (
                  motor.tag
                ) : (
                  <Link href={`/${study}/motor/${motor.motorId}`} prefetch={false}>
                    {motor.tag}
                  </Link>
                )}
                <span className={sheet.unit}>{[manySites && motor.site, motor.area].filter(Boolean).join(', ')}</span>
              </th>
              <td {...CELL} className={`${sheet.nowrap} ${styles.decision}`}>
                {decisionWords(motor.action, motor.timing)}
                {motor.bought && <span className={sheet.unit}>{boughtWords(motor.bought, units)}</span>}
              </td>
              <td {...CELL} className={`${sheet.number} ${styles.more}`}>
                {motor.cost === undefined || motor.action === 'keep' ? ABSENT : formatNumber(motor.cost, 0)}
              </td>
              <Amount {...of(motor, 'money_saved', 'saving')} value={motor.moneySaved} u={motor.moneySavedU} />
              <Amount
                {...of(motor, 'simple_payback', 'payback')}
                value={motor.payback}
                u={motor.paybackU}
                instead={instead(motor, horizonYears)}
              />
              <td {...CELL} className={`${sheet.number} ${styles.more}`}>
                {motor.odds === undefined ? ABSENT : formatNumber(100 * motor.odds, 0)}
              </td>
              <Amount
                {...of(motor, 'net_present_value', 'present value')}
                place={styles.value}
                unit={currency}
                value={motor.value}
                u={motor.valueU}
              />
              <td {...CELL} className={styles.trust}>
                <TrustMark level={motor.trust} />
              </td>
              <td {...CELL} className={`${sheet.because} ${styles.because}`}>
                <div className={styles.wide}>
                  <Reasons texts={motor.because} tag={motor.tag} />
                </div>
                <details className={styles.narrow}>
                  <summary>
                    Why{motor.action === 'keep' ? '' : ', cost and payback'}
                    <span className="unseen"> of {motor.tag}</span>
                  </summary>
                  {motor.action !== 'keep' && <p>{inWords(motor, { currency, horizonYears, units })}</p>}
                  <p>{motor.because.join(' ')}</p>
                </details>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  );
}

function instead({ payback, paybackU, moneySaved, moneySavedU }: RankedMotor, horizonYears: number): PaybackWords | undefined {
  if (payback === undefined) return undefined;
  const saving = moneySaved === undefined ? undefined : { value: moneySaved, u: moneySavedU ?? 0 };
  return paybackWords({ value: payback, u: paybackU ?? 0 }, saving, horizonYears);
}

/** What the columns that a phone has no room for say of a motor. */
function inWords(
  motor: RankedMotor,
  { currency, horizonYears, units }: Pick<Props, 'currency' | 'horizonYears' | 'units'>,
): string {
  const { cost, moneySaved, moneySavedU, payback, paybackU, odds } = motor;
  const years = payback === undefined ? undefined : { value: payback, u: paybackU ?? 0, unit: 'years' };
  const parts = [
    motor.bought === undefined ? '' : `buys ${boughtWords(motor.bought, units)}`,
    cost === undefined ? '' : `costs ${formatMoney(cost, currency)}`,
    moneySaved === undefined
      ? ''
      : `saves ${formatFigure({ value: moneySaved, u: moneySavedU ?? 0, unit: currency }).text} a year`,
    years === undefined ? '' : `payback ${instead(motor, horizonYears)?.long ?? formatFigure(years).text}`,
    odds === undefined ? '' : `odds of keeping the policy ${formatPercent(odds)}`,
  ].filter((part) => part !== '');
  return parts.length === 0 ? '' : `${capitalised(parts.join('; '))}.`;
}

function boughtWords({ ratedPowerKw, efficiencyClass }: NonNullable<RankedMotor['bought']>, units: ReaderUnits): string {
  return `${ratingWords(ratedPowerKw, shaftUnit(units))} ${efficiencyClass ?? ''}`.trimEnd();
}

interface AmountProps {
  readonly motor: RankedMotor;
  readonly study: string;
  /** Name of the figure among those of an option. */
  readonly figure: string;
  readonly name: string;
  readonly value: number | undefined;
  readonly u: number | undefined;
  readonly instead?: PaybackWords | undefined;
  /** Where a phone has it; without a place it has none there. */
  readonly place?: string | undefined;
  /** Stands beside the figure on a phone, which has no head. */
  readonly unit?: string;
}

/** A figure of the decided option, with the way to how it is known. */
function Amount({ motor, study, figure, name, value, u, instead, place, unit }: AmountProps) {
  const kept = motor.action === 'keep' || value === undefined;
  const path = `options.${motor.option}.${figure}`;
  return (
    <td {...CELL} className={`${sheet.number} ${place ?? styles.more}`}>
      {unit !== undefined && <span className={`${sheet.soft} ${styles.narrow}`}>worth </span>}
      <FigureText
        name={`${name} of ${motor.tag}`}
        unitInHead
        instead={kept ? undefined : instead}
        figure={kept ? undefined : { value, u: u ?? 0, unit: '1' }}
        why={motor.motorId === undefined ? undefined : `/${study}/motor/${motor.motorId}/why?figure=${encodeURIComponent(path)}`}
        reason="none for this decision"
      />
      {unit !== undefined && <span className={`${sheet.soft} ${styles.narrow}`}>{`\u202f${unit}`}</span>}
    </td>
  );
}
