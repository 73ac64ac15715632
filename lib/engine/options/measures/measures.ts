import type { Evaluation } from '../../evaluate';
import { balanceVoltages } from './balance-voltages';
import { betterBelt } from './better-belt';
import { costTogether, type MeasureCost, measureCost, type Screened, type ScreenedPayback, screenedPayback } from './cost';
import type { Found, Measure } from './measure';
import { powerFactor } from './power-factor';
import { speedControl } from './speed-control';
import { type Case, combinedSteps, yearOf } from './steps';
import { stopIdling } from './stop-idling';

/** The measures of a motor, and what they save together: less than their sum, since each acts on what the others leave. */
export interface Measures {
  readonly measures: readonly Measure[];
  readonly energySavedTogether?: Screened | undefined;
  /** Money a year of the same, without what reactive power costs. */
  readonly moneySavedTogether?: Screened | undefined;
  readonly firstYearSavedTogether?: Screened | undefined;
  /** What those that add to the saving cost together, and their payback; absent where the price of one of them is not known. */
  readonly costTogether?: MeasureCost | undefined;
  readonly paybackTogether?: ScreenedPayback | undefined;
}

/**
 * What is worth offering for the motor as it is, where its data show it: no hours at idle, a drive for a throttled pump or fan, a better belt,
 * balanced voltages, power-factor correction. Every step of the duty is solved again with each measure alone, and with all in sequence. Where the
 * price list holds what a measure takes, its cost and simple payback stand with it.
 *
 * Units: kWh/a, currency a year at the study's marginal prices, kvar. Valid for: a running motor with a usable reading and known hours, not fed
 * by a drive; else nothing is offered. For a page or a list, not for the evaluation.
 */
export function measuresOf(evaluation: Evaluation): Measures {
  const { motor, duty, point, trust } = evaluation;
  if (motor.plate.status !== 'running' || motor.plate.driveFed === true || motor.plate.flowControl === 'drive')
    return { measures: [] };
  if (!duty || !point || trust.level === 'not-usable') return { measures: [] };
  const negativeSequence = evaluation.inUse?.metered.negativeSequence ?? 0;
  const rated = evaluation.machine.plate.ratedPower.value;
  const steps = duty.points.map(({ loadFraction, hours }) => ({
    shaftKw: loadFraction.value * rated,
    hours: hours.value,
    negativeSequence,
    driveEfficiency: 1,
  }));
  const found = [
    stopIdling(steps, rated),
    speedControl(evaluation, steps),
    betterBelt(evaluation),
    balanceVoltages(negativeSequence),
  ];
  const changes = found.filter((each) => each !== undefined);
  const before = yearOf(evaluation, steps);
  const measures: Measure[] = [];
  const kept: Found[] = [];
  let left = before;
  for (const each of changes) {
    const alone = screened((which) => yearOf(evaluation, each.change(steps, which)), before);
    if (!alone || alone.energy.likely <= 0) continue;
    kept.push(each);
    const after = yearOf(evaluation, combinedSteps(steps, kept, 'likely'));
    const cost = each.item && measureCost(evaluation, each.item);
    const firstYearLeft = left && after ? left.firstYear - after.firstYear : 0;
    measures.push({
      id: each.id,
      text: each.text,
      assumed: each.assumed,
      energySaved: alone.energy,
      moneySaved: alone.money,
      firstYearSaved: alone.firstYear,
      energySavedInSequence: left && after && left.energy - after.energy,
      moneySavedInSequence: left && after && left.cost - after.cost,
      item: each.item,
      cost,
      payback: cost && screenedPayback(cost, alone.firstYear),
      paybackInSequence: cost && firstYearLeft > 0 ? cost.value / firstYearLeft : undefined,
    });
    left = after;
  }
  const together =
    kept.length > 0 ? screened((which) => yearOf(evaluation, combinedSteps(steps, kept, which)), before) : undefined;
  const cost = costTogether(measures.filter(countsTogether).map((each) => each.cost));
  const capacitor = powerFactor(evaluation, measures);
  return {
    measures: capacitor ? [...measures, capacitor] : measures,
    energySavedTogether: together?.energy,
    moneySavedTogether: together?.money,
    firstYearSavedTogether: together?.firstYear,
    costTogether: cost,
    paybackTogether: cost && screenedPayback(cost, together?.firstYear),
  };
}

/** Whether a measure adds anything to those before it: one that does not is no part of what they cost together. */
export function countsTogether({ energySavedInSequence: added = 0 }: Measure): boolean {
  return added > 0;
}

type Year = ReturnType<typeof yearOf>;

/** What a change saves a year, and in the first one, where a ratchet may still hold the old peak. */
function screened(
  after: (which: Case) => Year,
  before: Year,
): { energy: Screened; money: Screened; firstYear: Screened } | undefined {
  const [low, likely, high] = [after('low'), after('likely'), after('high')];
  if (!before || !low || !likely || !high) return undefined;
  const of = (pick: (year: NonNullable<Year>) => number): Screened => ({
    low: pick(before) - pick(low),
    likely: pick(before) - pick(likely),
    high: pick(before) - pick(high),
  });
  return { energy: of((year) => year.energy), money: of((year) => year.cost), firstYear: of((year) => year.firstYear) };
}
