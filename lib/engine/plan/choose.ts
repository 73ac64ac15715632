import { type Bound, boundOf } from './bound';
import { bestOf, type Choice, type Chosen, type Column, type Group, reduced, yearsOf } from './candidate';
import { modelText } from './model-text';
import { primal, type Solve } from './solver';

/** What was chosen, with the proof of how good it is. */
export interface Outcome {
  readonly chosen: Chosen;
  readonly value: number;
  readonly bound: number;
  /** Bound less value, over the bound. */
  readonly gap: number;
  /** Worth of one more unit of each resource. */
  readonly prices: readonly number[];
}

/** Why nothing can be chosen: what is too small for what must be done, or what must be done and cannot be in any year. */
export interface Impossible {
  readonly lacking: readonly { readonly resource: string; readonly by: number }[];
  readonly stuck: readonly string[];
}

/** Gap at which the search is content, as a share of the bound. */
const CONTENT = 2e-4;

/** Columns that the integer model may have at first; each further try takes four times as many. */
const FEW = 3000;

/**
 * The best choice within every limit, to a proven gap.
 *
 * The bound's prices tell which columns could be in a choice better than one already known: those whose worth at these prices lies within
 * bound less known value of the best of their group. An integer model over these alone has the same optimum, and is small.
 * `cancelled` is asked between solves; then, and when nothing was found in time, the answer is `undefined`.
 * Source: reduced-cost fixing, Martello and Toth, Knapsack Problems (from memory); HiGHS for the integer models.
 */
export function choose(
  choice: Choice,
  solve: Solve,
  options: { readonly seconds?: number; readonly cancelled?: () => boolean } = {},
): Outcome | Impossible | undefined {
  const stuck = choice.groups.filter((group) => group.must && yearsOf(group).length === 0).map(({ id }) => id);
  if (stuck.length > 0) return { lacking: [], stuck };
  const lacking = shortOf(choice, solve);
  if (lacking.length > 0) return { lacking, stuck: [] };
  const bound = boundOf(choice, solve);
  if (!bound) return undefined;
  let known: { readonly chosen: Chosen; readonly value: number } | undefined;
  for (let most = FEW; !options.cancelled?.(); most *= 4) {
    const core = coreOf(choice, bound, most, known?.value);
    const found = integer(choice, core.kept, solve, options.seconds ?? 20);
    if (found && (!known || found.value > known.value)) known = found;
    const content =
      known !== undefined && (gapOf(bound.value, known.value) <= CONTENT || bound.value - known.value <= core.width);
    if (!known && core.whole) return undefined;
    if (known && (content || core.whole)) {
      const value = Math.max(bound.value, known.value);
      return { ...known, bound: value, gap: gapOf(value, known.value), prices: bound.prices };
    }
  }
  return undefined;
}

function gapOf(bound: number, value: number): number {
  return bound > 0 ? Math.max(0, (bound - value) / bound) : 0;
}

interface Core {
  readonly kept: ReadonlySet<Column>;
  /** What was left out lies further than this behind the best of its group. */
  readonly width: number;
  /** True when nothing was left out. */
  readonly whole: boolean;
}

/** The columns nearest to the best of their group, so many at most, and none that cannot matter beside the choice already known. */
function coreOf({ groups }: Choice, bound: Bound, most: number, known: number | undefined): Core {
  const all = groups.flatMap((group) => behindBest(group, bound.prices));
  all.sort((a, b) => a.behind - b.behind);
  const width = known === undefined ? Number.POSITIVE_INFINITY : bound.value - known;
  const inside = all.filter(({ behind }) => behind <= width);
  const kept = inside.slice(0, most);
  const edge = kept.length < inside.length ? (kept.at(-1)?.behind ?? 0) : width;
  return { kept: new Set(kept.map(({ column }) => column)), width: edge, whole: kept.length === all.length };
}

/** How far each column lies behind the best of its group; in a bundle, behind the best of its member in its year, which is no more. */
function behindBest(group: Group, prices: readonly number[]): { column: Column; behind: number }[] {
  const single = group.members.length === 1;
  const { worth } = bestOf(group, prices);
  return group.members.flatMap(({ columns }) => {
    const tops = new Map<number, number>();
    for (const column of columns)
      tops.set(column.year, Math.max(tops.get(column.year) ?? Number.NEGATIVE_INFINITY, reduced(column, prices)));
    return columns.map((column) => ({
      column,
      behind: (single ? worth : (tops.get(column.year) ?? worth)) - reduced(column, prices),
    }));
  });
}

/** The integer model over some columns. */
function integer(
  choice: Choice,
  kept: ReadonlySet<Column>,
  solve: Solve,
  seconds: number,
): { readonly chosen: Chosen; readonly value: number } | undefined {
  const { text, names } = modelText(choice, kept);
  if (names.size === 0) return keeps(choice, new Map()) ? { chosen: new Map(), value: 0 } : undefined;
  const found = solve(text, { gap: CONTENT / 4, seconds });
  if (found.Status !== 'Optimal' && found.Status !== 'Time limit reached') return undefined;
  const chosen = new Map<string, Column>();
  for (const [name, { member, column }] of names) if (primal(found, name) > 0.5) chosen.set(member, column);
  return keeps(choice, chosen) ? { chosen, value: worthOf(chosen) } : undefined;
}

/** Worth of what was chosen. */
export function worthOf(chosen: Chosen): number {
  let sum = 0;
  for (const { value } of chosen.values()) sum += value;
  return sum;
}

/** True where what was chosen keeps every limit and does what must be done, bundles in one year. */
export function keeps({ groups, resources }: Choice, chosen: Chosen): boolean {
  const used = resources.map(() => 0);
  for (const { uses } of chosen.values())
    for (const { resource, amount } of uses) used[resource] = (used[resource] ?? 0) + amount;
  if (resources.some(({ limit }, r) => (used[r] ?? 0) > limit + 1e-6 * Math.max(1, limit))) return false;
  return groups.every(({ members, must }) => {
    const years = members.map(({ id }) => chosen.get(id)?.year);
    const none = years.every((year) => year === undefined);
    return none ? !must : years.every((year) => year !== undefined && year === years[0]);
  });
}

/** How much of each resource is lacking for what must be done; empty where all of it fits. */
function shortOf(choice: Choice, solve: Solve): Impossible['lacking'] {
  const groups = choice.groups.filter(({ must }) => must);
  if (groups.length === 0) return [];
  const found = solve(modelText({ ...choice, groups }, undefined, true).text, { gap: 1e-6, seconds: 20 });
  return choice.resources.flatMap(({ name }, r) => {
    const by = primal(found, `short${r}`);
    return by > 1e-6 ? [{ resource: name, by }] : [];
  });
}
