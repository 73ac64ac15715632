import type { Evaluation } from '../../evaluate';
import { runningPrices } from '../running-prices';
import { type MeasureCost, measureCost, screenedPayback } from './cost';
import type { Measure } from './measure';
import { noLoadKvar } from './steps';

/** Power factor below which correction is offered, and that it is brought to; share of no-load reactive power that a capacitor may supply. */
const POOR_POWER_FACTOR = 0.85;
const GOOD_POWER_FACTOR = 0.95;
const OF_NO_LOAD = 0.9;

/**
 * Reactive power that brings a power factor to a better one, kvar: P (tan φ₁ − tan φ₂).
 * Source: V. K. Mehta and R. Mehta, Principles of Power System, example 6.4.
 */
export function correctingKvar(inputKw: number, from: number, to: number): number {
  const tangent = (powerFactor: number) => Math.sqrt(1 / powerFactor ** 2 - 1);
  return inputKw * (tangent(from) - tangent(to));
}

/** A capacitor at the motor, where its power factor is poor. */
export function powerFactor(evaluation: Evaluation, others: readonly Measure[]): Measure | undefined {
  const { point, motor, scope, duty } = evaluation;
  // The field of a synchronous motor sets its power factor.
  if (motor.plate.machineKind === 'synchronous') return undefined;
  const at = point?.powerFactor.value;
  const noLoad = noLoadKvar(evaluation);
  if (!point || at === undefined || !(at > 0 && at < POOR_POWER_FACTOR) || noLoad === undefined) return undefined;
  const wanted = correctingKvar(point.inputPower.value, at, GOOD_POWER_FACTOR);
  const kvar = Math.min(wanted, OF_NO_LOAD * noLoad);
  const { reactive, coincidence } = runningPrices(scope, motor, true);
  const hours = duty?.points.reduce((sum, step) => sum + step.hours.value, 0) ?? 0;
  const cost = measureCost(evaluation, 'capacitor', kvar);
  const instead = others.some(({ id }) => id === 'speed-control');
  // Flat prices are a mean of a bill: whether it charges reactive power they do not say. A tariff states its charges.
  const chargeUnknown = !reactive && !Object.hasOwn(scope.settings.tariffs, motor.site);
  const free = chargeUnknown
    ? '; flat prices say nothing of a charge for reactive power: see the bill, which may have one'
    : '; the tariff charges nothing for reactive power, so it saves no money on the bill';
  const yearly = reactive && kvar * (12 * coincidence.value * reactive.perKvarMonth.value + hours * reactive.perKvarh.value);
  return {
    id: 'power-factor',
    text: `A capacitor of about ${kvar.toPrecision(2)} kvar at the motor lifts its power factor from ${at.toFixed(2)}${reactive ? '' : free}.${instead ? ' It is this or the drive: no capacitor belongs between a drive and its motor, and the drive corrects the power factor itself.' : ''}`,
    assumed: `At most ${100 * OF_NO_LOAD} % of the reactive power at no load, so that the motor does not excite itself (common practice). Not with harmonics from drives near by; stored charge: discharge and lock out before work.`,
    capacitorKvar: kvar,
    item: 'capacitor',
    cost,
    ...(instead && { notWith: 'speed-control' as const }),
    ...(chargeUnknown && { chargeUnknown }),
    ...(yearly !== undefined && yearlyMoney(yearly, cost)),
  };
}

function yearlyMoney(yearly: number, cost: MeasureCost | undefined): Pick<Measure, 'moneySaved' | 'payback'> {
  const moneySaved = { low: yearly, likely: yearly, high: yearly };
  return { moneySaved, payback: cost && screenedPayback(cost, moneySaved) };
}
