import Link from 'next/link';
import sheet from '@/app/_ui/sheet-page.module.css';
import type { Settings } from '@/lib/engine';
import type { DecisionSum, RankingSum } from '@/lib/features/ranking/schema';
import { counted, formatCount, formatFigure, formatMoney, formatNumber, formatPercent } from '@/lib/platform/format';

interface Props {
  readonly sum: RankingSum;
  readonly settings: Settings;
  readonly study: string;
}

/** That nothing is worth doing now, and that so much was not found where nothing could be told. */
function nothingPays({ hoursUnknown, total, notUsable }: RankingSum): string {
  return hoursUnknown === 0 || hoursUnknown < total - notUsable
    ? 'No motor is worth replacing before it fails under this policy.'
    : 'No saving can be told yet: for how many hours a year these motors run is not known.';
}

/** What the fleet's decisions come to: money and motors now in one sentence, then what can wait, and who is left out and why. */
export function Answer({ sum, settings, study }: Props) {
  const { currency, policy } = settings;
  const add = (groups: readonly DecisionSum[], pick: (group: DecisionSum) => number) =>
    groups.reduce((total, group) => total + pick(group), 0);
  const isChange = (group: DecisionSum) => group.action === 'replace' || group.action === 'resize';
  const now = sum.groups.filter((group) => isChange(group) && group.timing === 'now');
  const later = sum.groups.filter((group) => isChange(group) && group.timing === 'at-failure');
  const repair = sum.groups.find((group) => group.action === 'repair')?.count ?? 0;
  const count = add(now, (group) => group.usable);
  const waiting = add(later, (group) => group.usable);
  const amount = (pick: (group: DecisionSum) => number) => formatMoney(add(now, pick), currency);
  const odds = formatPercent(policy.minProbability);
  const failed = count - sum.withinPolicy;
  return (
    <>
      <p className={sheet.answer}>
        {count === 0 ? (
          nothingPays(sum)
        ) : (
          <>
            Replacing <strong>{formatCount(count)}</strong> {count === 1 ? 'motor' : 'motors'} now costs{' '}
            <strong>{amount((group) => group.cost)}</strong> and saves{' '}
            <strong>{formatFigure({ ...sum.savedNow, unit: currency }).text}</strong> a year, worth{' '}
            {amount((group) => group.value)} over {settings.horizonYears} years.
          </>
        )}
      </p>
      <p>
        {count > 0 &&
          `${formatCount(sum.withinPolicy)} of them ${sum.withinPolicy === 1 ? 'pays' : 'pay'} back within the policy: in ${formatNumber(policy.maxSimplePaybackYears, 1)} years at most, with a chance of ${odds} or better. `}
        {count > 0 &&
          failed > 0 &&
          `The other ${failed === 1 ? 'one has' : `${formatCount(failed)} have`} failed, so that something must be done in any case. `}
        {waiting > 0 &&
          `${formatCount(waiting)} more ${waiting === 1 ? 'is' : 'are'} worth another motor once ${waiting === 1 ? 'it fails' : 'they fail'}, ${formatMoney(
            add(later, (group) => group.value),
            currency,
          )} in expectation. `}
        {repair > 0 && `${formatCount(repair)} ${repair === 1 ? 'needs' : 'need'} repair whatever the energy says. `}
        {sum.hoursUnknown > 0 && (
          <>
            {`The hours a year of ${counted(sum.hoursUnknown, 'motor')} are not known, so no saving can be told of ${sum.hoursUnknown === 1 ? 'it' : 'them'}. `}
            Tick motors in <Link href={`/${study}/fleet`}>the fleet</Link> to give hours to several at once, or{' '}
            <Link href={`/${study}/import`}>import a sheet</Link> with their tags and hours.{' '}
          </>
        )}
        {sum.notUsable > 0 && (
          <>
            <Link href={`/${study}/fleet?trust=not-usable`} prefetch={false}>
              {formatCount(sum.notUsable)} {sum.notUsable === 1 ? 'motor is' : 'motors are'} not usable
            </Link>
            {' and left out of these sums: what was read of '}
            {sum.notUsable === 1 ? 'it' : 'them'}
            {' may not be used, and has to be read again.'}
          </>
        )}
      </p>
      {count > 0 && (
        <p className={sheet.soft}>
          In the ± of the sum, the error of a meter counts once for all motors that were read with it; where a reading names no
          instrument, one set of meters is taken to have served the site. All else counts as independent from motor to motor, and
          the price of energy as sure. The sum of present values has none: what motors share in them beside meters, such as the
          rate of failures, is worked out for a plan alone.
        </p>
      )}
    </>
  );
}
