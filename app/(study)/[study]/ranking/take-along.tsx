import Link from 'next/link';
import { addressOf } from '@/app/_ui/address';

interface Props {
  readonly study: string;
  /** What the address asks of the ranking. */
  readonly asked: Readonly<Record<string, string | undefined>>;
  readonly isWhole: boolean;
}

/** The ranking as files, and the lists that lie behind it. */
export function TakeAlong({ study, asked, isWhole }: Props) {
  const file = (format: 'csv' | 'xlsx') => addressOf(`/api/studies/${study}/results/${format}`, { ...asked, sort: 'rank' });
  return (
    <span className="screen-only">
      Take {isWhole ? 'the ranking' : 'these motors'} along: <a href={file('csv')}>CSV</a>, <a href={file('xlsx')}>XLSX</a>. For
      finance: <a href={`/api/studies/${study}/workbook`}>every option of the whole fleet as a workbook with live formulas</a>.{' '}
      <Link href={`/${study}/ranking/repair`} prefetch={false}>
        Repair or replace, by rating and hours
      </Link>
      ;{' '}
      <Link href={`/${study}/ranking/spares`} prefetch={false}>
        which spares to keep on the shelf
      </Link>
      ;{' '}
      <Link href={`/${study}/ranking/measures`} prefetch={false}>
        what else is worth doing beside new motors
      </Link>
      .
    </span>
  );
}
