import Link from 'next/link';
import { formatCount } from '@/lib/platform/format';
import lines from './phone-lines.module.css';

interface Props {
  readonly shown: number;
  readonly total: number;
  /** The same page with its lists to their end. */
  readonly href: string;
}

/** Says how much of a list is shown, with the way to all of it; nothing where all is shown. */
export function More({ shown, total, href }: Props) {
  if (shown >= total) return null;
  return (
    <p>
      Here are {formatCount(shown)} of {formatCount(total)}.{' '}
      <Link href={href} prefetch={false} className="screen-only">
        Show all lists to their end
      </Link>
    </p>
  );
}

/** Lines of a list that are in the page for paper alone: with those of thousands of motors it would weigh megabytes. */
const MOST_ON_PAPER = 500;

/** A list of which a screen shows the first lines, and paper all or nearly all: each line with the class that says so. */
export function rowsForPaper<Row>(rows: readonly Row[], most: number): readonly { row: Row; className: string | undefined }[] {
  return rows
    .slice(0, Math.max(most, MOST_ON_PAPER))
    .map((row, at) => ({ row, className: at < most ? undefined : 'print-only' }));
}

/** How much of such a list is shown: said on a screen, and on paper where even that has not all. */
export function MoreThanOnPaper({ shown, total, href }: Props) {
  const onPaper = Math.max(shown, MOST_ON_PAPER);
  return (
    <>
      <div className="screen-only">
        <More href={href} shown={shown} total={total} />
      </div>
      {onPaper < total && (
        <p className="print-only">
          Here are {formatCount(onPaper)} of {formatCount(total)}: with all lists shown to their end on the screen, paper has them
          too.
        </p>
      )}
    </>
  );
}

/** Lines of a table that a phone shows at first, where each is several lines of text. */
const FIRST_ON_PHONE = 25;

/** The class of a row by its place from 0: after the first few a phone leaves it out, until all are asked for. */
export function rowOnPhone(at: number, all: boolean): string | undefined {
  return all || at < FIRST_ON_PHONE ? undefined : lines.beyond;
}

/** On a phone alone: how much of such a table is shown, with the way to all of it. */
export function MoreOnPhone({ total, all, href }: Pick<Props, 'total' | 'href'> & { readonly all: boolean }) {
  if (all) return null;
  return (
    <div className={lines.rest}>
      <More href={href} shown={FIRST_ON_PHONE} total={total} />
    </div>
  );
}
