import { parentPort, workerData } from 'node:worker_threads';
import { openDatabase } from '@/lib/platform/db';
import { readEnv } from '@/lib/platform/env';
import { type MeasuresPage, readMeasures } from './measures-page';
import { readSpares, type SparesPage } from './spares-page';

/** The thread that works out a list over a whole fleet (see `list-loader.ts`): evaluating takes seconds, in which others would wait. */

/** What it is started with. */
export interface ListStart {
  readonly list: 'spares' | 'measures';
  readonly studyId: string;
  readonly wanted: unknown;
}

/** What it says once: the page, or that there is no such study. */
export type ListNews = { readonly spares: SparesPage } | { readonly measures: MeasuresPage } | { readonly nothing: true };

async function workedOut({ list, studyId, wanted }: ListStart): Promise<ListNews> {
  const { read, close } = openDatabase(readEnv().databaseFile);
  try {
    if (list === 'spares') {
      const spares = await readSpares(read, studyId, wanted);
      return spares ? { spares } : { nothing: true };
    }
    const measures = await readMeasures(read, studyId);
    return measures ? { measures } : { nothing: true };
  } finally {
    await close();
  }
}

const port = parentPort;
if (port) void workedOut(workerData as ListStart).then((list) => port.postMessage(list));
