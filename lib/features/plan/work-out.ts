import {
  type MotorRef,
  motorKey,
  type NoPlan,
  type OptionResult,
  type Plan,
  type PlanMotor,
  type PlanWishes,
  planFleet,
} from '@/lib/engine';
import type { PlanInputs, PlannedMotor } from './data';
import type { PlanOutcome, ProgrammeItem } from './programme';

/**
 * The plan of a study as it is kept: what the engine chooses, with the figures of each chosen option beside it, and what the plan would be worth if
 * nobody had wished anything. `undefined` when it was cancelled, or the solver found nothing.
 */
export async function workOutPlan(
  { motors, settings, wishes }: PlanInputs,
  cancelled: () => boolean = () => false,
): Promise<PlanOutcome | undefined> {
  const fleet = motors.map(({ motorId: _, trust, ...motor }): PlanMotor => ({ ...motor, trust: { level: trust, findings: [] } }));
  const wanted = engineWishes(wishes);
  const plan = await planFleet(fleet, settings, wanted, { cancelled });
  if (!plan) return undefined;
  if ('problems' in plan) return { problems: plan.problems.map((each) => ({ ...each })) };
  const bound = wishes.some(({ kind }) => kind !== 'override');
  const { overrides } = wanted;
  const free = bound ? await planFleet(fleet, settings, { overrides }, { cancelled }) : undefined;
  if (cancelled()) return undefined;
  return programmeOf(plan, new Map(motors.map((motor) => [motorKey(motor), motor])), { free, wishes });
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
    overrides: of('override').map(({ site, tag, by, reason = '' }) => ({ site, tag, by, reason })),
    bundles: [...bundles].filter(([, motors]) => motors.length > 1).map(([name, motors]) => ({ name, motors })),
  };
}

function programmeOf(
  plan: Plan,
  motors: ReadonlyMap<string, PlannedMotor>,
  { free, wishes }: { readonly free: Plan | NoPlan | undefined; readonly wishes: PlanInputs['wishes'] },
): PlanOutcome {
  return {
    method: 'plan',
    objective: plan.objective,
    value: plan.value,
    bound: plan.bound,
    gap: plan.gap,
    greedy_value: plan.greedy_value,
    ...(free && 'value' in free && { value_without_wishes: free.value }),
    years: plan.years.map(({ items, ...year }) => ({
      ...year,
      items: items.flatMap((item): ProgrammeItem[] => {
        const motor = motors.get(motorKey(item));
        const option = motor?.options.find(({ id }) => id === item.option);
        if (!motor || !option) return [];
        const { timing: _, override, ...rest } = item;
        const { cash_flow, energy_saved, demand_saved, money_saved, emissions_saved, simple_payback } = option;
        const { probability_within_policy: odds } = option;
        return [
          {
            ...rest,
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
    wishes: wishes.map(({ motorId: _, ...wish }) => wish),
  };
}
