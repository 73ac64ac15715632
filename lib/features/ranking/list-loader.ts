import { startApart } from '@/lib/platform/threads';
import type { ListNews, ListStart } from './list-worker';
import type { MeasuresPage } from './measures-page';
import type { SparesPage } from './spares-page';

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

/** Has a list worked out in a thread of its own. */
async function listApart(start: ListStart): Promise<ListNews | 'busy'> {
  const thread = await startApart('lib/features/ranking/list-worker.ts', start);
  if (thread === 'busy') return thread;
  return new Promise((resolve, reject) => {
    thread.on('message', (news: ListNews) => resolve(news));
    thread.on('error', reject);
    thread.on('exit', () => reject(new Error('the thread that works a list out ended early')));
  });
}
