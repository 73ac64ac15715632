import Link from 'next/link';
import sheet from './sheet-page.module.css';

/** Motors with a few sentences each that one page holds: more is no list for a phone. */
export const PART = 50;

interface Props {
  readonly page: number | 'all';
  readonly last: number;
  readonly link: (page: string | undefined) => string;
  /** What it is that has pages, and the words for those before and after. */
  readonly words?: { readonly label: string; readonly before: string; readonly after: string };
  /** Whether one page may hold everything. */
  readonly whole?: boolean;
}

/** The way to the other pages, and to everything on one page for the printer. */
export function Pages({ page, last, link, words = { label: 'Pages', before: 'Before', after: 'Next' }, whole = true }: Props) {
  if (last === 1) return null;
  if (page === 'all') {
    return (
      <p className="screen-only">
        <Link href={link(undefined)}>Page by page</Link>
      </p>
    );
  }
  return (
    <nav aria-label={words.label}>
      <ul className={sheet.links}>
        {page > 1 && (
          <li>
            <Link href={link(page === 2 ? undefined : String(page - 1))}>{words.before}</Link>
          </li>
        )}
        <li>
          Page {page} of {last}
        </li>
        {page < last && (
          <li>
            <Link href={link(String(page + 1))}>{words.after}</Link>
          </li>
        )}
        {whole && (
          <li>
            <Link href={link('all')} prefetch={false}>
              All on one page, for printing
            </Link>
          </li>
        )}
      </ul>
    </nav>
  );
}

/** The page asked for in an address: its number from 1, or all of them. */
export function askedPage(asked: string | readonly string[] | undefined): number | 'all' {
  if (asked === 'all') return 'all';
  return typeof asked === 'string' ? Math.max(1, Math.trunc(Number(asked)) || 1) : 1;
}

/** The items of a page, and what there is to say of the rest. A page beyond the last is the last. */
export function partOf<T>(
  items: readonly T[],
  asked: number | 'all',
): { shown: readonly T[]; page: number | 'all'; last: number } {
  const last = Math.max(1, Math.ceil(items.length / PART));
  if (asked === 'all') return { shown: items, page: 'all', last };
  const page = Math.min(asked, last);
  return { shown: items.slice((page - 1) * PART, page * PART), page, last };
}
