import { database } from '@/lib/platform/db';
import { type RankingQuery, readRanking } from './data';

/** Motors on one page of the ranking. */
export const PAGE = 200;

/** One page of a study's ranking; pages count from 1. `undefined` before the first evaluation. */
export async function loadRanking(studyId: string, query: Omit<RankingQuery, 'skip' | 'take'>, page: number) {
  return readRanking(database().read, studyId, { ...query, skip: (page - 1) * PAGE, take: PAGE });
}
