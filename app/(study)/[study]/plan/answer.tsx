import Link from 'next/link';
import { LowCase } from '@/app/_ui/low-case';
import sheet from '@/app/_ui/sheet-page.module.css';
import { SumDoubt } from '@/app/_ui/sum-doubt';
import type { Settings } from '@/lib/engine';
import { beyondPolicy, type PlannedProgramme } from '@/lib/features/plan/loaders';
import { counted, formatCount, formatFigure, formatMoney, formatNumber, formatPercent } from '@/lib/platform/format';

interface Props {
  readonly programme: PlannedProgramme;
  readonly settings: Settings;
  readonly study: string;
}

/** What an amount of the objective is called; money where the plan is best by money. */
export function worthWords(amount: number, objective: string, currency: string): string {
  if (objective === 'energy') return `${formatNumber(amount, 0)}\u202fkWh a year`;
  if (objective === 'emissions') return `${formatNumber(amount, 0)}\u202fkg of CO₂ a year`;
  return formatMoney(amount, currency);
}

/** The plan in a sentence, then how good it is: proven gap, the plain list beside it, and what the wishes cost. */
export function Answer({ programme, settings, study }: Props) {
  const { currency, horizonYears } = settings;
  const { objective, value, bound, gap, greedy_value: greedy, value_without_wishes: free, years } = programme;
  const items = years.flatMap((year) => year.items);
  const worth = (amount: number) => worthWords(amount, objective, currency);
  const sum = (pick: (item: (typeof items)[number]) => number | undefined) =>
    items.reduce((total, item) => total + (pick(item) ?? 0), 0);
  const spent = years.reduce((total, year) => total + year.spent, 0);
  const { net_present_value_u: doubt, energy_saved: energy } = programme;
  const worthInAll = (amount: number) =>
    doubt === undefined ? formatMoney(amount, currency) : formatFigure({ value: amount, u: doubt, unit: currency }).text;
  const saved = energy
    ? formatFigure({ value: energy.value / 1000, u: energy.u / 1000, unit: 'MWh' }).text
    : `${formatNumber(sum((item) => item.energy_saved?.value) / 1000, 0)}\u202fMWh`;
  const shown = 100 * gap < 0.001 ? 'less than 0.001' : formatNumber(100 * gap, 3);
  const more = value - greedy;
  const { policy } = settings;
  const later = beyondPolicy(programme, settings);
  return (
    <>
      <p className={sheet.answer}>
        {items.length === 0 ? (
          <>
            Nothing is funded: no option of any motor is worth its money within these budgets.{' '}
            <Link href={`/${study}/ranking`}>The ranking</Link> says why, motor by motor.
          </>
        ) : (
          <>
            <strong>{formatCount(items.length)}</strong> {items.length === 1 ? 'motor is' : 'motors are'} funded in{' '}
            {counted(years.length, 'year')} for <strong>{formatMoney(spent, currency)}</strong>, worth{' '}
            <strong>{worthInAll(sum((item) => item.net_present_value))}</strong> over {horizonYears} years; once all is done they
            save {saved} a year.
          </>
        )}
      </p>
      <p>
        No plan within these limits can bring more than {worth(bound)}; this one brings {worth(value)}, so that it is within{' '}
        {shown} % of the best there is.{' '}
        {Math.abs(more) < 0.5
          ? 'Taking the motors in the order of their rank brings the same. '
          : `Taking the motors in the order of their rank, each in the first year with room, ${more > 0 ? `brings ${worth(more)} less` : `brings ${worth(-more)} more, because it does not heed what was wished`}. `}
        {free !== undefined &&
          (free - value < 0.5
            ? 'What was wished costs nothing. '
            : `What was wished costs ${worth(free - value)} against the plan without wishes. `)}
        {later > 0 &&
          `${formatCount(later)} of the motors do not pay back as the policy wants it for a change now (${formatNumber(policy.maxSimplePaybackYears, 1)} years with a chance of ${formatPercent(policy.minProbability)}): the ranking goes by that, or where a repair is needed anyway by what a new motor costs beyond it; a plan goes by what they bring within its budgets. `}
        <LowCase programme={programme} currency={currency} />
        <span className="screen-only">
          <Link href={`/${study}/review`} prefetch={false}>
            Freeze it for review
          </Link>{' '}
          once it is as you want it.{' '}
          <Link href={`/${study}/plan/report`} prefetch={false}>
            Open a draft of the report to print
          </Link>
          , or take the plan along as{' '}
          <a href={`/api/studies/${study}/plan/csv`} download>
            CSV
          </a>
          .
        </span>
      </p>
      <SumDoubt known={doubt !== undefined} />
    </>
  );
}
