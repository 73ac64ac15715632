import {
  frontier,
  type Motor,
  type MotorResult,
  motorKey,
  type Plan,
  type PlanMotor,
  planFleet,
  planMotor,
  type StudyContext,
} from '@/lib/engine';
import { rankedHead } from '@/lib/features/evaluation/result-text';
import { lowResults } from '@/lib/features/plan/low-case';
import { type PlanWishesFile, readWishes } from '@/lib/features/plan/wishes';
import { UsageError } from './exit';
import type { Ranked } from './ranked';
import type { Spool } from './spool';

/** What the plan wants to know of the fleet beside its results. */
export interface Planning {
  readonly study: StudyContext;
  readonly wishes: PlanWishesFile;
  readonly failed: Set<string>;
  /** Kept only where the plan evaluates them again. */
  readonly motors: Map<string, Motor>;
}

/** The plan over the results of a fleet; where what must be done does not fit, the command ends with the reason. */
export async function planOf(
  ranked: readonly Ranked[],
  spool: Spool,
  { study, wishes, failed, motors: again }: Planning,
): Promise<Plan> {
  const wanted = readWishes(wishes);
  const low = wanted.robust && lowResults(study, wanted.robust);
  const motors = ranked.map(({ key, rank, number }): PlanMotor => {
    const result = JSON.parse(rankedHead(key, rank) + Buffer.from(spool.get(number)).toString('utf8')) as MotorResult;
    const name = motorKey(result);
    const motor = again.get(name);
    return planMotor(result, { failed: failed.has(name), low: motor && low?.(motor) });
  });
  const found = await planFleet(motors, study.settings, wanted);
  if (!found) throw new Error('the solver found no plan');
  if ('problems' in found) throw new UsageError(found.problems.map(({ text }) => text).join(' '));
  const points = wishes.frontier.length > 0 ? await frontier(motors, study.settings, wanted, wishes.frontier) : undefined;
  const plan: Plan = points ? { ...found, frontier: points } : found;
  const { value, gap, years, left_out } = plan;
  const items = years.reduce((sum, year) => sum + year.items.length, 0);
  console.error(
    `${items} of ${motors.length} motors funded, worth ${value.toFixed(2)} (${plan.objective}), within ${(100 * gap).toFixed(3)} % of the best possible; ${left_out.length} left out.`,
  );
  return plan;
}
