import {
  evaluateMotor,
  frontier,
  lowCase,
  type Motor,
  type MotorResult,
  motorKey,
  motorResult,
  moved,
  type Plan,
  type PlanMotor,
  planFleet,
  planMotor,
  type StudyContext,
} from '@/lib/engine';
import { rankedHead } from '@/lib/features/evaluation/result-text';
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
  const low = lowResults(study, wishes, again);
  const motors = ranked.map(({ key, rank, number }): PlanMotor => {
    const result = JSON.parse(rankedHead(key, rank) + Buffer.from(spool.get(number)).toString('utf8')) as MotorResult;
    const name = motorKey(result);
    return planMotor(result, { failed: failed.has(name), low: low(name) });
  });
  const wanted = readWishes(wishes);
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

/** What each motor would come to in the low case, where the plan asks for it. */
function lowResults(
  study: StudyContext,
  { robust }: PlanWishesFile,
  motors: ReadonlyMap<string, Motor>,
): (key: string) => Pick<MotorResult, 'options'> | undefined {
  const [first] = motors.values();
  if (!robust || !first) return () => undefined;
  // One study for all: what its motors share is worked out once.
  const cheap = lowCase({ motor: first, study }, { energyPrice: robust.energy_price, hours: 1 }).study;
  return (key) => {
    const motor = motors.get(key);
    if (!motor) return undefined;
    const question = moved({ motor, study: cheap }, 'hours', robust.hours);
    return motorResult(evaluateMotor(question.motor, question.study));
  };
}
