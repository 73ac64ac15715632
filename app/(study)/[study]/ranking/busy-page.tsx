import Link from 'next/link';
import sheet from '@/app/_ui/sheet-page.module.css';
import { BUSY_WORDS } from '@/lib/platform/threads';

/** In place of a list over the fleet while too many are being worked out. */
export function BusyPage({ study, title }: { readonly study: string; readonly title: string }) {
  return (
    <main id="main" className={sheet.main}>
      <p>
        <Link href={`/${study}/ranking`}>Ranking</Link>
      </p>
      <h1>{title}</h1>
      <p className={sheet.answer} role="status">
        {BUSY_WORDS}
      </p>
    </main>
  );
}
