import { adjustedRate, appraise, type Stated } from '../money/appraisal';
import { type IncrementalAnalysis, incrementalAnalysis } from '../money/incremental';
import { fromMoney } from '../money/money';
import { sum } from '../numbers';
import type { Basis } from '../options/flow-counts';
import type { Option, OptionWorkings } from '../options/option';
import type { Settings } from '../settings';

/** What an option is worth by the measures that the results do not carry. */
interface WorthMeasures {
  readonly id: string;
  readonly internalRate: Stated;
  readonly modifiedRate: Stated;
  readonly adjustedRate: Stated;
  /** Present value of all that is spent over the horizon with the option; absent where that of the baseline cannot be told. */
  readonly lifeCycleCost?: number | undefined;
}

/** Present value of what the baseline costs over the horizon, by line; the value left is negative. Units: currency. */
interface BaselineCost {
  readonly running: number;
  readonly repairs: number;
  readonly valueLeft: number;
  /** Relief is negative; 0 without tax. */
  readonly tax: number;
  readonly failure: number;
  readonly total: number;
}

/** The options of a motor by every measure, and what each dearer one adds to the cheaper ones. */
export interface MeasuresOfWorth {
  readonly baseline?: BaselineCost | undefined;
  readonly options: readonly WorthMeasures[];
  readonly steps: IncrementalAnalysis;
}

/** What is spent if nothing is decided: the old motor, and what the policy does when it fails. */
const OF_BASELINE: ReadonlySet<Basis> = new Set([
  ...(['old', 'oldRepaired', 'same', 'repairNow', 'repairAtFailure', 'repairLater'] as const),
  ...(['workNow', 'workAtFailure', 'workLater'] as const),
  ...(['sameInstalled', 'sameAgain', 'rebateSame', 'purchaseSame', 'oldWorth', 'stop'] as const),
]);

/**
 * Rates of return, life-cycle costs and increments of a motor's options.
 *
 * The life-cycle cost of an option is that of the baseline less its net present value, so that the difference of any two is that of their values.
 * Units: currency, fractions a year. Income is taken to be reinvested at the discount rate. For a page, not for the evaluation.
 * Source: ASTM E917 and NIST Handbook 135 (from memory); see `appraise` and `incrementalAnalysis`.
 */
export function measuresOfWorth(options: readonly Option[], settings: Settings): MeasuresOfWorth {
  const { discountRate, horizonYears } = settings;
  const valued = options.filter(({ id, workings }) => id !== 'keep' && workings !== undefined);
  const baseline = baselineCost(valued);
  const flowsOf = ({ cashFlow }: Option) => cashFlow.map(fromMoney);
  return {
    baseline,
    options: valued.map((option): WorthMeasures => {
      const { internalRateOfReturn, modifiedRateOfReturn } = appraise(flowsOf(option), { discountRate });
      const value = option.figures.net_present_value?.value;
      return {
        id: option.id,
        internalRate: internalRateOfReturn,
        modifiedRate: modifiedRateOfReturn,
        adjustedRate: adjustedRate(option.savingsToInvestment, discountRate, horizonYears),
        lifeCycleCost: baseline && value !== undefined ? baseline.total - value : undefined,
      };
    }),
    steps: incrementalAnalysis(
      valued.map((option) => ({ id: option.id, flows: flowsOf(option) })),
      discountRate,
    ),
  };
}

/** The baseline is in the flow of every option that ends the old motor's running at once; the others hold only what differs from it. */
function baselineCost(options: readonly Option[]): BaselineCost | undefined {
  const whole = options.find(({ workings }) => workings?.kind === 'change-now' || workings?.kind === 'change-failed');
  if (!whole?.workings) return undefined;
  const line = (...names: readonly string[]) => presentValue(whole.workings, names);
  const parts = {
    running: line('running'),
    repairs: line('avoided_repair') + line('rebate'),
    valueLeft: line('residual'),
    tax: line('tax'),
    failure: line('failure'),
  };
  return { ...parts, total: sum(Object.values(parts)) };
}

function presentValue(workings: OptionWorkings | undefined, lines: readonly string[]): number {
  let sum = 0;
  for (const { basis, line, presentValue: worth } of workings?.plan.terms ?? [])
    if (OF_BASELINE.has(basis) && lines.includes(line)) sum += worth * (workings?.worths[basis]?.quantity.value ?? 0);
  return sum;
}
