import Link from 'next/link';
import { FindingList } from '@/app/_ui/finding-list';
import type { OptionResult } from '@/lib/engine';
import { findingsInLabels } from '@/lib/features/fleet/screen-words';
import type { MotorPage } from '@/lib/features/motor/loaders';
import { optionTitle } from '@/lib/features/motor/words';
import { formatNumber, formatPercent } from '@/lib/platform/format';
import { CashFlow } from './cash-flow';
import styles from './motor.module.css';
import { OptionTable } from './option-table';

interface Props {
  readonly page: MotorPage;
  readonly why: (path: string) => string | undefined;
}

/** Said once above the table, not with each option. */
const SCREENING = 'screening-only';

/** The options side by side, and the cash flow of the one that was decided. */
export function MotorOptions({ page, why }: Props) {
  const { result } = page;
  const { options, decision } = result;
  const screening = options.flatMap((option) => option.findings).find((finding) => finding.code === SCREENING);
  const untilMeasured = decision.action === 'keep' && result.trust.level === 'not-usable' && screening !== undefined;
  const decided = options.find((option) => option.id === decision.option);
  const withValue = options.some((option) => option.action !== 'keep' && option.net_present_value !== undefined);
  return (
    <>
      <FindingList findings={findingsInLabels([...(screening ? [screening] : []), ...page.findings.options])} empty="" />
      <OptionTable page={page} why={why} decided={decided} untilMeasured={untilMeasured} />
      <HowCounted page={page} />
      {withValue && <WaysToMoney page={page} />}
      <Remarks page={page} decided={decided} />
      {decided && decided.action !== 'keep' && decided.cash_flow.length > 0 && (
        <CashFlow flows={decided.cash_flow} currency={page.study.settings.currency} />
      )}
    </>
  );
}

/** Against what savings and value are counted, and what the policy asks for. */
function HowCounted({ page }: Pick<Props, 'page'>) {
  const { policy, horizonYears } = page.study.settings;
  const failed = page.stored.motor.plate.status === 'failed';
  return (
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
        {formatPercent(policy.minProbability)} or better. Net present value over {horizonYears} years. ± is the 95 % interval; a
        payback of “or never” belongs to a saving that may be nothing.
      </li>
    </ul>
  );
}

/** The ways to the page about the money, and to its workbook. */
function WaysToMoney({ page }: Pick<Props, 'page'>) {
  return (
    <p className={`${styles.soft} screen-only`}>
      <Link href={`/${page.study.id}/motor/${page.stored.id}/money`} prefetch={false}>
        What the money hangs on
      </Link>
      : when it is back, prices and hours at which it stops being worth it. For finance:{' '}
      <a href={`/api/studies/${page.study.id}/workbook?motor=${page.stored.id}`}>a workbook with live formulas</a>.
    </p>
  );
}

interface RemarksProps extends Pick<Props, 'page'> {
  readonly decided: OptionResult | undefined;
}

/** What is to be said of single options; open at the one that was decided. */
function Remarks({ page, decided }: RemarksProps) {
  return page.result.options.map((option) => {
    const remarks = option.findings.filter((finding) => finding.code !== SCREENING);
    if (remarks.length === 0 || option.action === 'keep') return null;
    return (
      <details key={option.id} open={option.id === decided?.id}>
        <summary>
          {optionTitle(option, page.ratingUnit)}: {remarks.length === 1 ? '1 remark' : `${remarks.length} remarks`}
        </summary>
        <FindingList findings={findingsInLabels(remarks)} empty="" />
      </details>
    );
  });
}
