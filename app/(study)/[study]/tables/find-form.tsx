import Link from 'next/link';
import sheet from '@/app/_ui/sheet-page.module.css';

interface Props {
  readonly find: string;
  readonly label: string;
  /** What was found, in words. */
  readonly found: string;
  readonly here: string;
}

/** Looks for words in tables; the address keeps them. */
export function FindForm({ find, label, found, here }: Props) {
  return (
    <search>
      <form method="get" action={here} className={sheet.bar}>
        <label htmlFor="find">{label}</label>
        <input id="find" name="find" type="search" defaultValue={find} autoComplete="off" />
        <button type="submit">Find</button>
        {find !== '' && <Link href={here}>Show all</Link>}
      </form>
      <p className={sheet.soft} role="status">
        {found}
      </p>
    </search>
  );
}

/** The words looked for in an address. */
export function findOf(asked: string | string[] | undefined): string {
  return (Array.isArray(asked) ? asked[0] : asked)?.trim().slice(0, 200) ?? '';
}
