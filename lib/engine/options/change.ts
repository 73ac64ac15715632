import type { MotorScope } from '../context';
import { apply } from '../formula/apply';
import * as $ from '../generated/money';
import * as O from '../generated/options';
import { driveEfficiency } from '../load/drive';
import { rewindChange } from '../nameplate/rewind';
import { once } from '../once';
import type { Finding } from '../quantity/finding';
import type { Quantity } from '../quantity/quantity';
import { checksBefore } from './checks';
import type { Costs, Outlay } from './costs';
import { OPTIONS } from './findings';
import { beyondCurve } from './load-law';
import { oldWorth, type Present, runningWorth } from './present';
import { type Change, rebateOf, replacementMachine } from './replacement';
import { heatOn, resizeNotes } from './resize-notes';
import { meanEfficiency, newSteps, repairedYear, runningYear } from './running';
import type { Worth, Worths } from './value';
import type { Candidate } from './weigh-option';

/**
 * Replacement by a premium motor of the same rating and of each other rating given: now and at failure, or for a failed motor now.
 * Where no price or no class efficiency is known the option is left out, and a finding says so.
 */
export function changeCandidates(
  scope: MotorScope,
  present: Present,
  costs: Costs,
  otherRatings: readonly number[],
): Candidate[] {
  const same = changeTo(scope, present, costs, present.plate.ratedPowerKw);
  const changes = same ? [same] : [];
  for (const rating of otherRatings) {
    const other = changeTo(scope, present, costs, rating);
    if (other) changes.push(other);
  }
  const candidates: Candidate[] = [];
  const rebateSame = same && rebateFor(scope, present, same, 'replace');
  const held = present.law.speedHeld && changes.length > 0 ? speedHeld(scope, present) : undefined;
  for (const change of changes) {
    const action = change === same ? 'replace' : 'resize';
    const rebate = change === same && rebateSame ? rebateSame : rebateFor(scope, present, change, action);
    const findings = once(() => findingsOf(scope, present, change, same, held));
    const worths = worthsOf(scope, present, costs, { change, same, rebate, rebateSame });
    candidates.push(...candidatesOf(scope, present, { change, action, rebate, findings, worths, same }));
  }
  return candidates;
}

function rebateFor(scope: MotorScope, { year }: Present, change: Change, action: 'replace' | 'resize'): Quantity<'currency'> {
  return rebateOf(scope, action, {
    ratedPowerKw: change.replacement.ratedPowerKw,
    installedCost: change.outlay.installed.value,
    savedKwh: (year?.energy?.value ?? 0) - (change.year?.energy?.value ?? 0),
  });
}

function changeTo(scope: MotorScope, present: Present, costs: Costs, ratedPowerKw: number): Change | undefined {
  const outlay = costs.motor(ratedPowerKw);
  if (!outlay) return undefined;
  const replacement = replacementMachine(scope, present.plate, present.machine, ratedPowerKw, outlay.line);
  if (!replacement) {
    costs.say(OPTIONS.make('class-unknown', { rated_power_kw: ratedPowerKw }));
    return undefined;
  }
  const { machine } = replacement;
  const steps = newSteps(scope, machine, present.steps, present.law, present.conditions);
  if (!steps) {
    costs.say(OPTIONS.make('too-small-for-duty', { rated_power_kw: ratedPowerKw }));
    return undefined;
  }
  const year = runningYear(scope, steps, present.peak, present.tariff);
  const efficiency = year && meanEfficiency(scope, steps, year);
  return {
    replacement,
    outlay,
    steps,
    year,
    repairedYear: year && repairedYear(scope, year, efficiency, rewindOf(scope, present, ratedPowerKw)),
  };
}

/** What the next rewind of the new motor takes: another rating may lie on the other side of the step in the table. */
function rewindOf(scope: MotorScope, { plate, rewind }: Present, ratedPowerKw: number): Quantity<'1'> {
  return ratedPowerKw === plate.ratedPowerKw
    ? rewind
    : rewindChange(scope, ratedPowerKw, 'rewind-change', 'efficiency lost in the next rewind');
}

/** `held` says that a drive holds the speed. */
function findingsOf(
  scope: MotorScope,
  present: Present,
  change: Change,
  same: Change | undefined,
  held: Finding | undefined,
): Finding[] {
  const { plate } = present;
  const { ratedPowerKw, findings } = change.replacement;
  const resized = ratedPowerKw !== plate.ratedPowerKw;
  const eaten = speedEffect(present, change);
  const left = beyondCurve(
    present.law,
    [...present.steps, ...change.steps].map(({ point }) => point.speed.value),
  );
  return [
    ...findings,
    ...checksBefore({
      tables: scope.tables,
      plate,
      poles: present.machine.plate.poles,
      synchronousSpeedRpm: present.machine.plate.synchronousSpeed.value,
      newRatedPowerKw: ratedPowerKw,
      highestLoadKw: present.highestLoadKw,
      exponent: present.law.exponent.value,
      curve: present.law.curve?.points,
      ...(resized && heatOn(present, change)),
    }),
    ...(resized ? resizeNotes(scope, present, change, same) : []),
    ...(resized && plate.peakLoadKw === undefined
      ? [OPTIONS.make('peak-load-unknown', { highest_load_kw: present.highestLoadKw })]
      : []),
    ...(eaten ? [eaten] : []),
    ...(left ? [left] : []),
    ...(held ? [held] : []),
  ];
}

function speedHeld(scope: MotorScope, present: Present): Finding {
  const rated = present.plate.ratedPowerKw;
  const load = present.steps[present.peak]?.point.shaftPower.value ?? rated;
  return OPTIONS.make('speed-held', { drive_loss: 1 / driveEfficiency(scope, rated, load / rated).value - 1 });
}

/** Share of the saving by efficiency that a faster shaft must leave, so that nothing is said. */
const SHARE_LEFT = 0.75;

/** A change of speed below this is not worth a word, in r/min. */
const LEAST_RPM = 1;

/** Says so when a faster shaft takes more than a quarter of what the efficiency saves. */
function speedEffect(present: Present, change: Change): Finding | undefined {
  if (present.law.speedHeld || !present.year?.energy || !change.year?.energy) return undefined;
  let withoutSpeed = 0;
  present.steps.forEach((old, index) => {
    const after = change.steps[index];
    if (!after || !old.hours || old.point.efficiency.value <= 0 || after.point.efficiency.value <= 0) return;
    const saved = O.power_saved_by_efficiency.f(
      present.machine.plate.ratedPower.value,
      old.point.loadFraction.value,
      old.point.efficiency.value,
      after.point.efficiency.value,
    );
    withoutSpeed += saved * old.hours.value;
  });
  const saved = present.year.energy.value - change.year.energy.value;
  const from = present.steps[present.peak]?.point.speed.value ?? 0;
  const to = change.steps[present.peak]?.point.speed.value ?? 0;
  if (to - from < LEAST_RPM || withoutSpeed <= 0 || saved >= SHARE_LEFT * withoutSpeed) return undefined;
  return OPTIONS.make('speed-eats-saving', { speed_change: to - from, without_speed: withoutSpeed, saved });
}

function worthsOf(
  scope: MotorScope,
  present: Present,
  costs: Costs,
  given: {
    change: Change;
    same: Change | undefined;
    rebate: Quantity<'currency'>;
    rebateSame: Quantity<'currency'> | undefined;
  },
): Worths {
  const { change, same, rebate, rebateSame } = given;
  const later = present.repairLater;
  // Where the list has no repair at the other rating, the same cost is taken, so that no saving comes out of a gap in the list.
  const repairOption = change === same ? later : (costs.listedRepair('rewind', change.replacement.ratedPowerKw) ?? later);
  return {
    old: runningWorth(present.year),
    oldRepaired: runningWorth(present.repairedYear),
    same: runningWorth(same?.year),
    option: runningWorth(change.year),
    optionRepaired: runningWorth(change.repairedYear),
    investment: outlayWorth(change.outlay),
    investmentAgain: { quantity: change.outlay.again },
    rebate: { quantity: rebate },
    rebateSame: rebateSame && { quantity: rebateSame },
    repairNow: outlayWorth(present.repairNow),
    repairAtFailure: outlayWorth(present.repairAtFailure),
    repairLater: outlayWorth(later),
    // A quotation tells what a like motor's repair costs, so that a healthy pair earns none.
    repairOptionFirst: outlayWorth(change === same ? present.repairAtFailure : repairOption),
    repairOption: outlayWorth(repairOption),
    ...presentWork(present),
    workOptionFirst: workWorth(change === same ? present.repairAtFailure : repairOption),
    workOption: workWorth(repairOption),
    sameInstalled: outlayWorth(same?.outlay),
    sameAgain: same && { quantity: same.outlay.again },
    purchaseOption: { quantity: change.outlay.machine },
    purchaseSame: same && { quantity: same.outlay.machine },
    oldWorth: oldWorth(scope, present.plate, same?.outlay.machine),
    stop: present.stop,
  };
}

/** An outlay as a worth of the cash flow. */
export function outlayWorth(outlay: Outlay | undefined): Worth | undefined {
  return outlay && { quantity: outlay.installed };
}

/** What repairs of the present motor buy that lasts: new bearings are worn as any, and leave nothing. */
export function presentWork({ repairKind, repairNow, repairAtFailure, repairLater }: Present): Worths {
  return {
    workNow: repairKind === 'rewind' ? workWorth(repairNow) : undefined,
    workAtFailure: workWorth(repairAtFailure),
    workLater: workWorth(repairLater),
  };
}

function workWorth(outlay: Outlay | undefined): Worth | undefined {
  return outlay && { quantity: outlay.machine };
}

function less(scope: MotorScope, outlay: Quantity<'currency'>, relief: Quantity<'currency'>): Quantity<'currency'> {
  return apply(scope, $.net_cost, { outlay, relief });
}

function candidatesOf(
  scope: MotorScope,
  present: Present,
  given: {
    change: Change;
    action: 'replace' | 'resize';
    rebate: Quantity<'currency'>;
    findings: () => readonly Finding[];
    worths: Worths;
    same: Change | undefined;
  },
): Candidate[] {
  const { change, action, rebate, findings, worths } = given;
  const { installed } = change.outlay;
  const baselineKnown = scope.settings.policy.atFailure === 'repair' || given.same !== undefined;
  const afterRebate = rebate.value === 0 ? installed : less(scope, installed, rebate);
  const base: Shared = {
    action,
    ratedPowerKw: change.replacement.ratedPowerKw,
    efficiencyClass: 'premium',
    nominalEfficiencyPct: change.replacement.nominalEfficiencyPct,
    after: change.year,
    worths,
    growth: present.tariff.growth,
    screening: present.screening,
    findings,
  };
  if (present.failed) {
    const repair = present.repairNow;
    const netCost = repair ? less(scope, afterRebate, repair.installed) : afterRebate;
    return [
      candidate(base, {
        timing: 'now',
        kind: 'change-failed',
        cost: installed,
        netCost,
        before: present.repairedYear,
        valued: repair !== undefined && baselineKnown,
        stopCostUnknown: false,
      }),
    ];
  }
  const now = candidate(base, {
    timing: 'now',
    kind: 'change-now',
    cost: installed,
    netCost: afterRebate,
    before: present.year,
    sparedRepair: present.repairNow && {
      installed: present.repairNow.installed,
      year: present.repairKind === 'rewind' ? present.repairedYear : present.year,
    },
    valued: baselineKnown,
    stopCostUnknown: present.stopCostUnknown,
  });
  const repair = present.repairAtFailure;
  if (!repair) return [now];
  const cost = less(scope, installed, repair.installed);
  return [
    now,
    candidate(base, {
      timing: 'at-failure',
      kind: 'change-at-failure',
      cost,
      netCost: rebate.value === 0 ? cost : less(scope, afterRebate, repair.installed),
      before: present.repairedYear,
      valued: baselineKnown,
      stopCostUnknown: false,
    }),
  ];
}

type Shared = Pick<
  Candidate,
  | 'action'
  | 'ratedPowerKw'
  | 'efficiencyClass'
  | 'nominalEfficiencyPct'
  | 'after'
  | 'worths'
  | 'growth'
  | 'screening'
  | 'findings'
>;

/** Field by field, since spreading objects here would cost more than the arithmetic. */
function candidate(base: Shared, own: Omit<Candidate, keyof Shared>): Candidate {
  return {
    action: base.action,
    timing: own.timing,
    kind: own.kind,
    ratedPowerKw: base.ratedPowerKw,
    efficiencyClass: base.efficiencyClass,
    nominalEfficiencyPct: base.nominalEfficiencyPct,
    cost: own.cost,
    netCost: own.netCost,
    before: own.before,
    sparedRepair: own.sparedRepair,
    after: base.after,
    worths: base.worths,
    growth: base.growth,
    valued: own.valued,
    stopCostUnknown: own.stopCostUnknown,
    screening: base.screening,
    findings: base.findings,
  };
}
