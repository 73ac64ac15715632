import { type Bound, boundOf } from './bound';
import { bestOf, type Choice, type Chosen, type Column, type Group, onceIn, reduced, worthIn, yearsOf } from './candidate';
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

/** Gap at which the search over a large fleet is content, as a share of the bound. */
const CONTENT = 8e-4;

/** Gap at which one integer model is content: of a large fleet, and of one with so few columns that the best can be proven. */
const MODEL_GAP = 2e-4;
const PROOF_GAP = 1e-7;
const PROVABLE = 250;

/** Branches after which an integer model is left. Counted and not timed, so that the choice is the same on every machine. */
const NODES = 40;

/** The same for whether all that must be done fits, which has to be told for certain. */
const LEAST_NODES = 5000;

/** Models that are tried at most once something is known: beyond that little is gained. */
const TRIES = 3;

/** Rivals of the best columns that the integer model may have at first; each further try takes more. */
const FEW = 500;

/** How a choice is watched and called off. */
interface Watch {
  /** Asked between solves. */
  readonly cancelled?: () => boolean;
  /** Told before each solve how many there were, and how many there may be. */
  readonly progress?: (stage: 'bound' | 'choose', done: number, of: number) => void;
}

/**
 * The best choice within every limit, to a proven gap.
 *
 * The bound's prices tell which columns could be in a choice better than one already known: those whose worth at these prices lies within
 * bound less known value of the best of their group. Where nothing else of a group lies as near, its best is settled. An integer model over
 * the rest has the same optimum, and is small. The answer is `undefined` when it was called off, or no model gave a choice in its branches.
 * Source: reduced-cost fixing, Martello and Toth, Knapsack Problems (from memory); HiGHS for the integer models.
 */
export function choose(choice: Choice, solve: Solve, watch: Watch = {}): Outcome | Impossible | undefined {
  const stuck = choice.groups.filter((group) => group.must && yearsOf(group).length === 0).map(({ id }) => id);
  if (stuck.length > 0) return { lacking: [], stuck };
  if (watch.cancelled?.()) return undefined;
  const least = leastOf(choice, solve);
  if (least.lacking.length > 0) return { lacking: least.lacking, stuck: [] };
  const bound = boundOf(choice, solve, watch);
  if (!bound) return undefined;
  const rivals = rivalsOf(choice, bound);
  const provable = rivals.all.length <= PROVABLE;
  const gap = provable ? PROOF_GAP : MODEL_GAP;
  // What must be done alone is a choice as well, should the search find no other.
  let known: SolvedModel | undefined = keeps(choice, least.chosen)
    ? { chosen: least.chosen, value: worthOf(least.chosen), bound: Number.POSITIVE_INFINITY }
    : undefined;
  let found = 0;
  const tries = 1 + Math.ceil(Math.log2(Math.max(1, rivals.distances.length / FEW)));
  for (let most = FEW, done = 0; !watch.cancelled?.(); most *= 2, done++) {
    watch.progress?.('choose', Math.min(done, tries), tries);
    const core = coreOf(choice, rivals, { most, width: known && bound.value - known.value });
    const better = integer(core.choice, core.kept, solve, gap);
    if (better) found++;
    if (better && (!known || better.value >= known.value)) known = better;
    if (!known && core.whole) return undefined;
    // What was left out cannot be in a better choice; so the model's own bound holds for all.
    const settled = known !== undefined && better !== undefined && bound.value - known.value <= core.width;
    const enough =
      settled || found >= TRIES || core.whole || (found > 0 && !provable && known && gapOf(bound.value, known.value) <= CONTENT);
    if (!known || !enough) continue;
    const least = settled && better ? Math.min(bound.value, Math.max(better.bound, better.value)) : bound.value;
    const value = Math.max(least, known.value);
    return { chosen: known.chosen, value: known.value, bound: value, gap: gapOf(value, known.value), prices: bound.prices };
  }
  return undefined;
}

function gapOf(bound: number, value: number): number {
  return bound > 0 ? Math.max(0, (bound - value) / bound) : 0;
}

/** How far everything that may be chosen lies behind the best of its group, at the bound's prices. */
interface Rivals {
  readonly all: readonly { readonly column: Column; readonly behind: number }[];
  /** By place of the group: how far doing nothing with it lies behind. */
  readonly nothing: readonly number[];
  /** Those of everything but the best itself, nearest first. */
  readonly distances: readonly number[];
}

function rivalsOf({ groups }: Choice, { prices }: Bound): Rivals {
  const nothing = groups.map((group) => (group.must ? Number.POSITIVE_INFINITY : bestOf(group, prices).worth));
  const all = groups.flatMap((group) => behindBest(group, prices));
  const distances = [...all.map(({ behind }) => behind), ...nothing].filter(
    (each) => each > 0 && each < Number.POSITIVE_INFINITY,
  );
  return { all, nothing, distances: distances.sort((a, b) => a - b) };
}

interface Core {
  readonly choice: Choice;
  readonly kept: ReadonlySet<Column>;
  /** What was left out lies further than this behind the best of its group. */
  readonly width: number;
  /** True when nothing was left out but what cannot matter. */
  readonly whole: boolean;
}

/** The nearest rivals, so many at most, and none that cannot matter beside the choice already known; groups left with their best must take it. */
function coreOf(
  { groups, resources }: Choice,
  { all, nothing, distances }: Rivals,
  { most, width = Number.POSITIVE_INFINITY }: { readonly most: number; readonly width?: number | undefined },
): Core {
  const edge = Math.min(width, distances[most] ?? Number.POSITIVE_INFINITY);
  return {
    choice: { resources, groups: groups.map((group, g) => ((nothing[g] ?? 0) > edge ? { ...group, must: true } : group)) },
    kept: new Set(all.filter(({ behind }) => behind <= edge).map(({ column }) => column)),
    width: edge,
    whole: most >= distances.length,
  };
}

/** How far each column lies behind the best of its group; in a bundle, together with the best of the other members in its year. */
function behindBest(group: Group, prices: readonly number[]): { column: Column; behind: number }[] {
  const { worth } = bestOf(group, prices);
  if (group.members.length === 1)
    return (group.members[0]?.columns ?? []).map((column) => ({ column, behind: worth - reduced(column, prices) }));
  return yearsOf(group).flatMap((year) => {
    const inYear = worthIn(group, year, prices);
    return group.members.flatMap(({ columns }, m) =>
      columns
        .filter((column) => column.year === year)
        .map((column) => ({
          column,
          behind: worth - inYear.worth + reduced(inYear.columns[m] ?? column, prices) - reduced(column, prices),
        })),
    );
  });
}

/** What the integer model over some columns gave. */
interface SolvedModel {
  readonly chosen: Chosen;
  readonly value: number;
  /** No choice among the columns of its model is worth more. */
  readonly bound: number;
}

/** The integer model over some columns. */
function integer(choice: Choice, kept: ReadonlySet<Column>, solve: Solve, gap: number): SolvedModel | undefined {
  const { text, names } = modelText(choice, kept);
  if (names.size === 0) return keeps(choice, new Map()) ? { chosen: new Map(), value: 0, bound: 0 } : undefined;
  const found = solve(text, { gap, nodes: NODES });
  const chosen = new Map<string, Column>();
  for (const [name, { member, column }] of names) if (primal(found, name) > 0.5) chosen.set(member, column);
  if (found.status === 'none' || !keeps(choice, chosen)) return undefined;
  return { chosen, value: worthOf(chosen), bound: found.dualBound };
}

/** Worth of what was chosen. */
function worthOf(chosen: Chosen): number {
  let sum = 0;
  for (const { value } of chosen.values()) sum += value;
  return sum;
}

/** True where what was chosen keeps every limit and does what must be done, bundles in one year. */
export function keeps({ groups, resources }: Choice, chosen: Chosen): boolean {
  const used = resources.map(() => 0);
  for (const { uses } of chosen.values())
    for (const { resource, amount } of uses) used[resource] = (used[resource] ?? 0) + amount;
  for (const group of groups) {
    const [first] = group.members;
    for (const { resource, amount } of onceIn(group, (first && chosen.get(first.id)?.year) ?? -1))
      used[resource] = (used[resource] ?? 0) + amount;
  }
  if (resources.some(({ limit }, r) => (used[r] ?? 0) > limit + 1e-6 * Math.max(1, limit))) return false;
  return groups.every(({ members, must }) => {
    const years = members.map(({ id }) => chosen.get(id)?.year);
    const none = years.every((year) => year === undefined);
    return none ? !must : years.every((year) => year !== undefined && year === years[0]);
  });
}

/** What must be done with the least breach of the limits: how much of each resource is lacking, nothing where all of it fits. */
function leastOf(choice: Choice, solve: Solve): { readonly lacking: Impossible['lacking']; readonly chosen: Chosen } {
  const groups = choice.groups.filter(({ must }) => must);
  if (groups.length === 0) return { lacking: [], chosen: new Map() };
  const { text, names } = modelText({ ...choice, groups }, undefined, true);
  const found = solve(text, { gap: 1e-6, nodes: LEAST_NODES });
  const chosen = new Map<string, Column>();
  for (const [name, { member, column }] of names) if (primal(found, name) > 0.5) chosen.set(member, column);
  const lacking = choice.resources.flatMap(({ name }, r) => {
    const by = primal(found, `short${r}`);
    return by > 1e-6 ? [{ resource: name, by }] : [];
  });
  return { lacking, chosen };
}
