import type { RankKey, SisterResult } from '@/lib/engine';

/** A motor in its place: its rank, its sisters, and its number in the order of evaluation. */
export interface Ranked {
  readonly key: RankKey;
  readonly rank: number;
  /** How its indicators stand among those of like motors; empty where that is not shown. */
  readonly sisters: readonly SisterResult[];
  readonly number: number;
}
