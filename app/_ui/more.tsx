import Link from 'next/link';
import { formatCount } from '@/lib/platform/format';

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
