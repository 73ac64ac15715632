import { database } from '@/lib/platform/db';
import { type Ranking, type RankingQuery, readMovablePack, readRanking } from './data';

/** Motors on one page of the ranking. */
export const PAGE = 200;

/** One page of a study's ranking, counted from 1, or all of it; one beyond the last is the last. `undefined` before the first evaluation. */
export async function loadRanking(
  studyId: string,
  query: Omit<RankingQuery, 'skip' | 'take'>,
  page: number | 'all',
): Promise<Ranking | undefined> {
  const part = page === 'all' ? { skip: 0 } : { skip: (page - 1) * PAGE, take: PAGE };
  const ranking = await readRanking(database().read, studyId, { ...query, ...part });
  if (page === 'all' || !ranking || ranking.motors.length > 0 || ranking.found === 0) return ranking;
  return loadRanking(studyId, query, Math.ceil(ranking.found / PAGE));
}

/** What a study's ranking at other prices needs, as JSON text; see {@link readMovablePack}. */
export async function loadMovablePack(studyId: string): Promise<string | 'stale' | undefined> {
  return readMovablePack(database().read, studyId);
}
