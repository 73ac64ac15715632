import { compareNaturally } from '../rank';
import type { OptionResult } from '../result';
import type { Settings } from '../settings';
import type { Chosen, Column, Group, Resource } from './candidate';
import { choose, type Impossible } from './choose';
import { motorKey, type PlanMotor, type Wishes } from './plan-motor';
import type { NoPlan, Plan, PlanItem } from './plan-result';
import { reasonLeftOut } from './reasons';
import { loadSolver } from './solver';

/**
 * Which option each motor gets in which year of the budget, so that the objective is greatest within each year's money.
 *
 * Options carried out now, of motors whose figures may be used, stand to choice; a failed motor must get one in the first year. What is worth
 * doing at failure takes no budget and is listed with its expected spend. The order of the motors does not matter.
 * Money: whole minor units; in nominal terms costs grow with inflation. Gives {@link NoPlan} where what must be done does not fit, naming the year.
 */
export async function planFleet(
  motors: readonly PlanMotor[],
  settings: Settings,
  wishes: Wishes = {},
): Promise<Plan | NoPlan | undefined> {
  const solve = await loadSolver();
  const sorted = [...motors].sort((a, b) => compareNaturally(a.site, b.site) || compareNaturally(a.tag, b.tag));
  const firstYear = Number(settings.asOf.slice(0, 4));
  const resources = settings.budget.map((limit, y): Resource => ({ name: String(firstYear + y), limit }));
  const byKey = new Map(sorted.map((motor) => [motorKey(motor), motor]));
  const members = new Map<string, Member>();
  for (const motor of sorted) members.set(motorKey(motor), { motor, columns: columnsOf(motor, settings, wishes) });
  const groups = groupsOf(members, wishes);
  const outcome = choose({ groups, resources }, solve, wishes.cancelled ? { cancelled: wishes.cancelled } : {});
  if (!outcome) return undefined;
  if ('lacking' in outcome) return { problems: problemsOf(outcome, settings) };
  const years = settings.budget.map((budget, y) => {
    const items = itemsOf(outcome.chosen, y, byKey, settings, wishes);
    const spent = items.reduce((sum, { cost }) => sum + Math.round(100 * cost), 0) / 100;
    return { year: firstYear + y, budget, spent, shadow_price: rounded(outcome.prices[y] ?? 0, 1e6), items };
  });
  const atFailure = sorted.flatMap((motor) => {
    if (outcome.chosen.has(motorKey(motor)) || !usable(motor, wishes) || wishes.forbidden?.has(motorKey(motor))) return [];
    const best = bestAtFailure(motor);
    return best ? [{ site: motor.site, tag: motor.tag, option: best.id, expected_spend: expectedSpend(best, settings) }] : [];
  });
  const listed = new Set(atFailure.map(motorKey));
  return {
    objective: settings.objective,
    value: rounded(outcome.value, 100),
    bound: rounded(outcome.bound, 100),
    gap: rounded(outcome.gap, 1e7),
    greedy_value: rounded(greedy(groups, resources, byKey), 100),
    years,
    at_failure: atFailure,
    left_out: sorted.flatMap((motor) => {
      const key = motorKey(motor);
      if (outcome.chosen.has(key) || listed.has(key)) return [];
      const columns = members.get(key)?.columns ?? [];
      const because = reasonLeftOut(motor, {
        usable: usable(motor, wishes),
        forbidden: wishes.forbidden?.has(key) === true,
        columns,
      });
      return [{ site: motor.site, tag: motor.tag, because }];
    }),
  };
}

interface Member {
  readonly motor: PlanMotor;
  readonly columns: readonly Column[];
}

function usable({ trust, failed, ...motor }: PlanMotor, { overrides }: Wishes): boolean {
  return failed || trust.level !== 'not-usable' || overrides?.has(motorKey(motor)) === true;
}

/** True where an option may stand in the plan of a year: carried out now, priced, and nothing found that rules it out. */
function stands(option: OptionResult): boolean {
  return (
    option.action !== 'keep' && option.timing === 'now' && !option.findings.some(({ severity }) => severity === 'disqualifies')
  );
}

function columnsOf(motor: PlanMotor, settings: Settings, wishes: Wishes): Column[] {
  const key = motorKey(motor);
  if (!usable(motor, wishes) || wishes.forbidden?.has(key)) return [];
  const pin = wishes.pinned?.get(key);
  return motor.options.filter(stands).flatMap((option) =>
    settings.budget.flatMap((_, year): Column[] => {
      if (pin ? pin.option !== option.id || pin.year !== year : motor.failed && year > 0) return [];
      const value = valueIn(option, year, settings);
      // Nothing is done at a loss but what must be done.
      if (value === undefined ? !motor.failed : value <= 0 && !motor.failed && !pin) return [];
      return [{ option: option.id, year, value: value ?? 0, uses: [{ resource: year, amount: costIn(option, year, settings) }] }];
    }),
  );
}

/** Worth of an option carried out in a year, by the study's objective; later years save for fewer years of the horizon. */
function valueIn(option: OptionResult, year: number, settings: Settings): number | undefined {
  const share = Math.max(0, (settings.horizonYears - year) / settings.horizonYears);
  switch (settings.objective) {
    case 'energy':
      return option.energy_saved && option.energy_saved.value * share;
    case 'risk':
      return option.failure_cost_change && -option.failure_cost_change.value * share;
    default:
      return option.net_present_value_by_year[year];
  }
}

function costIn(option: OptionResult, year: number, { moneyTerms, inflation }: Settings): number {
  return rounded(option.cost * (moneyTerms === 'nominal' ? (1 + inflation) ** year : 1), 100);
}

function groupsOf(members: ReadonlyMap<string, Member>, { bundles, pinned }: Wishes): Group[] {
  const bundled = new Set(bundles?.flat());
  const of = (keys: readonly string[]): Group => ({
    id: keys.join('\n'),
    must: keys.some((key) => members.get(key)?.motor.failed === true || pinned?.has(key) === true),
    members: keys.map((key) => ({ id: key, columns: members.get(key)?.columns ?? [] })),
  });
  const singles = [...members.keys()].filter((key) => !bundled.has(key)).map((key) => of([key]));
  const all = [...singles, ...(bundles ?? []).map((keys) => of(keys.filter((key) => members.has(key))))];
  return all.filter((group) => group.must || group.members.some(({ columns }) => columns.length > 0));
}

function itemsOf(
  chosen: Chosen,
  year: number,
  byKey: ReadonlyMap<string, PlanMotor>,
  settings: Settings,
  wishes: Wishes,
): PlanItem[] {
  return [...byKey].flatMap(([key, motor]) => {
    const column = chosen.get(key);
    const option = column?.year === year && motor.options.find(({ id }) => id === column.option);
    if (!option) return [];
    const override = motor.trust.level === 'not-usable' ? wishes.overrides?.get(key) : undefined;
    const worth = option.net_present_value_by_year[year];
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
        ...(override && { override }),
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
function greedy(groups: readonly Group[], resources: readonly Resource[], byKey: ReadonlyMap<string, PlanMotor>): number {
  const left = resources.map(({ limit }) => limit);
  const rank = (group: Group): number =>
    Math.min(...group.members.map(({ id }) => byKey.get(id)?.rank ?? Number.POSITIVE_INFINITY));
  let worth = 0;
  for (const { members } of [...groups].sort((a, b) => Number(b.must) - Number(a.must) || rank(a) - rank(b))) {
    for (let year = 0; year < left.length; year++) {
      const picks = members.map(({ columns }) =>
        columns
          .filter((column) => column.year === year)
          .reduce<Column | undefined>((best, each) => (best && best.value >= each.value ? best : each), undefined),
      );
      const cost = picks.reduce((sum, pick) => sum + (pick?.uses[0]?.amount ?? 0), 0);
      if (picks.some((pick) => pick === undefined) || cost > (left[year] ?? 0)) continue;
      left[year] = (left[year] ?? 0) - cost;
      worth += picks.reduce((sum, pick) => sum + (pick?.value ?? 0), 0);
      break;
    }
  }
  return worth;
}

function problemsOf({ lacking, stuck }: Impossible, { currency }: Settings): NoPlan['problems'] {
  return [
    ...lacking.map(({ resource, by }) => ({
      code: 'budget-too-small',
      text: `What must be done does not fit the budget of ${resource}: ${currency} ${by.toFixed(2)} are lacking.`,
    })),
    ...stuck.map((id) => ({
      code: 'nothing-to-choose',
      text: `Something must be done with ${id.split('\n').filter(Boolean).join(' ')}, and no option of it can be carried out in a year of the budget.`,
    })),
  ];
}

function rounded(value: number, scale: number): number {
  return Math.round(value * scale) / scale;
}
