/** One way to carry out one option of one motor in one year of the budget. */
export interface Column {
  readonly option: string;
  /** Place of the year in the budget. */
  readonly year: number;
  /** What it is worth by the plan's objective. */
  readonly value: number;
  /** What it takes of each limited resource, by the resource's place. */
  readonly uses: readonly Use[];
}

/** So much of a limited resource, by its place. */
export interface Use {
  readonly resource: number;
  readonly amount: number;
}

/** Motors that are decided together: one, or a bundle that is done in one year or not at all. */
export interface Group {
  readonly id: string;
  readonly members: readonly { readonly id: string; readonly columns: readonly Column[] }[];
  /** Something must be done with it. */
  readonly must: boolean;
  /** What a bundle takes once for all its members in a year, such as the hours of their common outage. */
  readonly once?: readonly { readonly year: number; readonly uses: readonly Use[] }[];
}

/** What is limited: the money of a year, or hours and crews of an area in a year. */
export interface Resource {
  readonly name: string;
  readonly limit: number;
}

/** What is to be chosen from: at most one column of each member, within every limit. */
export interface Choice {
  readonly groups: readonly Group[];
  readonly resources: readonly Resource[];
}

/** Chosen columns by member. */
export type Chosen = ReadonlyMap<string, Column>;

/** What a column is worth once each resource has its price. */
export function reduced(column: Column, prices: ArrayLike<number>): number {
  let worth = column.value;
  for (const { resource, amount } of column.uses) worth -= (prices[resource] ?? 0) * amount;
  return worth;
}

/** The best of a group at these prices: its worth (doing nothing is worth 0, unless something must be) and the columns that give it. */
export function bestOf(group: Group, prices: ArrayLike<number>): { readonly worth: number; readonly columns: readonly Column[] } {
  let best: { worth: number; columns: readonly Column[] } = group.must
    ? { worth: Number.NEGATIVE_INFINITY, columns: [] }
    : { worth: 0, columns: [] };
  const [only] = group.members;
  if (group.members.length === 1 && only) {
    for (const column of only.columns) {
      const worth = reduced(column, prices);
      if (worth > best.worth) best = { worth, columns: [column] };
    }
    return best;
  }
  for (const year of yearsOf(group)) {
    const inYear = worthIn(group, year, prices);
    if (inYear.worth > best.worth) best = inYear;
  }
  return best;
}

/** What a bundle is worth in a year at these prices, with the best column of each member; of use where every member has one. */
export function worthIn(
  group: Group,
  year: number,
  prices: ArrayLike<number>,
): { readonly worth: number; readonly columns: readonly Column[] } {
  let worth = 0;
  for (const { resource, amount } of onceIn(group, year)) worth -= (prices[resource] ?? 0) * amount;
  const columns: Column[] = [];
  for (const { columns: own } of group.members) {
    let top: Column | undefined;
    let most = Number.NEGATIVE_INFINITY;
    for (const column of own) {
      if (column.year !== year) continue;
      const each = reduced(column, prices);
      if (each > most) [top, most] = [column, each];
    }
    worth += most;
    if (top) columns.push(top);
  }
  return { worth, columns };
}

/** What a bundle takes once in a year, whatever its members get. */
export function onceIn({ once }: Group, year: number): readonly Use[] {
  return once?.find((each) => each.year === year)?.uses ?? [];
}

/** Years in which every member of a group has a column. */
export function yearsOf(group: Group): readonly number[] {
  const [first, ...others] = group.members;
  const years = new Set(first?.columns.map(({ year }) => year));
  return [...years]
    .filter((year) => others.every(({ columns }) => columns.some((column) => column.year === year)))
    .sort((a, b) => a - b);
}
