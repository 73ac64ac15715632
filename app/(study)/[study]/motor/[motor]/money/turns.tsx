import sheet from '@/app/_ui/sheet-page.module.css';
import type { MoneyPage } from '@/lib/features/motor/money-loader';
import { formatMoney } from '@/lib/platform/format';

/** The decision, its best rival, and the nearest changes that would turn it. */
export function Turns({ turnings, currency }: { readonly turnings: MoneyPage['turnings']; readonly currency: string }) {
  const { runnerUp, runnerUpTitle, decidedTitle, turnings: found } = turnings;
  return (
    <section className={sheet.section} aria-labelledby="turns">
      <h2 id="turns">What would turn the decision</h2>
      <p>
        Decided: {decidedTitle}.{' '}
        {runnerUp
          ? `Of the others, the one worth most is: ${runnerUpTitle ?? runnerUp.words}, ${formatMoney(runnerUp.value, currency)}.`
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
