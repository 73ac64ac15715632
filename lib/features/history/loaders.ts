import { database } from '@/lib/platform/db';
import { readSettingsBatches, readStudy } from '../study/data';
import { settingsToJson } from '../study/settings';
import { changedSince } from '../study/settings-change';
import { readEvents, readSubjects, type StudyEvent } from './data';
import { valueWords } from './words';

export type { StudyEvent } from './data';

/** Lines on one page of the history, and so many that one page for the printer may hold. */
const PAGE = 100;
const WHOLE = 5000;

/** One page of a study's history. */
export interface HistoryPage {
  readonly events: readonly StudyEvent[];
  readonly total: number;
  /** The page that this is, one beyond the last being the last, and how many there are. */
  readonly page: number | 'all';
  readonly last: number;
  /** Few enough that all may stand on one page. */
  readonly whole: boolean;
  /** What has been changed at all, with counts. */
  readonly subjects: readonly { readonly subject: string; readonly count: number }[];
  /** By event: the act that can be taken back there. */
  readonly undo: ReadonlyMap<string, string>;
}

/**
 * Acts that changed settings and can be taken back, each at the newest of its events on the page: those whose values all still stand.
 */
async function settingsToTakeBack(studyId: string, events: readonly StudyEvent[]): Promise<ReadonlyMap<string, string>> {
  const newest = new Map<string, string>();
  for (const { id, subject, batch } of events) {
    if (subject === 'settings' && batch !== undefined && !newest.has(batch)) newest.set(batch, id);
  }
  const db = database().read;
  const study = newest.size === 0 ? undefined : await readStudy(db, studyId);
  if (study === undefined) return new Map();
  const file = settingsToJson(study.settings, study.pricesFile);
  const facts = await readSettingsBatches(db, studyId, [...newest.keys()]);
  return new Map(
    [...newest].flatMap(([batch, id]) => (changedSince(file, facts.get(batch) ?? []).length === 0 ? [[id, batch] as const] : [])),
  );
}

/** One page of a study's history, of one kind of thing if asked for; pages count from 1. */
export async function loadHistory(studyId: string, asked: number | 'all', subject?: string): Promise<HistoryPage> {
  const db = database().read;
  const subjects = await readSubjects(db, studyId);
  const total = subjects.reduce((sum, each) => sum + (subject === undefined || each.subject === subject ? each.count : 0), 0);
  const whole = total <= WHOLE;
  const last = Math.max(1, Math.ceil(total / PAGE));
  const page = asked === 'all' && whole ? 'all' : Math.min(asked === 'all' ? 1 : asked, last);
  const [skip, take] = page === 'all' ? [0, undefined] : [(page - 1) * PAGE, PAGE];
  const { events } = await readEvents(db, studyId, skip, take, subject);
  const said = events.map((event) => ({
    ...event,
    from: valueWords(event.field, event.from),
    to: valueWords(event.field, event.to),
  }));
  return { events: said, total, page, last, whole, subjects, undo: await settingsToTakeBack(studyId, events) };
}
