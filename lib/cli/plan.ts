import { type MotorResult, motorKey, type Plan, type PlanMotor, planFleet, type Settings } from '@/lib/engine';
import { rankedHead } from '@/lib/features/evaluation/result-text';
import { csvRow } from '@/lib/features/fleet/csv-cell';
import { UsageError } from './exit';
import type { Output } from './output';
import type { Ranked } from './ranked';
import type { Spool } from './spool';

/** The plan over the results of a fleet; where what must be done does not fit, the command ends with the reason. */
export async function planOf(
  ranked: readonly Ranked[],
  spool: Spool,
  about: { readonly settings: Settings; readonly failed: ReadonlySet<string> },
): Promise<Plan> {
  const motors = ranked.map(({ key, rank, number }): PlanMotor => {
    const result = JSON.parse(rankedHead(key, rank) + Buffer.from(spool.get(number)).toString('utf8')) as MotorResult;
    const { site, tag, trust, options } = result;
    // Only what the plan needs is kept of each result.
    return { site, tag, rank, trust: { level: trust.level, findings: [] }, options, failed: about.failed.has(motorKey(result)) };
  });
  const plan = await planFleet(motors, about.settings);
  if (!plan) throw new Error('the solver found no plan');
  if ('problems' in plan) throw new UsageError(plan.problems.map(({ text }) => text).join(' '));
  const { value, gap, years, left_out } = plan;
  const items = years.reduce((sum, year) => sum + year.items.length, 0);
  console.error(
    `${items} of ${motors.length} motors funded, worth ${value.toFixed(2)} (${plan.objective}), within ${(100 * gap).toFixed(3)} % of the best possible; ${left_out.length} left out.`,
  );
  return plan;
}

/** One line for each motor of the plan: its year, option, cost and worth, or why it is left out. */
export function writePlanCsv(output: Output, plan: Plan): void {
  output.write(csvRow(['year', 'site', 'tag', 'option', 'cost', 'net_present_value', 'because']));
  for (const { year, items } of plan.years)
    for (const item of items)
      output.write(
        csvRow([
          String(year),
          item.site,
          item.tag,
          item.option,
          item.cost.toFixed(2),
          item.net_present_value === undefined ? '' : item.net_present_value.toFixed(2),
          '',
        ]),
      );
  for (const { site, tag, option } of plan.at_failure) output.write(csvRow(['at failure', site, tag, option, '', '', '']));
  for (const { site, tag, because } of plan.left_out) output.write(csvRow(['', site, tag, '', '', '', because.text]));
}
