import { BEARS_ON_SAFETY } from '../condition/findings';
import type { Because, MotorResult } from '../result';
import type { MotorRef } from './wishes';

/** What the plan takes from a motor's result. */
export type PlanMotor = Pick<MotorResult, 'site' | 'tag' | 'area' | 'rank' | 'trust' | 'options' | 'doubts'> & {
  /** A failed motor must be seen to. */
  readonly failed: boolean;
  /** So must one of which a reading is beyond a limit that bears on safety: what was found. */
  readonly safety?: Because | undefined;
  /** Values by year of the budget in the low case, by option. */
  readonly low?: Readonly<Record<string, readonly number[]>> | undefined;
};

/** Key of a motor in a plan: site and tag, which together are unique. */
export const motorKey = ({ site, tag }: MotorRef): string => `${site}\n${tag}`;

/** A result as the plan takes it. @param about.low the result of the same motor in the low case, where the plan asks for it. */
export function planMotor(
  result: Pick<MotorResult, 'site' | 'tag' | 'area' | 'rank' | 'trust' | 'options' | 'doubts' | 'decision' | 'condition'>,
  { failed, low }: { readonly failed: boolean; readonly low?: Pick<MotorResult, 'options'> | undefined },
): PlanMotor {
  const { site, tag, area, rank, trust, options, doubts } = result;
  const breach = breachOf(result);
  return {
    site,
    tag,
    ...(area !== undefined && { area }),
    rank,
    trust: { level: trust.level, findings: [] },
    options,
    ...(doubts && { doubts }),
    failed,
    ...(breach && { safety: breach }),
    ...(low && {
      low: Object.fromEntries(low.options.map(({ id, net_present_value_by_year }) => [id, net_present_value_by_year])),
    }),
  };
}

/** What was found beyond a limit that bears on safety; where no finding says more, the decision's own reason. */
function breachOf({ decision, condition }: Pick<MotorResult, 'decision' | 'condition'>): Because | undefined {
  const reason = decision.because.find(({ code }) => code === 'safety-limit');
  const found = condition.indicators.flatMap(({ findings }) => findings).find(({ code }) => BEARS_ON_SAFETY.has(code));
  return reason && found ? { code: found.code, text: found.text } : reason;
}
