import { database } from '@/lib/platform/db';
import { LastAnswer } from '@/lib/platform/last-answer';
import { startApart } from '@/lib/platform/threads';
import type { ListNews, ListStart } from './list-worker';
import type { MeasuresPage } from './measures-page';
import type { SparesPage } from './spares-page';

/** Each list as it was asked for last: the whole fleet is evaluated for it, and who comes back from a motor asks for it again. */
const kept = { spares: new LastAnswer<ListNews | 'busy'>(), measures: new LastAnswer<ListNews | 'busy'>() };

/** The spare strategy of a study; `undefined` when there is no such study, `busy` when too many wait for lists and workbooks. */
export async function loadSpares(studyId: string, wanted: unknown): Promise<SparesPage | 'busy' | undefined> {
  const news = await listApart({ list: 'spares', studyId, wanted });
  return news === 'busy' ? news : 'spares' in news ? news.spares : undefined;
}

/** The measures beside new motors over the fleet; as {@link loadSpares}. */
export async function loadMeasures(studyId: string): Promise<MeasuresPage | 'busy' | undefined> {
  const news = await listApart({ list: 'measures', studyId, wanted: {} });
  return news === 'busy' ? news : 'measures' in news ? news.measures : undefined;
}

/** A list as it is kept, or has it worked out in a thread of its own. */
function listApart(start: ListStart): Promise<ListNews | 'busy'> {
  return kept[start.list].ask(
    { db: database(), question: JSON.stringify(start) },
    () => workOutApart(start),
    (news) => news !== 'busy',
  );
}

async function workOutApart(start: ListStart): Promise<ListNews | 'busy'> {
  const thread = await startApart('lib/features/ranking/list-worker.ts', start);
  if (thread === 'busy') return thread;
  return new Promise((resolve, reject) => {
    thread.on('message', (news: ListNews) => resolve(news));
    thread.on('error', reject);
    thread.on('exit', () => reject(new Error('the thread that works a list out ended early')));
  });
}
