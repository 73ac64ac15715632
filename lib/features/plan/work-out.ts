import {
  type CarriedOut,
  carriedOut,
  evaluateMotor,
  type FrontierPoint,
  frontier,
  type MotorRef,
  motorKey,
  type NoPlan,
  type OptionResult,
  type Plan,
  type PlanMotor,
  type PlanWishes,
  planFleet,
  type Summand,
  sumOverMotors,
  type WishCost,
  wishCosts,
} from '@/lib/engine';
import type { PlanInputs, PlannedMotor } from './data';
import { lowResults, USUAL_LOW_CASE } from './low-case';
import type { PlanOutcome, ProgrammeItem } from './programme';
import { engineTerms } from './terms';

/** Each wish is one more solve: beyond so many motors times wishes only what all wishes cost together is worked out. */
const WORTH_SINGLE_COSTS = 5000;
/** Readings that are named at most; those that bring most come first. */
const MOST_READINGS = 50;

/**
 * The plan of a study as it is kept: what the engine chooses, with the figures of each chosen option beside it, its value in the low case, what
 * other budgets and what the wishes would bring. `undefined` when it was cancelled, or the solver found nothing.
 */
export async function workOutPlan(inputs: PlanInputs, cancelled: () => boolean = () => false): Promise<PlanOutcome | undefined> {
  const { motors, settings, wishes, terms } = inputs;
  const fleet = motors.map(({ motorId: _, trust, ...motor }): PlanMotor => ({ ...motor, trust: { level: trust, findings: [] } }));
  const wanted: PlanWishes = { ...engineWishes(wishes), ...engineTerms(terms) };
  const run = { cancelled };
  const plan = await planFleet(fleet, settings, wanted, run);
  if (!plan) return undefined;
  if ('problems' in plan) return { problems: plan.problems.map((each) => ({ ...each })) };
  const narrowing = wishes.filter(({ kind }) => kind !== 'override').length;
  const { overrides } = wanted;
  const free = narrowing > 0 ? await planFleet(fleet, settings, { overrides, ...engineTerms(terms) }, run) : undefined;
  const costs =
    narrowing > 0 && narrowing * motors.length <= WORTH_SINGLE_COSTS
      ? await wishCosts(fleet, settings, wanted, plan, run)
      : undefined;
  const points = terms.frontier.length > 0 ? await frontier(fleet, settings, wanted, terms.frontier, run) : undefined;
  if (cancelled()) return undefined;
  return programmeOf(plan, inputs, { free, costs, points });
}

/** An option of a motor that somebody answers for: that it rests on an assumed load is then no reason against it any more. */
export function letIn(option: OptionResult): OptionResult {
  return { ...option, findings: option.findings.filter(({ code }) => code !== 'screening-only') };
}

/** Wishes in the engine's terms. */
function engineWishes(wishes: PlanInputs['wishes']): PlanWishes {
  const of = (kind: string) => wishes.filter((wish) => wish.kind === kind);
  const bundles = new Map<string, MotorRef[]>();
  for (const { bundle: name = '', site, tag } of of('together')) bundles.set(name, [...(bundles.get(name) ?? []), { site, tag }]);
  return {
    pins: of('pinned').map(({ site, tag, option, year }) => ({ site, tag, option, year })),
    forbid: of('forbidden').map(({ site, tag }) => ({ site, tag })),
    mustDo: of('must').map(({ site, tag, year }) => ({ site, tag, year })),
    overrides: of('override').map(({ site, tag, by, reason = '' }) => ({ site, tag, by, reason })),
    bundles: [...bundles].filter(([, motors]) => motors.length > 1).map(([name, motors]) => ({ name, motors })),
  };
}

/** What is known of a plan beside the choice itself. */
interface Beside {
  readonly free: Plan | NoPlan | undefined;
  readonly costs: readonly WishCost[] | undefined;
  readonly points: readonly FrontierPoint[] | undefined;
}

function programmeOf(plan: Plan, inputs: PlanInputs, { free, costs, points }: Beside): PlanOutcome {
  const { wishes, terms, settings } = inputs;
  const motors = new Map(inputs.motors.map((motor) => [motorKey(motor), motor]));
  const lowCase = engineTerms(terms).robust ?? USUAL_LOW_CASE;
  const low = lowValues(inputs);
  const costOf = wishCostsByMotor(wishes, costs ?? []);
  const first = plan.years[0]?.year ?? Number(settings.asOf.slice(0, 4));
  const doubts = itemDoubts(inputs);
  const years = plan.years.map(({ items, year }) =>
    items.map((item) => doubts(motors.get(motorKey(item)), item.option, year - first)),
  );
  const energy = parts(years.flat(), 'energySaved');
  return {
    method: 'plan',
    objective: plan.objective,
    value: plan.value,
    bound: plan.bound,
    gap: plan.gap,
    greedy_value: plan.greedy_value,
    ...(free && 'value' in free && { value_without_wishes: free.value }),
    net_present_value_u: sumOverMotors(parts(years.flat(), 'worth')).u,
    ...(energy.length > 0 && { energy_saved: { ...sumOverMotors(energy), unit: 'kWh/a' } }),
    years: plan.years.map(({ items, ...year }, inYear) => ({
      ...year,
      net_present_value_u: sumOverMotors(parts(years[inYear] ?? [], 'worth')).u,
      items: items.flatMap((item, at): ProgrammeItem[] => {
        const motor = motors.get(motorKey(item));
        const option = motor?.options.find(({ id }) => id === item.option);
        if (!motor || !option) return [];
        const { timing: _, override, because, low_case_value = low(motor, item.option, year.year - first), ...rest } = item;
        const { cash_flow, energy_saved, demand_saved, money_saved, emissions_saved, simple_payback } = option;
        const { probability_within_policy: odds } = option;
        const worth = years[inYear]?.[at]?.worth;
        return [
          {
            ...rest,
            ...(because && { because: because.map((each) => ({ ...each })) }),
            ...(worth && item.net_present_value !== undefined && { net_present_value_u: worth.u }),
            ...(low_case_value !== undefined && { low_case_value }),
            rank: motor.rank,
            cash_flow: [...cash_flow],
            trust: motor.trust,
            ...(odds !== undefined && { probability_within_policy: odds }),
            ...(energy_saved && { energy_saved }),
            ...(demand_saved && { demand_saved }),
            ...(money_saved && { money_saved }),
            ...(emissions_saved && { emissions_saved }),
            ...(simple_payback && { simple_payback }),
            ...(override && { override: { ...override } }),
          },
        ];
      }),
    })),
    at_failure: plan.at_failure.map((each) => ({ ...each, expected_spend: [...each.expected_spend] })),
    left_out: plan.left_out.map((each) => ({ ...each, because: { ...each.because } })),
    wishes: wishes.map((wish) => {
      const { motorId: _, ...kept } = wish;
      const found = costOf(wish);
      return { ...kept, ...(found && { cost: found.cost, cost_within: found.within }) };
    }),
    low_case: { energy_price: lowCase.energyPrice, hours: lowCase.hours, binding: terms.robust !== null },
    limits: plan.limits.map((each) => ({ ...each })),
    measure_next: plan.measure_next.slice(0, MOST_READINGS).map((each) => ({ ...each })),
    ...(points && { frontier: points.map((point) => ({ ...point })) }),
  };
}

/** What is carried out, with its doubts, evaluated when asked for: of the few that are funded. */
function itemDoubts({
  again,
}: PlanInputs): (motor: PlannedMotor | undefined, option: string, year: number) => CarriedOut | undefined {
  return (planned, option, year) => {
    const motor = planned && again.motors.get(planned.motorId);
    return motor && carriedOut(evaluateMotor(motor, again.study), option, year);
  };
}

function parts(items: readonly (CarriedOut | undefined)[], of: keyof CarriedOut): Summand[] {
  return items.flatMap((item) => item?.[of] ?? []);
}

/** What an option of a motor is worth in a year in the usual low case, evaluated when asked for: of the few that are funded. */
function lowValues({ again }: PlanInputs): (motor: PlannedMotor, option: string, year: number) => number | undefined {
  const evaluate = lowResults(again.study, USUAL_LOW_CASE);
  return ({ motorId, low }, id, year) => {
    const motor = again.motors.get(motorId);
    // Where the plan has looked at a low case of its own, no other is put beside it.
    if (!motor || low) return undefined;
    return evaluate(motor).options.find((option) => option.id === id)?.net_present_value_by_year[year];
  };
}

/** The cost of a wish, by its place among those of its kind; the motors of a bundle share theirs. */
function wishCostsByMotor(
  wishes: PlanInputs['wishes'],
  costs: readonly WishCost[],
): (wish: PlanInputs['wishes'][number]) => WishCost | undefined {
  const KINDS = { pinned: 'pin', forbidden: 'forbid', must: 'must-do', together: 'bundle' } as const;
  const bundles = engineWishes(wishes).bundles ?? [];
  return (wish) => {
    if (wish.kind === 'override') return undefined;
    const index =
      wish.kind === 'together'
        ? bundles.findIndex(({ name }) => name === wish.bundle)
        : wishes.filter(({ kind }) => kind === wish.kind).indexOf(wish);
    return costs.find((each) => each.wish === KINDS[wish.kind as keyof typeof KINDS] && each.index === index);
  };
}
