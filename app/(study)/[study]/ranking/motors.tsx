import Link from 'next/link';
import { FigureText } from '@/app/_ui/figure';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { TrustMark } from '@/app/_ui/trust-mark';
import type { RankedMotor } from '@/lib/features/ranking/schema';
import { ABSENT, formatNumber } from '@/lib/platform/format';
import { decisionWords } from './decisions';

interface Props {
  readonly motors: readonly RankedMotor[];
  readonly study: string;
  readonly currency: string;
  readonly manySites: boolean;
}

/** The motors in rank order, with what was decided and why. */
export function Motors({ motors, study, currency, manySites }: Props) {
  return (
    <ScrollRegion label="Motors in rank order">
      <table className={sheet.table}>
        <thead>
          <tr>
            <th scope="col" className={sheet.number}>
              Rank
            </th>
            <th scope="col">Motor</th>
            <th scope="col">Decision</th>
            <Head name="Cost" unit={currency} />
            <Head name="Saving" unit={`${currency}/a`} />
            <Head name="Payback" unit="a" />
            <Head name="Odds" unit="%" />
            <Head name="Present value" unit={currency} />
            <th scope="col">Trust</th>
            <th scope="col" className={sheet.because}>
              Because
            </th>
          </tr>
        </thead>
        <tbody>
          {motors.map((motor) => (
            <tr key={motor.rank}>
              <td className={sheet.number}>{motor.rank}</td>
              <th scope="row">
                {motor.motorId === undefined ? (
                  motor.tag
                ) : (
                  <Link href={`/${study}/motor/${motor.motorId}`} prefetch={false}>
                    {motor.tag}
                  </Link>
                )}
                <span className={sheet.unit}>{[manySites && motor.site, motor.area].filter(Boolean).join(', ')}</span>
              </th>
              <td className={sheet.nowrap}>
                {decisionWords(motor.action, motor.timing)}
                {motor.bought && <span className={sheet.unit}>{boughtWords(motor.bought)}</span>}
              </td>
              <td className={sheet.number}>
                {motor.cost === undefined || motor.action === 'keep' ? ABSENT : formatNumber(motor.cost, 0)}
              </td>
              <Amount
                motor={motor}
                study={study}
                figure="money_saved"
                name="saving"
                value={motor.moneySaved}
                u={motor.moneySavedU}
              />
              <Amount
                motor={motor}
                study={study}
                figure="simple_payback"
                name="payback"
                value={motor.payback}
                u={motor.paybackU}
              />
              <td className={sheet.number}>{motor.odds === undefined ? ABSENT : formatNumber(100 * motor.odds, 0)}</td>
              <Amount
                motor={motor}
                study={study}
                figure="net_present_value"
                name="present value"
                value={motor.value}
                u={motor.valueU}
              />
              <td>
                <TrustMark level={motor.trust} />
              </td>
              <td className={sheet.because}>{motor.because.join(' ')}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  );
}

function boughtWords({ ratedPowerKw, efficiencyClass }: NonNullable<RankedMotor['bought']>): string {
  return `${Number(ratedPowerKw.toPrecision(3))}\u202fkW ${efficiencyClass ?? ''}`.trimEnd();
}

function Head({ name, unit }: { readonly name: string; readonly unit: string }) {
  return (
    <th scope="col" className={sheet.number}>
      {name}
      <span className={sheet.unit}>{unit}</span>
    </th>
  );
}

interface AmountProps {
  readonly motor: RankedMotor;
  readonly study: string;
  /** Name of the figure among those of an option. */
  readonly figure: string;
  readonly name: string;
  readonly value: number | undefined;
  readonly u: number | undefined;
}

/** A figure of the decided option, with the way to how it is known. */
function Amount({ motor, study, figure, name, value, u }: AmountProps) {
  const kept = motor.action === 'keep' || value === undefined;
  const path = `options.${motor.option}.${figure}`;
  return (
    <td className={sheet.number}>
      <FigureText
        name={`${name} of ${motor.tag}`}
        unitInHead
        figure={kept ? undefined : { value, u: u ?? 0, unit: '1' }}
        why={motor.motorId === undefined ? undefined : `/${study}/motor/${motor.motorId}/why?figure=${encodeURIComponent(path)}`}
        reason="none for this decision"
      />
    </td>
  );
}
