import type { RankKey } from '@/lib/engine';

/** A motor in its place: its rank, and its number in the order of evaluation. */
export interface Ranked {
  readonly key: RankKey;
  readonly rank: number;
  readonly number: number;
}
