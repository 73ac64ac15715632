import type { Metadata } from 'next';
import Link from 'next/link';
import type { ReactNode } from 'react';
import { addressOf } from '@/app/_ui/address';
import { Head } from '@/app/_ui/head';
import { askedPage, Pages } from '@/app/_ui/pages';
import { CELL, GROUP, ROW, ROW_HEAD, TABLE } from '@/app/_ui/row-roles';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { type HistoryPage, loadHistory } from '@/lib/features/history/loaders';
import { fieldWords } from '@/lib/features/history/words';
import { loadWho } from '@/lib/features/study/loaders';
import { formatCount, formatInstant } from '@/lib/platform/format';
import { UndoSettings } from '../undo-settings';

export const metadata: Metadata = { title: 'History' };

interface Props {
  readonly params: Promise<{ study: string }>;
  readonly searchParams: Promise<{ page?: string | string[]; on?: string | string[] }>;
}

/** What a change can concern, in words. */
const SUBJECT_WORDS: Readonly<Record<string, string>> = {
  study: 'the study',
  settings: 'settings',
  prices: 'prices',
  instrument: 'instruments',
  motor: 'motors',
  reading: 'readings',
  import: 'imports',
  programme: 'programmes',
  plan: 'the plan',
};

/** Who changed what in this study, when, from what to what, and why. */
export default async function HistoryScreen({ params, searchParams }: Props) {
  const { study } = await params;
  const search = await searchParams;
  const on = typeof search.on === 'string' && search.on !== '' ? search.on : undefined;
  const asked = askedPage(search.page);
  const { events, total, page, last, whole, subjects, undo } = await loadHistory(study, asked, on);
  const link = (on: string | undefined, wanted?: string) => addressOf(`/${study}/history`, { on, page: wanted });
  const who = await loadWho();
  const undoOf = (event: string) => {
    const batch = undo.get(event);
    return batch !== undefined && <UndoSettings study={study} who={who} batch={batch} />;
  };
  return (
    <main id="main" className={sheet.main}>
      <h1>History</h1>
      <p className={sheet.soft}>
        {total === 1 ? 'One entry' : `${formatCount(total)} entries, newest first`}. Names are typed and not verified. Changed
        settings can be taken back here as long as they stand, a motor’s latest change on its own page, an import on the import
        page.
      </p>
      {subjects.length > 1 && <Filter subjects={subjects} on={on} link={link} />}
      {events.length === 0 ? (
        <p>
          {on === undefined ? (
            'Nothing has been changed yet. Import a sheet to begin.'
          ) : (
            <>
              Nothing of this kind has been changed. <Link href={link(undefined)}>All changes</Link>
            </>
          )}
        </p>
      ) : (
        <Events events={events} study={study} undoOf={undoOf} />
      )}
      <Pages
        page={page}
        last={last}
        link={(wanted) => link(on, wanted)}
        words={{ label: 'Pages of the history', before: 'Newer', after: 'Older' }}
        whole={whole}
      />
    </main>
  );
}

interface FilterProps {
  readonly subjects: HistoryPage['subjects'];
  /** What is looked at; absent: all. */
  readonly on: string | undefined;
  readonly link: (subject: string | undefined) => string;
}

/** The way to the changes of one kind, and to all. */
function Filter({ subjects, on, link }: FilterProps) {
  return (
    <nav aria-label="Filter">
      <ul className={sheet.links}>
        {[undefined, ...subjects].map((entry) => (
          <li key={entry?.subject ?? 'all'}>
            <Link href={link(entry?.subject)} prefetch={false} aria-current={entry?.subject === on ? 'true' : undefined}>
              {entry ? `${SUBJECT_WORDS[entry.subject] ?? entry.subject} (${formatCount(entry.count)})` : 'all changes'}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}

interface EventsProps {
  readonly events: HistoryPage['events'];
  readonly study: string;
  /** What takes an event back, where it can be. */
  readonly undoOf: (event: string) => ReactNode;
}

/** One change a line. */
function Events({ events, study, undoOf }: EventsProps) {
  return (
    <ScrollRegion label="History">
      <table {...TABLE} className={`${sheet.table} ${sheet.lines}`}>
        <thead {...GROUP}>
          <tr {...ROW}>
            <Head>When (UTC)</Head>
            <Head>Who</Head>
            <Head>On what</Head>
            <Head>What</Head>
            <Head>From</Head>
            <Head>To</Head>
            <Head>Why</Head>
            <Head>
              <span className="unseen">Take back</span>
            </Head>
          </tr>
        </thead>
        <tbody {...GROUP}>
          {events.map((event) => (
            <tr key={event.id} {...ROW}>
              <th {...ROW_HEAD} scope="row" className={sheet.nowrap}>
                {formatInstant(event.at)}
              </th>
              <td {...CELL} data-name="Who">
                {event.who}
                {!event.verified && <span className={sheet.soft}> (not verified)</span>}
              </td>
              <td {...CELL} data-name="On what">
                {event.subject === 'motor' ? (
                  <Link href={`/${study}/motor/${event.subjectId}`} prefetch={false}>
                    {event.label}
                  </Link>
                ) : (
                  event.label
                )}
              </td>
              <td {...CELL} data-name="What">
                {[event.what, fieldWords(event.field)].filter(Boolean).join(': ')}
              </td>
              <td {...CELL} data-name="From" className={sheet.free}>
                {event.from}
              </td>
              <td {...CELL} data-name="To" className={sheet.free}>
                {event.to}
              </td>
              <td {...CELL} data-name="Why">
                {event.why}
              </td>
              <td {...CELL}>{undoOf(event.id)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  );
}
