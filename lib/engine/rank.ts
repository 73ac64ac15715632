import type { UnrankedMotor } from './result';

/** What ranking needs of a motor. */
export type RankKey = Pick<UnrankedMotor, 'site' | 'tag' | 'ranking'>;

/** The little that ranking needs of a result, so that the rest can be let go. */
export function rankKeyOf({ site, tag, ranking }: RankKey): RankKey {
  return { site, tag, ranking };
}

/** Order of the fleet's ranks: the group (within policy, others, not usable), then value, then site and tag. */
function compareForRank(a: RankKey, b: RankKey): number {
  return compareWorth(a.ranking, b.ranking) || compareByPlace(a, b);
}

/** By group and value alone; zero for motors that only their place tells apart. */
export function compareWorth(a: RankKey['ranking'], b: RankKey['ranking']): number {
  if (a.group !== b.group) return a.group - b.group;
  return b.value - a.value;
}

/** Natural order of site and tag. */
export function compareByPlace(a: Pick<RankKey, 'site' | 'tag'>, b: Pick<RankKey, 'site' | 'tag'>): number {
  return compareNaturally(a.site, b.site) || compareNaturally(a.tag, b.tag);
}

/** Natural order as people count: A2 before A13; ties by code point, so that the order is total. */
export function compareNaturally(a: string, b: string): number {
  // Most pairs stand at one site: that is seen without looking at the letters.
  if (a === b) return 0;
  return COLLATOR.compare(a, b) || (a < b ? -1 : 1);
}

const COLLATOR = new Intl.Collator('en', { numeric: true });

/** Rank of each motor, in the order given. */
export function ranksOf(keys: readonly RankKey[]): number[] {
  const order = keys.map((_, index) => index).sort((i, j) => compareForRank(keys[i] as RankKey, keys[j] as RankKey));
  const ranks = new Array<number>(keys.length).fill(0);
  order.forEach((index, place) => {
    ranks[index] = place + 1;
  });
  return ranks;
}
