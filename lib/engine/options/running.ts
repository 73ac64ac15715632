import type { MotorScope } from '../context';
import { apply } from '../formula/apply';
import * as $ from '../generated/money';
import * as O from '../generated/options';
import type { DutyPoint, Machine, OperatingPoint } from '../machine/model';
import { type Conditions, operatingPoint } from '../machine/operate';
import type { Quantity } from '../quantity/quantity';
import { exponentOf, type LoadLaw, speedRatio } from './load-law';
import type { RunningPrices } from './running-prices';

/** A machine at one step of the duty; hours absent when they are not known. */
export interface RunningStep {
  readonly point: OperatingPoint;
  readonly hours?: Quantity<'h/a'> | undefined;
}

/** A year of running of one machine: what it takes and what that costs. */
export interface RunningYear {
  /** Input at the step whose input is highest, and the part of it in the billed peak. */
  readonly demand: Quantity<'kW'>;
  readonly energy?: Quantity<'kWh/a'> | undefined;
  readonly cost?: RunningCost | undefined;
}

/** Cost of a year of running; its parts apart as numbers, for the lines of a cash flow. */
interface RunningCost {
  readonly total: Quantity<'currency/a'>;
  readonly energy: number;
  readonly demand: number;
  /** What the demand costs, with its doubt, where a ratchet delays what is saved of it. */
  readonly demandCost?: Quantity<'currency/a'> | undefined;
  /** What reactive power costs; zero where the tariff has no such charge. */
  readonly powerFactor: number;
}

/**
 * The existing motor at each step of its duty; at the present load without hours when no duty is known. `undefined` when a step asks for more
 * than the breakdown torque.
 */
export function oldSteps(
  scope: MotorScope,
  machine: Machine,
  duty: readonly DutyPoint[] | undefined,
  point: OperatingPoint | undefined,
  conditions: Conditions,
): RunningStep[] | undefined {
  const steps: RunningStep[] = [];
  for (const { loadFraction, hours } of duty ?? (point ? [{ loadFraction: point.loadFraction, hours: undefined }] : [])) {
    const at = operatingPoint(scope, machine, loadFraction, conditions);
    if (!at) return undefined;
    steps.push({ point: at, ...(hours && { hours }) });
  }
  return steps;
}

/**
 * Another machine on the same duty: each step where its torque meets the load, with the hours that the same flow then takes.
 * `undefined` when a step asks for more than its breakdown torque. Source: affinity laws; see {@link speedRatio}.
 */
export function newSteps(
  scope: MotorScope,
  machine: Machine,
  old: readonly RunningStep[],
  law: LoadLaw,
  conditions: Conditions,
): RunningStep[] | undefined {
  const steps: RunningStep[] = [];
  for (const step of old) {
    const ratio = law.speedHeld ? undefined : speedRatio(scope, step.point, machine, law, conditions);
    if (!law.speedHeld && !ratio) return undefined;
    const shaftPower = ratio
      ? apply(scope, O.power_at_speed_ratio, {
          shaft_power: step.point.shaftPower,
          speed_ratio: ratio,
          torque_exponent: exponentOf(scope, law, step.point.speed.value, ratio.value),
        })
      : step.point.shaftPower;
    const load = apply(scope, O.load_fraction_of_power, { shaft_power: shaftPower, rated_power: machine.plate.ratedPower });
    const point = operatingPoint(scope, machine, load, conditions);
    if (!point) return undefined;
    const hours =
      step.hours && ratio && law.onOff
        ? apply(scope, O.hours_at_speed_ratio, { hours: step.hours, speed_ratio: ratio })
        : step.hours;
    steps.push({ point, ...(hours && { hours }) });
  }
  return steps;
}

/** Index of the step with the highest input among those that run; of all when none has hours. */
export function peakStep(steps: readonly RunningStep[]): number {
  let peak = 0;
  let highest = Number.NEGATIVE_INFINITY;
  steps.forEach((step, index) => {
    if (step.hours?.value === 0 && steps.some((other) => (other.hours?.value ?? 1) > 0)) return;
    if (step.point.inputPower.value <= highest) return;
    highest = step.point.inputPower.value;
    peak = index;
  });
  return peak;
}

/** True when hours are known and the motor runs in at least one of them. */
export function runs(steps: readonly RunningStep[]): boolean {
  return steps.some((step) => (step.hours?.value ?? 0) > 0);
}

/** Energy, demand and cost of a year on the steps; `peak` is the step whose input is billed as demand. */
export function runningYear(
  scope: MotorScope,
  steps: readonly RunningStep[],
  peak: number,
  tariff: RunningPrices,
): RunningYear | undefined {
  const at = steps[peak];
  if (!at) return undefined;
  const demand = apply(scope, O.billed_demand, { input_power: at.point.inputPower, coincidence: tariff.coincidence });
  const energy = energyOf(scope, steps, (point) => point.inputPower);
  if (!energy) return { demand };
  const reactive = tariff.reactive && reactiveCost(scope, steps, at, tariff, tariff.reactive);
  return { demand, energy, cost: runningCost(scope, energy, demand, tariff, reactive) };
}

function runningCost(
  scope: MotorScope,
  energy: Quantity<'kWh/a'>,
  demand: Quantity<'kW'>,
  tariff: RunningPrices,
  reactive: Quantity<'currency/a'> | undefined,
): RunningCost {
  const energyCost = apply(scope, $.energy_cost, { energy, energy_price: tariff.energyPrice });
  const demandCost = apply(scope, $.demand_cost, { demand, demand_price: tariff.demandPrice });
  const running = apply(scope, $.running_cost, { energy: energyCost, demand: demandCost });
  return {
    total: reactive ? apply(scope, $.running_cost_with_power_factor, { running, power_factor: reactive }) : running,
    energy: energyCost.value,
    demand: demandCost.value,
    ...(tariff.growth.firstYearDemandShare < 1 && { demandCost }),
    powerFactor: reactive?.value ?? 0,
  };
}

/** What the reactive power of a year costs; `undefined` where a point has no power factor below 1. */
function reactiveCost(
  scope: MotorScope,
  steps: readonly RunningStep[],
  peak: RunningStep,
  { coincidence }: RunningPrices,
  prices: NonNullable<RunningPrices['reactive']>,
): Quantity<'currency/a'> | undefined {
  const atPeak = reactivePower(scope, peak.point);
  let energy: Quantity<'kvarh/a'> | undefined;
  for (const { hours, point } of steps) {
    const reactive = reactivePower(scope, point);
    if (!hours || !reactive) return undefined;
    const part = apply(scope, O.annual_reactive_energy, { hours, reactive });
    energy = energy ? apply(scope, O.reactive_energy_sum, { first: energy, second: part }) : part;
  }
  if (!atPeak || !energy) return undefined;
  return apply(scope, $.power_factor_cost, {
    reactive_demand: apply(scope, O.reactive_in_peak, { reactive: atPeak, coincidence }),
    reactive_demand_price: prices.perKvarMonth,
    reactive_energy: energy,
    reactive_energy_price: prices.perKvarh,
  });
}

function reactivePower(scope: MotorScope, { inputPower, powerFactor }: OperatingPoint): Quantity<'kvar'> | undefined {
  const { value } = powerFactor;
  // At unity the slope by the power factor has no bound, and there is no reactive power to price.
  if (!(value > 0 && value < 0.9999)) return undefined;
  return apply(scope, O.reactive_power, { input_power: inputPower, power_factor: powerFactor });
}

function energyOf(
  scope: MotorScope,
  steps: readonly RunningStep[],
  power: (point: OperatingPoint) => Quantity<'kW'>,
): Quantity<'kWh/a'> | undefined {
  let sum: Quantity<'kWh/a'> | undefined;
  for (const { hours, point } of steps) {
    if (!hours) return undefined;
    const part = apply(scope, O.annual_energy, { hours, power: power(point) });
    sum = sum ? apply(scope, O.energy_sum, { first: sum, second: part }) : part;
  }
  return sum;
}

/** Mean efficiency over the duty, at the one point when there is one. */
export function meanEfficiency(scope: MotorScope, steps: readonly RunningStep[], year: RunningYear): Quantity<'1'> | undefined {
  const [only] = steps;
  if (steps.length === 1) return only?.point.efficiency;
  const shaft = energyOf(scope, steps, (point) => point.shaftPower);
  if (!shaft || !year.energy || year.energy.value <= 0) return undefined;
  return apply(scope, O.energy_ratio, { shaft_energy: shaft, input_energy: year.energy });
}

/** Mean efficiencies below this are those of an idling machine, where a change of efficiency in points says nothing. */
const IDLING = 0.2;

/**
 * The same year after a repair that changes the efficiency; unchanged without a change, or when the machine idles. What reactive power
 * costs is carried along in proportion: a rewind of like winding hardly changes it.
 */
export function repairedYear(
  scope: MotorScope,
  year: RunningYear,
  efficiency: Quantity<'1'> | undefined,
  change: Quantity<'1'> | undefined,
): RunningYear {
  if (!change || !efficiency || efficiency.value < IDLING) return year;
  const ratio = apply(scope, O.input_ratio_after_repair, { efficiency, change });
  return {
    demand: apply(scope, O.power_after_repair, { power: year.demand, ratio }),
    energy: year.energy && apply(scope, O.energy_after_repair, { energy: year.energy, ratio }),
    cost: year.cost && {
      total: apply(scope, O.cost_after_repair, { cost: year.cost.total, ratio }),
      energy: year.cost.energy * ratio.value,
      demand: year.cost.demand * ratio.value,
      demandCost: year.cost.demandCost && apply(scope, O.cost_after_repair, { cost: year.cost.demandCost, ratio }),
      powerFactor: year.cost.powerFactor * ratio.value,
    },
  };
}
