import type { TimeToFailure } from '../options/time-to-failure';
import { fixed } from '../quantity/words';
import type { Because } from '../result';

type Words<E> = (evidence: E) => string;

function reason<E>(words: Words<E>): Words<E> {
  return words;
}

const years = (value: number): string => `${value.toFixed(1)} years`;
/** Of paybacks beyond so many years nobody asks by how much. */
const NO_MATTER_HOW_LONG = 100;
const sentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
const percent = (value: number): string => `${Math.round(value * 100)} %`;

/** Difference of two shares, never zero where there is one. */
function points(difference: number): string {
  const whole = Math.round(difference * 100);
  return whole < 1 ? 'less than a point' : whole === 1 ? '1 point' : `${whole} points`;
}

/** Money in words: whole units in groups of three. */
export function moneyWords(amount: number, currency: string): string {
  return `${fixed(amount, 0)} ${currency}`;
}

/** When the failure that an option waits for is expected; nothing where that is not known. */
function whenItFails({ failure, horizon }: { failure: TimeToFailure | undefined; horizon: number }): string {
  if (!failure) return '';
  const { rate, years: mean, lowYears, highYears, withinHorizon } = failure;
  const short = (value: number) => Number(value.toPrecision(2));
  return ` At ${short(100 * rate)} % of failures a year it fails after ${short(mean)} years on average (${short(lowYears)} to ${short(highYears)} as the rate is doubled or halved), and within the ${horizon} years looked at with a chance of ${percent(withinHorizon)}.`;
}

/** What is done at a failure unless something else is decided. */
function usualAtFailure(policy: 'repair' | 'replace'): string {
  return policy === 'repair' ? 'the usual repair' : 'a premium motor of the present rating';
}

/** What a decision rests on, by code; each in one sentence with its numbers. */
export const REASONS = {
  'out-of-service': reason<{ status: string }>(
    (e) => `The motor is ${e.status === 'spare' ? 'a spare' : e.status} and uses no energy: there is nothing to decide.`,
  ),
  failed: reason<Record<string, never>>(() => 'The motor has failed, so something must be done now.'),
  'highest-value': reason<{ option: string; value: string; runnerUp: string; runnerUpValue: string }>(
    (e) => `Of what may be done, ${e.option} has the highest value: ${e.value} against ${e.runnerUpValue} of ${e.runnerUp}.`,
  ),
  'value-unknown': reason<{ option: string }>(
    (e) => `No value could be given; ${e.option} is what the policy or the list of options leaves.`,
  ),
  'safety-limit': reason<Record<string, never>>(
    () => 'A reading is beyond a limit that bears on safety: act on it before anything else.',
  ),
  'condition-calls-for-repair': reason<{ work: string }>(
    (e) => `The condition readings call for ${e.work}, whatever the energy says.`,
  ),
  'repair-not-priced': reason<Record<string, never>>(
    () => 'The repair has no price yet, so it is not among the options: have it quoted and done.',
  ),
  'replacement-beats-repair': reason<{ option: string; value: string; repairValue: string }>(
    (e) => `${sentence(e.option)} does away with the repair and has the higher value: ${e.value} against ${e.repairValue}.`,
  ),
  'measure-first': reason<{ readings: number }>((e) =>
    e.readings === 0
      ? 'There is no reading that counts: measure the motor before deciding by energy.'
      : 'The readings may not be used: measure the motor before deciding by energy.',
  ),
  'within-policy': reason<{ option: string; payback: number; limit: number; probability: number; least: number; value: string }>(
    (e) =>
      `${sentence(e.option)} pays back in ${years(e.payback)} (at most ${years(e.limit)}), with a chance of ${percent(e.probability)} to keep that limit (at least ${percent(e.least)}), and is worth ${e.value}.`,
  ),
  'within-policy-beyond-repair': reason<{ payback: number; limit: number; probability: number; least: number }>(
    (e) =>
      `What it costs beyond the repair ${e.payback === 0 ? 'is nothing' : `pays back in ${years(e.payback)}`} (at most ${years(e.limit)}), with a chance of ${percent(e.probability)} to keep that limit (at least ${percent(e.least)}).`,
  ),
  'check-before': reason<{ checks: string }>((e) => `Check before ordering: ${e.checks}.`),
  'pays-at-failure': reason<{
    option: string;
    value: string;
    failure: TimeToFailure | undefined;
    horizon: number;
    policy: 'repair' | 'replace';
  }>(
    (e) =>
      `When the motor fails, ${e.option} in place of ${usualAtFailure(e.policy)} is worth ${e.value} in expectation.${whenItFails(e)}`,
  ),
  'usual-serves-better': reason<{ option: string; value: string; policy: 'repair' | 'replace' }>(
    (e) =>
      `When the motor fails, ${usualAtFailure(e.policy)} serves better: ${e.option} in its place would be worth ${e.value} in expectation.`,
  ),
  'payback-too-long': reason<{ option: string; payback: number; limit: number }>((e) =>
    e.payback > NO_MATTER_HOW_LONG
      ? `Now ${e.option} would pay back in more than ${NO_MATTER_HOW_LONG} years, where the policy allows ${years(e.limit)}.`
      : `Now ${e.option} would pay back in ${years(e.payback)}, ${years(e.payback - e.limit)} more than the policy’s ${years(e.limit)}.`,
  ),
  'probability-too-low': reason<{ option: string; probability: number; least: number }>(
    (e) =>
      `Now ${e.option} would keep the payback limit with a chance of ${percent(e.probability)}, short of the policy’s ${percent(e.least)} by ${points(e.least - e.probability)}.`,
  ),
  'value-not-positive': reason<{ option: string; value: string }>(
    (e) => `Now ${e.option} would be worth ${e.value}, not more than keeping the motor.`,
  ),
  'saves-nothing': reason<{ option: string; saved: number; currency: string }>((e) =>
    Math.round(e.saved) < 0
      ? `Now ${e.option} would cost ${moneyWords(-e.saved, e.currency)} a year more to run, so it never pays back.`
      : `Now ${e.option} would save ${moneyWords(e.saved, e.currency)} a year, so it never pays back.`,
  ),
  'duty-impossible': reason<Record<string, never>>(
    () => 'The duty asks for more than the motor can give, so no saving can be told: check the duty profile.',
  ),
  'hours-unknown': reason<Record<string, never>>(() => 'The hours a year are not known, so no saving can be told.'),
  'not-priced': reason<Record<string, never>>(() => 'No replacement could be priced or valued.'),
  'trust-provisional': reason<Record<string, never>>(() => 'The readings are provisional: confirm the load before ordering.'),
} as const;

type EvidenceOf<C extends keyof typeof REASONS> = Parameters<(typeof REASONS)[C]>[0];

/** A reason whose sentence is put together when it is first read: a fleet that is ranked again and again reads few of them. */
class Reason<C extends keyof typeof REASONS> implements Because {
  private found: string | undefined = undefined;

  constructor(
    readonly code: C,
    private readonly evidence: EvidenceOf<C> | (() => EvidenceOf<C>),
  ) {}

  get text(): string {
    if (this.found === undefined) {
      const { code, evidence } = this;
      const words = REASONS[code] as Words<EvidenceOf<C>>;
      // Some sentences begin with the name of an option.
      this.found = sentence(words(typeof evidence === 'function' ? evidence() : evidence));
    }
    return this.found;
  }
}

/** States one reason. Evidence that takes work to put into words comes as a function. */
export function because<C extends keyof typeof REASONS>(code: C, evidence: EvidenceOf<C> | (() => EvidenceOf<C>)): Because {
  return new Reason(code, evidence);
}
