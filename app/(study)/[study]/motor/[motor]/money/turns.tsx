import sheet from '@/app/_ui/sheet-page.module.css';
import type { MoneyPage } from '@/lib/features/motor/money-loader';
import { formatMoney } from '@/lib/platform/format';

interface Props {
  readonly turnings: MoneyPage['turnings'];
  /** Net present value of the decided option; 0 of one that is kept. */
  readonly decidedValue: number;
  readonly currency: string;
}

/** The decision, its best rival, and the nearest changes that would turn it. */
export function Turns({ turnings, decidedValue, currency }: Props) {
  const { runnerUp, runnerUpTitle, decidedTitle, turnings: found } = turnings;
  const held = runnerUp !== undefined && runnerUp.value > decidedValue;
  return (
    <section className={sheet.section} aria-labelledby="turns">
      <h2 id="turns">What would turn the decision</h2>
      <p>
        Decided: {decidedTitle}.{' '}
        {runnerUp
          ? `${held ? 'Worth more, but held back by the policy, the trust or a check' : 'Of the others, the one worth most'}: ${runnerUpTitle ?? runnerUp.words}, ${formatMoney(runnerUp.value, currency)}.`
          : 'No other option has a value.'}
      </p>
      {found.length === 0 ? (
        <p>
          Nothing tried turns it: energy, hours, what is bought and the load, each by itself from a quarter of what it is now to
          four times.
        </p>
      ) : (
        <ul>
          {found.map(({ lever, text }) => (
            <li key={lever}>{text}</li>
          ))}
        </ul>
      )}
      <p className={sheet.soft}>
        The nearest change comes first. Each is tried by itself, with the motor evaluated again in full.
      </p>
    </section>
  );
}
