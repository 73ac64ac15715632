import type { Evaluation } from '../../evaluate';
import { assumedAmbient, operatingPoint } from '../../machine/operate';
import { exact } from '../../quantity/quantity';
import { runningPrices } from '../running-prices';

/** Which of the assumptions: the ones that save least, the likely ones, those that save most. */
export type Case = 'low' | 'likely' | 'high';

/** One step of the duty with what a measure may change of it. */
export interface MeasureStep {
  readonly shaftKw: number;
  readonly hours: number;
  /** Negative-sequence over rated voltage. */
  readonly negativeSequence: number;
  /** 1 without a drive. */
  readonly driveEfficiency: number;
}

/** Applies measures one after another, each to what the one before it left. */
export function combinedSteps(
  steps: readonly MeasureStep[],
  measures: readonly { readonly change: (steps: readonly MeasureStep[], which: Case) => readonly MeasureStep[] }[],
  which: Case,
): readonly MeasureStep[] {
  return measures.reduce((list, measure) => measure.change(list, which), steps);
}

/** A year on some steps. */
interface YearOfSteps {
  readonly energy: number;
  readonly cost: number;
  /** The cost with that part of the demand alone that a change moves in the first year, as a ratchet holds the rest: for differences. */
  readonly firstYear: number;
}

/**
 * Energy and cost of a year on the steps, each solved on the circuit of the motor. Units: kWh/a, currency a year at marginal prices without what
 * reactive power costs. `undefined` where a step asks for more than the breakdown torque.
 */
export function yearOf(evaluation: Evaluation, steps: readonly MeasureStep[]): YearOfSteps | undefined {
  const { scope, motor } = evaluation;
  const prices = runningPrices(scope, motor, true);
  let [energy, peak] = [0, 0];
  for (const step of steps) {
    if (step.hours <= 0) continue;
    const input = solvedAt(evaluation, step)?.inputPower.value;
    if (input === undefined) return undefined;
    const taken = input / step.driveEfficiency;
    energy += taken * step.hours;
    peak = Math.max(peak, taken);
  }
  const demand = 12 * prices.demandPrice.value * prices.coincidence.value * peak;
  const energyCost = energy * prices.energyPrice.value;
  const { firstYearDemandShare } = prices.growth;
  return { energy, cost: energyCost + demand, firstYear: energyCost + firstYearDemandShare * demand };
}

/** Reactive power at no load and the voltage that was read, kvar; `undefined` where the circuit has no such point. */
export function noLoadKvar(evaluation: Evaluation): number | undefined {
  const at = solvedAt(evaluation, { shaftKw: 0, negativeSequence: 0 });
  if (!at || !(at.powerFactor.value > 0 && at.powerFactor.value < 1)) return undefined;
  return at.inputPower.value * Math.sqrt(1 / at.powerFactor.value ** 2 - 1);
}

function solvedAt({ scope, machine, inUse }: Evaluation, step: Pick<MeasureStep, 'shaftKw' | 'negativeSequence'>) {
  return operatingPoint(scope, machine, exact(step.shaftKw / machine.plate.ratedPower.value, '1'), {
    voltageRatio: inUse?.metered.voltageRatioAtRatedFrequency ?? exact(1, '1'),
    ambient: assumedAmbient(scope),
    negativeSequence: step.negativeSequence,
  });
}
