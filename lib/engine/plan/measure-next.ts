import type { DoubtResult, OptionResult } from '../result';
import type { Settings } from '../settings';
import { type Act, resolvedShare, valueOfInformation } from './information';
import type { PlanMotor } from './plan-motor';
import type { MeasureNext } from './plan-result';
import { costIn } from './prepare';
import { type Readings, USUAL_READINGS } from './wishes';

/** Values below half a cent are none. */
const WORTH_NAMING = 0.005;

/**
 * What is worth reading before money is spent: for each motor and each of its main doubts, how much better its best option would be on average if the doubt
 * were resolved, wholly and by a reading as good as stated, against what the reading costs. Each doubt by itself; dearest advantage first.
 *
 * An option of a year counts for its value less what its cost is worth elsewhere in the plan (`prices`, of the money of each year). Where figures may not
 * be used nothing is done without a reading, and only that of the load opens the way; so all that the best option would be worth is the reading's.
 * Zero, and left out, where nothing that may come out would change what is best.
 * Units: currency. Source: preposterior analysis with normal beliefs, Raiffa and Schlaifer 1961.
 */
export function measureNext(
  motors: readonly PlanMotor[],
  settings: Settings,
  { prices, readings = USUAL_READINGS }: { readonly prices: readonly number[]; readonly readings?: Readings | undefined },
): MeasureNext[] {
  const found = motors.flatMap((motor) => (motor.failed ? [] : (motor.doubts ?? []).flatMap((doubt) => readingOf(motor, doubt))));
  return found.sort((a, b) => b.net - a.net);

  function readingOf(motor: PlanMotor, { about, figure, effects }: DoubtResult): MeasureNext[] {
    const closed = motor.trust.level === 'not-usable';
    if (closed && about !== 'load') return [];
    const effect = new Map(effects.map(({ option, net_present_value }) => [option, net_present_value]));
    const acts = motor.options.flatMap((option): Act[] => {
      const mean = worthOf(option, settings, prices);
      return mean === undefined ? [] : [{ mean, slope: effect.get(option.id) ?? 0 }];
    });
    const { cost, u } = readings[about];
    const share = resolvedShare(figure.u, about === 'hours' ? u * figure.value : u);
    const best = acts.reduce((most, { mean }) => Math.max(most, mean), 0);
    const without = closed ? 0 : best;
    const worth = (part: number) =>
      best - without + valueOfInformation(acts.map(({ mean, slope }) => ({ mean, slope: part * slope })));
    const perfect = worth(1);
    if (perfect < WORTH_NAMING) return [];
    const sample = worth(share);
    const cents = (value: number) => Math.round(100 * value) / 100;
    return [
      {
        site: motor.site,
        tag: motor.tag,
        about,
        value_of_perfect: cents(perfect),
        value_of_reading: cents(sample),
        cost,
        net: cents(sample - cost),
      },
    ];
  }
}

/** What an option adds beyond what its money would bring elsewhere, in its best year; absent where it does not stand to choice. */
function worthOf(option: OptionResult, settings: Settings, prices: readonly number[]): number | undefined {
  // That the load is only assumed is what a reading mends.
  if (option.findings.some(({ severity, code }) => severity === 'disqualifies' && code !== 'screening-only')) return undefined;
  if (option.action === 'keep') return 0;
  if (option.timing === 'at-failure') return option.net_present_value?.value;
  const byYear = option.net_present_value_by_year.map(
    (value, year) => value - (prices[year] ?? 0) * costIn(option, year, settings),
  );
  return byYear.length > 0 ? Math.max(...byYear) : undefined;
}
