import type { OptionResult } from '../result';
import type { Settings } from '../settings';
import { type Choice, type Chosen, type Column, type Group, onceIn, worthIn, yearsOf } from './candidate';
import { choose, type Impossible, type Outcome } from './choose';
import { measureNext } from './measure-next';
import { motorKey, type PlanMotor } from './plan-motor';
import type { NoPlan, Plan, PlanItem } from './plan-result';
import { costIn, type Member, type PlanLimit, type Prepared, prepare } from './prepare';
import { reasonLeftOut } from './reasons';
import { loadSolver, type Solve } from './solver';
import type { PlanRun, PlanWishes } from './wishes';

/**
 * Which option each motor gets in which year of the budget, so that the objective is greatest within each year's money and hours.
 *
 * Options carried out now, of motors whose figures may be used, stand to choice; a failed motor, or one beyond a limit that bears on safety, must
 * get one in the first year. What is worth doing at failure takes no budget and is listed with its expected spend. The order of the motors
 * does not matter. Money: whole cents; in nominal terms costs grow with inflation. Gives {@link NoPlan} where what must be done does not
 * fit, naming the limit, or where wishes cannot be; `undefined` when called off, or when no choice was
 * found in the branches that the solver may take.
 */
export async function planFleet(
  motors: readonly PlanMotor[],
  settings: Settings,
  wishes: PlanWishes = {},
  run: PlanRun = {},
): Promise<Plan | NoPlan | undefined> {
  const solved = solvePlan(await loadSolver(), { motors, settings, wishes }, run);
  if (!solved || 'problems' in solved) return solved;
  return planOf(solved.prepared, solved.outcome, settings, wishes);
}

/** What is planned. */
interface PlanInput {
  readonly motors: readonly PlanMotor[];
  readonly settings: Settings;
  readonly wishes: PlanWishes;
}

/** The choice alone, without the words; `undefined` when called off. */
export function solvePlan(
  solve: Solve,
  { motors, settings, wishes }: PlanInput,
  { cancelled, progress }: PlanRun,
): { readonly prepared: Prepared; readonly outcome: Outcome } | NoPlan | undefined {
  const prepared = prepare(motors, settings, wishes);
  if ('problems' in prepared) return prepared;
  const outcome = choose(prepared.choice, solve, {
    ...(cancelled && { cancelled }),
    ...(progress && { progress: (stage, done, of) => progress({ stage, done, of }) }),
  });
  if (!outcome) return undefined;
  return 'lacking' in outcome ? { problems: problemsOf(outcome, prepared.limits, settings) } : { prepared, outcome };
}

function planOf(
  { choice, limits, members, firstYear }: Prepared,
  outcome: Outcome,
  settings: Settings,
  wishes: PlanWishes,
): Plan {
  const years = settings.budget.map((budget, y) => {
    const items = itemsOf(outcome.chosen, y, { members, settings, wishes });
    const spent = items.reduce((sum, { cost }) => sum + Math.round(100 * cost), 0) / 100;
    return { year: firstYear + y, budget, spent, shadow_price: rounded(outcome.prices[y] ?? 0, 1e6), items };
  });
  const atFailure = [...members.values()].flatMap(({ motor, usable, forbidden }) => {
    if (outcome.chosen.has(motorKey(motor)) || !usable || forbidden) return [];
    const best = bestAtFailure(motor);
    return best ? [{ site: motor.site, tag: motor.tag, option: best.id, expected_spend: expectedSpend(best, settings) }] : [];
  });
  const listed = new Set(atFailure.map(motorKey));
  const used = usedOf(choice, outcome.chosen);
  return {
    objective: settings.objective,
    value: rounded(outcome.value, 100),
    bound: rounded(outcome.bound, 100),
    gap: rounded(outcome.gap, 1e7),
    greedy_value: rounded(greedy(choice, members), 100),
    years,
    limits: limits.flatMap(({ kind, name, year, limit }, r) =>
      kind === 'money'
        ? []
        : [{ kind, name, year: firstYear + year, limit, used: used[r] ?? 0, shadow_price: rounded(outcome.prices[r] ?? 0, 1e6) }],
    ),
    measure_next: measureNext(
      [...members.values()].map(({ motor }) => motor),
      settings,
      { prices: settings.objective === 'net-present-value' ? outcome.prices : [], readings: wishes.readings },
    ),
    at_failure: atFailure,
    left_out: [...members].flatMap(([key, member]) => {
      const { site, tag } = member.motor;
      if (outcome.chosen.has(key) || listed.has(key)) return [];
      return [{ site, tag, because: reasonLeftOut(member, wishes.robust !== undefined) }];
    }),
  };
}

/** How much of each resource a choice takes. */
function usedOf({ groups, resources }: Choice, chosen: Chosen): number[] {
  const used = resources.map(() => 0);
  for (const group of groups) {
    const columns = group.members.flatMap(({ id }) => chosen.get(id) ?? []);
    for (const { resource, amount } of [...columns.flatMap(({ uses }) => uses), ...onceIn(group, columns[0]?.year ?? -1)])
      used[resource] = (used[resource] ?? 0) + amount;
  }
  return used;
}

function itemsOf(
  chosen: Chosen,
  year: number,
  {
    members,
    settings,
    wishes,
  }: { readonly members: Prepared['members']; readonly settings: Settings; readonly wishes: PlanWishes },
): PlanItem[] {
  return [...members].flatMap(([key, { motor, must, because }]) => {
    const column = chosen.get(key);
    const option = column?.year === year && motor.options.find(({ id }) => id === column.option);
    if (!option) return [];
    const same = ({ site, tag }: { readonly site: string; readonly tag: string }) => site === motor.site && tag === motor.tag;
    const override = motor.trust.level === 'not-usable' ? wishes.overrides?.find(same) : undefined;
    const worth = option.net_present_value_by_year[year];
    const low = motor.low?.[option.id]?.[year];
    return [
      {
        site: motor.site,
        tag: motor.tag,
        option: option.id,
        action: option.action,
        timing: option.timing,
        rated_power_kw: option.rated_power_kw,
        ...(option.efficiency_class !== undefined && { efficiency_class: option.efficiency_class }),
        cost: costIn(option, year, settings),
        ...(worth !== undefined && { net_present_value: worth }),
        ...(low !== undefined && { low_case_value: low }),
        ...(must && { must: true, because }),
        ...(wishes.pins?.some(same) && { pinned: true }),
        ...(override && { override: { by: override.by, reason: override.reason } }),
      },
    ];
  });
}

/** The best option at failure, where one is worth more than the baseline. */
function bestAtFailure({ options }: PlanMotor): OptionResult | undefined {
  let best: OptionResult | undefined;
  for (const option of options) {
    const value = option.net_present_value?.value ?? 0;
    if (option.timing !== 'at-failure' || value <= 0 || option.findings.some(({ severity }) => severity === 'disqualifies'))
      continue;
    if (value > (best?.net_present_value?.value ?? 0)) best = option;
  }
  return best;
}

/** Cost times the chance that the first failure falls into each year: a constant rate (design of the study, `failure_rate_per_year`). */
function expectedSpend(option: OptionResult, { budget, failureRatePerYear }: Settings): number[] {
  return budget.map((_, year) => rounded(option.cost * failureRatePerYear * (1 - failureRatePerYear) ** year, 100));
}

/** The worth of taking the motors in the order of their rank, what must be done first: what a plain list would fund. */
function greedy({ groups, resources }: Choice, members: ReadonlyMap<string, Member>): number {
  const left = resources.map(({ limit }) => limit);
  const rank = (group: Group): number =>
    Math.min(...group.members.map(({ id }) => members.get(id)?.motor.rank ?? Number.POSITIVE_INFINITY));
  let worth = 0;
  for (const group of [...groups].sort((a, b) => Number(b.must) - Number(a.must) || rank(a) - rank(b)))
    for (const year of yearsOf(group)) {
      const { columns } = bestIn(group, year);
      const uses = [...columns.flatMap((column) => column.uses), ...onceIn(group, year)];
      const after = [...left];
      for (const { resource, amount } of uses) after[resource] = (after[resource] ?? 0) - amount;
      if (after.some((rest, resource) => rest < 0 && rest < (left[resource] ?? 0))) continue;
      after.forEach((rest, resource) => {
        left[resource] = rest;
      });
      worth += columns.reduce((sum, { value }) => sum + value, 0);
      break;
    }
  return worth;
}

/** The best column of each member in a year, whatever it costs. */
function bestIn(group: Group, year: number): { readonly columns: readonly Column[] } {
  return worthIn({ ...group, once: [] }, year, []);
}

function problemsOf({ lacking, stuck }: Impossible, limits: readonly PlanLimit[], { currency }: Settings): NoPlan['problems'] {
  return [
    ...lacking.map(({ resource, by }) =>
      limits.find(({ name }) => name === resource)?.kind === 'money'
        ? {
            code: 'budget-too-small',
            text: `What must be done does not fit ${resource}: ${currency} ${by.toFixed(2)} are lacking.`,
          }
        : { code: 'hours-too-few', text: `What must be done does not fit ${resource}: ${by.toFixed(1)} h are lacking.` },
    ),
    ...stuck.map((id) => ({
      code: 'nothing-to-choose',
      text: `Something must be done with ${id.split('\n').filter(Boolean).join(' ')}, and no option of it can be carried out in a year that is allowed.`,
    })),
  ];
}

function rounded(value: number, scale: number): number {
  return Math.round(value * scale) / scale;
}
