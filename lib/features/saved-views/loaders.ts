import { database } from '@/lib/platform/db';
import { loadWho } from '../study/loaders';
import { readViews } from './data';
import type { ViewEntry } from './schema';

/** The views of a screen that this reader may open: their own and the shared ones. */
export async function loadViews(studyId: string, screen: 'fleet' | 'ranking'): Promise<readonly ViewEntry[]> {
  return readViews(database().read, studyId, screen, await loadWho());
}
