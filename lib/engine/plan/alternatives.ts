import { sum } from '../numbers';
import type { Settings } from '../settings';
import type { Outcome } from './choose';
import { solvePlan } from './plan-fleet';
import type { PlanMotor } from './plan-motor';
import type { FrontierPoint, Plan, WishCost } from './plan-result';
import { loadSolver } from './solver';
import type { PlanRun, PlanWishes } from './wishes';

/**
 * The best plan at each multiple of the budget, one solve each: spend against worth. Worth never falls with the money but for the gap; `undefined`
 * when called off. Units: currency for money, the objective's for worth.
 */
export async function frontier(
  motors: readonly PlanMotor[],
  settings: Settings,
  wishes: PlanWishes,
  multiples: readonly number[],
  run: PlanRun = {},
): Promise<FrontierPoint[] | undefined> {
  const solve = await loadSolver();
  const points: FrontierPoint[] = [];
  for (const multiple of [...new Set(multiples)].sort((a, b) => a - b)) {
    run.progress?.({ stage: 'frontier', done: points.length, of: multiples.length });
    const budget = settings.budget.map((limit) => Math.round(100 * limit * multiple) / 100);
    const whole = Math.round(100 * sum(budget)) / 100;
    const solved = solvePlan(solve, { motors, settings: { ...settings, budget }, wishes }, quiet(run));
    if (!solved) return undefined;
    if ('problems' in solved) points.push({ multiple, budget: whole });
    else {
      const { value, bound } = solved.outcome;
      points.push({
        multiple,
        budget: whole,
        spent: spentOf(solved.outcome, budget.length),
        value: cents(value),
        bound: cents(bound),
      });
    }
  }
  return points;
}

/** What each wish costs: the plan without it against the plan as it is, one solve each; `undefined` when called off. Units: the objective's. */
export async function wishCosts(
  motors: readonly PlanMotor[],
  settings: Settings,
  wishes: PlanWishes,
  plan: Pick<Plan, 'value' | 'bound'>,
  run: PlanRun = {},
): Promise<WishCost[] | undefined> {
  const solve = await loadSolver();
  const { pins = [], forbid = [], mustDo = [], bundles = [] } = wishes;
  const others = <T>(list: readonly T[], at: number): readonly T[] => list.filter((_, index) => index !== at);
  const without: readonly (Pick<WishCost, 'wish' | 'index'> & { readonly left: PlanWishes })[] = [
    ...pins.map((_, index) => ({ wish: 'pin' as const, index, left: { ...wishes, pins: others(pins, index) } })),
    ...forbid.map((_, index) => ({ wish: 'forbid' as const, index, left: { ...wishes, forbid: others(forbid, index) } })),
    ...mustDo.map((_, index) => ({ wish: 'must-do' as const, index, left: { ...wishes, mustDo: others(mustDo, index) } })),
    ...bundles.map((_, index) => ({ wish: 'bundle' as const, index, left: { ...wishes, bundles: others(bundles, index) } })),
  ];
  const found: WishCost[] = [];
  for (const { wish, index, left } of without) {
    run.progress?.({ stage: 'wishes', done: found.length, of: without.length });
    const solved = solvePlan(solve, { motors, settings, wishes: left }, quiet(run));
    if (!solved) return undefined;
    // A wish only narrows the choice, so that without it there is a plan wherever there is one with it.
    if ('problems' in solved) continue;
    const { value, bound } = solved.outcome;
    const within = Math.max(plan.bound - plan.value, bound - value);
    found.push({ wish, index, cost: cents(Math.max(0, value - plan.value)), within: cents(within) });
  }
  return found;
}

/** The stages within one solve of many are not told. */
function quiet({ cancelled }: PlanRun): PlanRun {
  return cancelled ? { cancelled } : {};
}

/** The first resources are the money of each year. */
function spentOf({ chosen }: Outcome, years: number): number {
  let sum = 0;
  for (const { uses } of chosen.values())
    for (const { resource, amount } of uses) if (resource < years) sum += Math.round(100 * amount);
  return sum / 100;
}

function cents(value: number): number {
  return Math.round(100 * value) / 100;
}
