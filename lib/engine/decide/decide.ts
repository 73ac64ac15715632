import { timeToFailure } from '../options/time-to-failure';
import type { Action, Because, Timing, TrustLevel } from '../result';
import type { Settings } from '../settings';
import {
  best,
  type Choice,
  type ChoosingMotor,
  checksOf,
  isBarred,
  isBetterThanRepair,
  isCapped,
  isWithinLimits,
  optionWords,
  presentValueOf,
  whyNot,
} from './limits';
import { because, moneyWords } from './reasons';

/** What the decision rests on. */
export interface DecideInput {
  /** All options of the motor, `keep` among them. */
  readonly options: readonly Choice[];
  readonly trust: TrustLevel;
  readonly callsForRepair: readonly ('rewind' | 'bearing-job')[];
  /** True when a reading is beyond a limit that bears on safety. */
  readonly mustAct: boolean;
  readonly motor: ChoosingMotor;
  readonly settings: Settings;
}

/** What to do, and why, in order of weight. */
export interface Decision {
  readonly action: Action;
  readonly timing: Timing;
  /** Id of the option. */
  readonly option: string;
  readonly because: readonly Because[];
  /** Group 0 within policy or failed, 1 others, 2 not usable; then the value by which the fleet is ranked. */
  readonly ranking: { readonly group: 0 | 1 | 2; readonly value: number };
}

/**
 * Decides one motor. In this order: out of service; failed; condition that calls for repair; readings that may not be used; the best
 * replacement now within the policy's limits, then one that would be but for a check; the best at failure; else keep, with the limit that
 * stopped the best option. Doing nothing is an honest result, and always has its reason.
 *
 * Units: values in the study's currency. Source: policy of the study; groups of the ranking as the results file defines them.
 */
export function decide(input: DecideInput): Decision {
  const { motor, trust } = input;
  const { status } = motor.plate;
  if (status === 'spare' || status === 'retired')
    return keep([because('out-of-service', { status })], trust === 'not-usable' ? 2 : 1, 0);
  if (status === 'failed') return decideFailed(input);
  const first: Because[] = input.mustAct ? [because('safety-limit', {})] : [];
  if (input.callsForRepair.length > 0) return decideRepair(input, first);
  if (trust === 'not-usable') return keep([...first, because('measure-first', { readings: motor.readings.length })], 2, 0);
  return decideByEnergy(input, first);
}

function keep(reasons: Because[], group: 0 | 1 | 2, value: number): Decision {
  return { action: 'keep', timing: 'now', option: 'keep', because: reasons, ranking: { group, value } };
}

function take(option: Choice, reasons: readonly Because[], group: 0 | 1 | 2): Decision {
  return {
    action: option.action,
    timing: option.timing,
    option: option.id,
    because: reasons,
    ranking: { group, value: presentValueOf(option) ?? 0 },
  };
}

function checkReasons(option: Choice): Because[] {
  const checks = checksOf(option);
  return checks.length > 0 ? [because('check-before', { checks: checks.join('; ') })] : [];
}

function decideFailed(input: DecideInput): Decision {
  const reasons = [because('failed', {})];
  const real = input.options.filter((option) => option.action !== 'keep');
  const valued = real.filter((option) => presentValueOf(option) !== undefined);
  const chosen = best(valued) ?? real.find((option) => option.action === 'repair') ?? real[0];
  if (!chosen) return keep([...reasons, because('repair-not-priced', {})], 0, 0);
  if (valued.length === 0) return take(chosen, [...reasons, valueUnknown(chosen, input.motor), ...checkReasons(chosen)], 0);
  return take(chosen, [...reasons, ...againstOthers(chosen, valued, input), ...checkReasons(chosen)], 0);
}

/** Reasons are put into words when they are read, and hold no more than their words need: an input holds every option of a motor. */
function words(option: Choice, { plate }: ChoosingMotor): { option: string } {
  return { option: optionWords(option, plate) };
}

function valueUnknown(option: Choice, motor: ChoosingMotor): Because {
  return because('value-unknown', () => words(option, motor));
}

/** The value of the chosen option against the next best, when there is one. */
function againstOthers(chosen: Choice, all: readonly Choice[], { motor, settings }: DecideInput): Because[] {
  const runnerUp = best(all.filter((option) => option !== chosen));
  if (!runnerUp) return [];
  return [
    because('highest-value', () => ({
      option: optionWords(chosen, motor.plate),
      value: moneyWords(presentValueOf(chosen) ?? 0, settings.currency),
      runnerUp: optionWords(runnerUp, motor.plate),
      runnerUpValue: moneyWords(presentValueOf(runnerUp) ?? 0, settings.currency),
    })),
  ];
}

function decideRepair(input: DecideInput, first: readonly Because[]): Decision {
  const { options, settings, trust, callsForRepair } = input;
  const usable = trust !== 'not-usable';
  const work = callsForRepair.includes('rewind') ? 'a rewind' : 'new bearings';
  const reasons = [...first, because('condition-calls-for-repair', { work })];
  const repair = options.find((option) => option.action === 'repair');
  const better = usable
    ? best(
        changesNow(options).filter(
          (option) =>
            !isCapped(option) && (repair ? isBetterThanRepair(option, repair, settings) : isWithinLimits(option, settings)),
        ),
      )
    : undefined;
  if (better) {
    const against = repair
      ? [
          because('replacement-beats-repair', {
            ...words(better, input.motor),
            value: moneyWords(presentValueOf(better) ?? 0, settings.currency),
            repairValue: moneyWords(presentValueOf(repair) ?? 0, settings.currency),
          }),
        ]
      : [];
    const within = repair ? withinBeyondRepair(better, input) : withinPolicy(better, input);
    return take(better, [...reasons, ...against, within, ...provisional(trust)], 0);
  }
  if (!repair) return keep([...reasons, because('repair-not-priced', {})], usable ? 1 : 2, 0);
  return take(repair, reasons, usable ? 1 : 2);
}

function changesNow(options: readonly Choice[]): Choice[] {
  return options.filter((option) => option.timing === 'now' && (option.action === 'replace' || option.action === 'resize'));
}

function withinPolicy(option: Choice, { motor, settings: { policy, currency } }: DecideInput): Because {
  return because('within-policy', () => ({
    ...words(option, motor),
    payback: option.figures.simple_payback?.value ?? 0,
    limit: policy.maxSimplePaybackYears,
    probability: option.probabilityWithinPolicy ?? 0,
    least: policy.minProbability,
    value: moneyWords(presentValueOf(option) ?? 0, currency),
  }));
}

function withinBeyondRepair({ beyondRepair }: Choice, { settings: { policy } }: DecideInput): Because {
  return because('within-policy-beyond-repair', () => ({
    payback: beyondRepair?.payback ?? 0,
    limit: policy.maxSimplePaybackYears,
    probability: beyondRepair?.probability ?? 0,
    least: policy.minProbability,
  }));
}

function provisional(trust: TrustLevel): Because[] {
  return trust === 'provisional' ? [because('trust-provisional', {})] : [];
}

function decideByEnergy(input: DecideInput, first: readonly Because[]): Decision {
  const { motor, options, settings, trust } = input;
  const now = changesNow(options);
  const within = now.filter((option) => isWithinLimits(option, settings));
  const free = best(within.filter((option) => !isCapped(option)));
  if (free) {
    const others = within.filter((option) => !isCapped(option));
    return take(free, [...first, withinPolicy(free, input), ...againstOthers(free, others, input), ...provisional(trust)], 0);
  }
  const capped = best(within);
  if (capped) return take(capped, [...first, ...checkReasons(capped), withinPolicy(capped, input), ...provisional(trust)], 1);
  const stopped = whyNot(best(now), { motor, settings });
  const later = best(
    options.filter((option) => option.timing === 'at-failure' && !isBarred(option) && presentValueOf(option) !== undefined),
  );
  const worth = (later && presentValueOf(later)) ?? 0;
  if (later && worth > WORTH_IT) {
    return take(
      later,
      [
        ...first,
        because('pays-at-failure', () => ({
          ...words(later, motor),
          value: moneyWords(worth, settings.currency),
          // A condition that raises the rate calls for a repair and is decided before.
          failure: timeToFailure({ ...settings, raised: false }),
          horizon: settings.horizonYears,
          policy: settings.policy.atFailure,
        })),
        stopped,
        ...checkReasons(later),
        ...provisional(trust),
      ],
      1,
    );
  }
  const atFailure =
    later && worth < -WORTH_IT
      ? [
          because('usual-serves-better', () => ({
            ...words(later, motor),
            value: moneyWords(worth, settings.currency),
            policy: settings.policy.atFailure,
          })),
        ]
      : [];
  const alternative = best(options.filter((option) => option.action !== 'keep'));
  return keep([...first, stopped, ...atFailure], 1, alternative ? (presentValueOf(alternative) ?? 0) : 0);
}

/** Values up to half a hundredth are rounding. */
const WORTH_IT = 0.005;
