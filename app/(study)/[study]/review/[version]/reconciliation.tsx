import Link from 'next/link';
import { NumberHead } from '@/app/_ui/number-head';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { agrees, type Content, reconcile, type workbookOf } from '@/lib/features/sign-off/loaders';
import { formatAmount, formatCount } from '@/lib/platform/format';
import { fromMinor } from '@/lib/platform/money';

interface Props {
  readonly content: Content;
  readonly study: string;
  readonly number: number;
  /** The workbook as its formulas come to; absent where it was not worked out, `changed` where it cannot be any more. */
  readonly workbook: Awaited<ReturnType<typeof workbookOf>> | undefined;
}

/** The same sums by ways of their own, to the minor unit, and whether they agree. */
export function Reconciliation({ content, study, number, workbook }: Props) {
  const { currency } = content.settings;
  const sums = reconcile(content, workbook === 'changed' ? undefined : workbook);
  const amount = (minor: bigint) => formatAmount(fromMinor(minor, currency), currency, undefined, true);
  return (
    <section className={sheet.section} aria-labelledby="reconciliation">
      <h2 id="reconciliation">Reconciliation</h2>
      <p className={agrees(sums) ? undefined : sheet.caution}>
        {agrees(sums)
          ? 'All sums agree to the last digit of money.'
          : 'The sums do not agree: do not rely on this version before it is known why.'}{' '}
        <span className="screen-only">
          Take the programme along as{' '}
          <a href={`/api/studies/${study}/versions/${number}/csv`} download>
            CSV
          </a>
          .
        </span>{' '}
        {workbook === undefined && (
          <Link href={`/${study}/review/${number}?workbook=1#reconciliation`} prefetch={false} className="screen-only">
            Work the workbook out as well
          </Link>
        )}
        {workbook === 'changed' &&
          'The workbook is not among them: engine or tables are no longer those that the version was frozen with.'}
      </p>
      <ScrollRegion label="Sums by their source">
        <table className={sheet.table}>
          <thead>
            <tr>
              <th scope="col">Summed from</th>
              <NumberHead name="Motors" />
              <NumberHead name="Cost" unit={currency} />
              <NumberHead name="Present value" unit={currency} />
            </tr>
          </thead>
          <tbody>
            {sums.map(({ from, motors, cost, worth }) => (
              <tr key={from}>
                <th scope="row">{from}</th>
                <td className={sheet.number}>{formatCount(motors)}</td>
                <td className={sheet.number}>{amount(cost)}</td>
                <td className={sheet.number}>{amount(worth)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollRegion>
    </section>
  );
}
