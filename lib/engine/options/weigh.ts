import type { MotorScope } from '../context';
import type { Finding } from '../quantity/finding';
import { changeCandidates, outlayWorth, presentWork } from './change';
import { Costs } from './costs';
import { OPTIONS } from './findings';
import { lawFindings } from './load-law';
import type { Option } from './option';
import { type Present, presentSide, runningWorth, type WeighInput } from './present';
import { otherRatings, standardRatings } from './ratings';
import { placeNote } from './resize-notes';
import { type Candidate, keepOption, weighOption } from './weigh-option';
import type { Worths } from './worth';

export type { FlowLines, Option, OptionFigures } from './option';
export type { WeighInput } from './present';

/**
 * Weighs what can be done with one motor: keep, repair, replace by a premium motor, or resize, each now or at failure.
 *
 * Each replacement is solved at its own operating point, so that a faster shaft's extra power is in the saving. Money is against the
 * baseline of docs/methods/options-and-money.md: keep running, and at each expected failure do what the policy says.
 * `keep` is always among the options; a spare or retired motor has nothing else.
 */
export function weighOptions(scope: MotorScope, input: WeighInput): { options: Option[]; findings: Finding[] } {
  const { settings } = scope;
  const { plate } = input.motor;
  const years = Math.min(settings.budget.length, settings.horizonYears);
  const { status } = plate;
  if (status === 'spare' || status === 'retired')
    return {
      options: [keepOption(scope, plate.ratedPowerKw, years, [OPTIONS.make('not-in-service', { status })])],
      findings: [],
    };
  const costs = new Costs(scope, plate, input.machine.plate.poles);
  const present = presentSide(scope, input, costs);
  const findings = studyFindings(scope, input, present);
  const keep = keepOption(scope, plate.ratedPowerKw, years, [
    OPTIONS.make(present.failed ? 'failed-must-act' : 'nothing-spent', {}),
  ]);
  const options: Option[] = [keep];
  const ratings = ratingsToWeigh(scope, input, present);
  const place = placeNote(present, ratings);
  if (place) findings.push(place);
  const changes = changeCandidates(scope, present, costs, ratings);
  const repair = repairCandidate(scope, present, changes.find(({ action }) => action === 'replace')?.worths);
  const candidates: Candidate[] = repair ? [repair, ...changes] : changes;
  let tooLarge = false;
  for (const candidate of candidates) {
    const option = weighOption(scope, candidate);
    if (option) options.push(option);
    else tooLarge = true;
  }
  if (tooLarge) findings.push(OPTIONS.make('amount-too-large', {}));
  return { options, findings: [...findings, ...costs.findings] };
}

function studyFindings(scope: MotorScope, input: WeighInput, present: Present): Finding[] {
  const { settings } = scope;
  const findings: Finding[] = [];
  if (!input.duty) findings.push(OPTIONS.make('hours-unknown', {}));
  if (present.failed && input.screeningOnly)
    findings.push(OPTIONS.make('failed-at-assumed-load', { assumed_load: settings.assumedLoad }));
  findings.push(...present.tariff.findings, ...lawFindings(present.plate, settings.loadCurves));
  if (settings.taxRate > 0 && settings.depreciation === null)
    findings.push(OPTIONS.make('tax-without-depreciation', { tax_rate: settings.taxRate }));
  return findings;
}

/** Another rating is weighed on a usable load alone. */
function ratingsToWeigh(scope: MotorScope, input: WeighInput, present: Present): readonly number[] {
  const load = input.screeningOnly ? undefined : input.point?.loadFraction.value;
  if (load === undefined || !(load > 0)) return [];
  const { policy, standards } = scope.settings;
  return otherRatings({
    ladder: standardRatings(scope.tables, standards, present.plate.ratedPowerKw),
    ratedPowerKw: present.plate.ratedPowerKw,
    loadFraction: load,
    highestLoadKw: present.highestLoadKw,
    resizeBelow: policy.resizeBelowLoadFraction,
    spareCapacityPct: policy.spareCapacityPct,
  });
}

/**
 * Repair is offered when the motor has failed or its condition calls for it. Where the policy would replace a failed motor, the repair is
 * valued against that: `replaced` holds what a premium motor of the same rating is worth, and without it the repair has no value.
 */
function repairCandidate(scope: MotorScope, present: Present, replaced: Worths | undefined): Candidate | undefined {
  const { repairNow, failed, repairKind, year, plate } = present;
  if (!repairNow) return undefined;
  const kind = failed ? 'repair-failed' : repairKind === 'rewind' ? 'rewind-now' : 'bearings-now';
  const after = repairKind === 'rewind' || failed ? present.repairedYear : year;
  return {
    action: 'repair',
    timing: 'now',
    kind,
    ratedPowerKw: plate.ratedPowerKw,
    cost: repairNow.installed,
    netCost: repairNow.installed,
    before: failed ? present.repairedYear : year,
    after,
    worths: {
      old: runningWorth(year),
      oldRepaired: runningWorth(present.repairedYear),
      same: replaced?.same,
      sameInstalled: replaced?.sameInstalled,
      sameAgain: replaced?.sameAgain,
      rebateSame: replaced?.rebateSame,
      purchaseSame: replaced?.purchaseSame,
      oldWorth: replaced?.oldWorth,
      investment: { quantity: repairNow.installed },
      repairNow: { quantity: repairNow.installed },
      repairAtFailure: outlayWorth(present.repairAtFailure),
      repairLater: outlayWorth(present.repairLater),
      ...presentWork(present),
      stop: present.stop,
    },
    growth: present.tariff.growth,
    valued: !failed || scope.settings.policy.atFailure === 'repair' || replaced !== undefined,
    stopCostUnknown: present.stopCostUnknown,
    screening: [],
    findings: () => [],
  };
}
