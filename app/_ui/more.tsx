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
