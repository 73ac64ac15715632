import type { Evaluation } from '../evaluate';
import { driveEfficiency } from '../load/drive';
import type { DrivenMachine } from '../motor';
import { fixed } from '../quantity/words';
import {
  costTogether,
  type MeasureCost,
  type MeasureItem,
  measureCost,
  type Screened,
  type ScreenedPayback,
  screenedPayback,
} from './measure-cost';
import { type Case, combinedSteps, type MeasureStep, noLoadKvar, yearOf } from './measure-steps';
import { runningPrices } from './running-prices';

/** What can be done beside another motor, in the order in which one acts on what the others leave: from the process back to the supply. */
export const MEASURE_IDS = ['stop-idling', 'speed-control', 'better-belt', 'balance-voltages', 'power-factor'] as const;
export type MeasureId = (typeof MEASURE_IDS)[number];

/** One measure, screened on assumptions: to be looked into, never planned as it stands. */
export interface Measure {
  readonly id: MeasureId;
  readonly text: string;
  /** What was assumed, and where it is from. */
  readonly assumed: string;
  /** kWh and money a year if nothing else is done. */
  readonly energySaved?: Screened | undefined;
  readonly moneySaved?: Screened | undefined;
  /** Money of the first year, which the payback counts: a ratchet may still hold the old peak. Absent where it is that of any year. */
  readonly firstYearSaved?: Screened | undefined;
  /** kWh and money a year that it adds after the measures before it. */
  readonly energySavedInSequence?: number | undefined;
  readonly moneySavedInSequence?: number | undefined;
  /** What the price list calls what it takes; absent where no list can hold it, since it differs from case to case. */
  readonly item?: MeasureItem | undefined;
  /** What it costs by the list, and the payback if nothing else is done; absent where the list has no such item. */
  readonly cost?: MeasureCost | undefined;
  readonly payback?: ScreenedPayback | undefined;
  /** Years until the cost is paid back by what the measure adds after those before it; absent where that is nothing. */
  readonly paybackInSequence?: number | undefined;
  /** The measure that must not be done beside this one. */
  readonly notWith?: MeasureId | undefined;
  /** Capacitor at the motor, kvar; it saves no energy in the motor itself. */
  readonly capacitorKvar?: number | undefined;
  /** True where the prices of the study leave open whether what it saves is charged, so that no money can be told. */
  readonly chargeUnknown?: true | undefined;
}

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

type Change = (steps: readonly MeasureStep[], which: Case) => readonly MeasureStep[];
interface Found {
  readonly id: MeasureId;
  readonly text: string;
  readonly assumed: string;
  readonly item?: MeasureItem;
  readonly change: Change;
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
  const found = [stopIdling(steps, rated), speedControl(evaluation, steps), betterBelt(evaluation), balance(negativeSequence)];
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

/** A step below this share of the rating counts as idling (common practice). */
const IDLE = 0.1;
/** Share of idle hours that can be switched off (common practice). */
const STOPPABLE = { low: 0.5, likely: 0.8, high: 1 } as const;

function stopIdling(steps: readonly MeasureStep[], ratedKw: number): Found | undefined {
  const idle = (step: MeasureStep) => step.shaftKw < IDLE * ratedKw;
  const hours = steps.reduce((sum, step) => sum + (idle(step) ? step.hours : 0), 0);
  if (hours <= 0 || !steps.some((step) => !idle(step) && step.hours > 0)) return undefined;
  return {
    id: 'stop-idling',
    text: `Switch the motor off while it idles: its duty has ${fixed(hours, 0)} hours a year below ${100 * IDLE} % load.`,
    assumed: 'Half to all of the idle hours can be stopped (common practice); heed the permitted starts an hour.',
    change: (list, which) => list.map((step) => (idle(step) ? { ...step, hours: step.hours * (1 - STOPPABLE[which]) } : step)),
  };
}

const THROTTLED: ReadonlySet<DrivenMachine> = new Set(['pump', 'fan', 'blower']);
/** Power of a throttled machine at no flow over that at full flow (common practice). */
const AT_NO_FLOW = { low: 0.4, likely: 0.5, high: 0.6 } as const;
/** Static head over total head at full flow: assumed, since it is not on the sheet. */
const STATIC_HEAD = { pump: { low: 0.6, likely: 0.3, high: 0 }, fan: { low: 0.2, likely: 0.05, high: 0 } } as const;
/** Least speed that is run at. */
const LEAST_SPEED = 0.3;

/**
 * Shaft power at a share of full flow by speed, over that at full flow: flow times head, of which the static part stays and the rest goes with
 * the square of the flow. Source: affinity laws of fans and pumps; system curve with static head.
 */
export function powerBySpeed(flow: number, staticHead: number): number {
  return flow * (staticHead + (1 - staticHead) * flow * flow);
}

function speedControl({ motor, machine, scope }: Evaluation, steps: readonly MeasureStep[]): Found | undefined {
  const { drivenMachine: driven, flowControl, peakLoadKw = 0 } = motor.plate;
  if (driven === undefined || !THROTTLED.has(driven) || (flowControl !== 'throttle' && flowControl !== 'damper'))
    return undefined;
  const rated = machine.plate.ratedPower.value;
  const full = Math.max(peakLoadKw, ...steps.map((step) => step.shaftKw));
  return {
    id: 'speed-control',
    text: `Vary the speed of the ${driven} with a drive in place of the ${flowControl === 'damper' ? 'damper' : 'throttle valve'}.`,
    assumed: `Screening by the affinity laws: full flow at ${full.toFixed(1)} kW, power at no flow 40 to 60 % of that (common practice), static head ${
      driven === 'pump' ? '0 to 60 %' : '0 to 20 %'
    } of the total (assumed), drive efficiency by a table of typical values.${flowControl === 'damper' ? ' The damper is taken to be at the outlet: vanes at the inlet throttle with less loss, and less is saved there.' : ''} Measure flow and head before buying.`,
    item: 'drive',
    change: (list, which) =>
      list.map((step) => {
        const flow = Math.min(1, Math.max(LEAST_SPEED, (step.shaftKw / full - AT_NO_FLOW[which]) / (1 - AT_NO_FLOW[which])));
        const shaftKw = Math.min(step.shaftKw, full * powerBySpeed(flow, STATIC_HEAD[driven === 'pump' ? 'pump' : 'fan'][which]));
        return { ...step, shaftKw, driveEfficiency: driveEfficiency(scope, rated, shaftKw / rated).value, negativeSequence: 0 };
      }),
  };
}

/** Loads that jerk, on which toothed belts do not last (common practice). */
const JERKS: ReadonlySet<DrivenMachine> = new Set(['crusher', 'mill', 'compressor', 'hoist']);

function betterBelt({ motor, scope }: Evaluation): Found | undefined {
  const { coupling, drivenMachine } = motor.plate;
  if (coupling !== 'v-belt') return undefined;
  const row = (belt: string, condition: string) =>
    scope.tables.belts.rows.find((entry) => entry.belt === belt && entry.condition.startsWith(condition))?.lowPct;
  const [fresh, kept, worn] = [row('V-belt', 'new'), row('V-belt', 'well kept'), row('V-belt', 'in service')];
  const [notched, synchronous] = [row('notched V-belt', 'about'), row('synchronous', 'wide')];
  if (fresh === undefined || kept === undefined || worn === undefined || notched === undefined || synchronous === undefined)
    return undefined;
  const old = { low: fresh, likely: kept, high: worn };
  const jerks = drivenMachine !== undefined && JERKS.has(drivenMachine);
  return {
    id: 'better-belt',
    text: jerks
      ? 'Change the V-belt for a notched one on the same sheaves.'
      : 'Change the V-belt for a synchronous belt; choose the sheaves for the driven speed of today, since it does not slip.',
    assumed: `V-belt in use between ${worn} and ${fresh} %, ${jerks ? `notched ${notched - fresh} points above` : `synchronous ${synchronous} %`} (table of belts, after US DOE Motor Systems Tip Sheet 5).`,
    item: jerks ? 'notched-belt' : 'synchronous-belt',
    change: (list, which) => {
      const better = jerks ? old[which] + notched - fresh : synchronous;
      return list.map((step) => ({ ...step, shaftKw: (step.shaftKw * old[which]) / better }));
    },
  };
}

/** Unbalance that is worth correcting, and what may be left of it; negative-sequence over rated voltage. */
const UNBALANCE_LIMIT = 0.01;
const UNBALANCE_LEFT = { low: 0.01, likely: 0.005, high: 0 } as const;

function balance(negativeSequence: number): Found | undefined {
  if (negativeSequence <= UNBALANCE_LIMIT) return undefined;
  return {
    id: 'balance-voltages',
    text: `Find and correct the cause of the voltage unbalance: the negative sequence is ${(100 * negativeSequence).toFixed(1)} % of rated voltage.`,
    assumed:
      'Half a per cent is left, between none and one; loss by the negative-sequence circuit of the motor. Longer life comes on top.',
    change: (list, which) =>
      list.map((step) => ({ ...step, negativeSequence: Math.min(step.negativeSequence, UNBALANCE_LEFT[which]) })),
  };
}

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

function powerFactor(evaluation: Evaluation, others: readonly Measure[]): Measure | undefined {
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
