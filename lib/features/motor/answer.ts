import type { Evaluation, Motor, OptionResult, UnrankedMotor } from '@/lib/engine';
import { capitalised, formatFigure, formatMoney, uncapitalised } from '@/lib/platform/format';
import { paybackWords } from '../results/payback-words';
import { type RatingUnit, ratingWords } from './words';

/** An indicator beyond its limit that calls for work, by its title; `safety` when the motor must not be started before. */
interface Call {
  readonly title: string;
  readonly safety: boolean;
}

/** What the answer is made of. */
export interface AnswerInput {
  readonly motor: Motor;
  readonly result: UnrankedMotor;
  readonly calls: readonly Call[];
  /** How many readings are stored, those left out among them. */
  readonly stored: number;
  readonly currency: string;
  readonly horizonYears: number;
  /** In which the reader sees ratings; absent: in that of the plate. */
  readonly ratingUnit?: RatingUnit | undefined;
}

/** The indicators that call for work or keep the motor from being started. */
export function callsOf({ condition }: Pick<Evaluation, 'condition'>): Call[] {
  return condition.indicators
    .filter((indicator) => indicator.callsFor !== undefined || indicator.safety === true)
    .map(({ title, safety }) => ({ title, safety: safety === true }));
}

/** What to do with a motor, in a sentence or two with its money. The reasons stand apart. */
export function answerOf(input: AnswerInput): string {
  const { status } = input.motor.plate;
  if (status === 'spare' || status === 'retired')
    return `${status === 'spare' ? 'A spare' : 'Retired'}: it uses no energy, so there is nothing to decide.`;
  const unsafe = input.calls.filter((call) => call.safety);
  const first = unsafe.length > 0 ? `Do not start it: ${beyond(unsafe)}. ` : '';
  return first + (status === 'failed' ? failed(input) : inService(input));
}

function inService(input: AnswerInput): string {
  const { result, calls, stored } = input;
  const { decision } = result;
  const because = new Set(decision.because.map((reason) => reason.code));
  if (because.has('condition-calls-for-repair') && (decision.action === 'repair' || decision.action === 'keep'))
    return repair(input);
  if (because.has('measure-first')) return measureFirst(stored, result.readings.length);
  if (decision.action !== 'keep') {
    const option = optionOf(input);
    if (!option) return 'Look at the options below.';
    const start = because.has('check-before') ? 'Make the checks named below; if they hold, ' : '';
    const sentence = option.timing === 'now' ? now(option, input) : atFailure(option, input);
    const cause = because.has('condition-calls-for-repair') ? `${capitalised(beyond(calls))}. ` : '';
    return cause + start + (start === '' ? sentence : uncapitalised(sentence));
  }
  if (because.has('hours-unknown')) return 'Keep it for now: its hours a year are not known, so no saving can be told.';
  if (because.has('not-priced')) return 'Keep it for now: no other motor could be priced or valued.';
  return 'Keep it: no other motor pays within the policy.';
}

function now(option: OptionResult, input: AnswerInput): string {
  return `Replace it now${byWhat(option, input)}: this costs ${money(option.cost, input)}${saves(option)}${back(option, input)}.`;
}

function atFailure(option: OptionResult, input: AnswerInput): string {
  return `Keep it until it fails, then replace it${byWhat(option, input)} rather than repair it: the new motor costs ${difference(option.cost, input)} the repair${saves(option, ' against the repaired one')}.`;
}

function failed(input: AnswerInput): string {
  const option = optionOf(input);
  const assumed =
    input.result.load_fraction === undefined ? ' Its load was not measured: the figures rest on an assumed one.' : '';
  if (!option || option.action === 'keep') return 'It has failed, and nothing is priced yet: have repair and replacement quoted.';
  if (option.action === 'repair') {
    const valued = option.net_present_value !== undefined;
    const others = input.result.options.some((other) => other.action === 'replace' || other.action === 'resize');
    const rest = !others ? '' : valued ? ' No new motor is worth more.' : ' What a new motor would be worth cannot be told.';
    return `It has failed: repair it, for ${money(option.cost, input)}.${rest}${others && valued ? assumed : ''}`;
  }
  const repaired = input.result.options.find((other) => other.action === 'repair');
  const more = repaired ? ` (${difference(option.cost - repaired.cost, input)} the repair)` : '';
  return `It has failed: replace it${byWhat(option, input)}${repaired ? ' rather than repair it' : ''}. The new motor costs ${money(option.cost, input)}${more}${saves(option, ' against the repaired one')}${back(option, input)}.${assumed}`;
}

function repair(input: AnswerInput): string {
  const option = optionOf(input);
  const bad = input.calls.some((call) => call.safety) ? '' : `: ${beyond(input.calls)}`;
  if (!option || option.action === 'keep') return `Have it repaired now${bad}. The repair has no price yet.`;
  const energy = option.money_saved !== undefined && option.money_saved.value <= 0 ? '; energy pays for none of it' : '';
  return `Repair it now${bad}. The work costs ${money(option.cost, input)}${energy}.`;
}

function measureFirst(stored: number, counted: number): string {
  if (stored === 0) return 'Measure it first: it was never measured, so nobody knows its load.';
  if (counted === 0) return 'Measure it again first: all its readings are left out.';
  return `Measure it again first: ${counted === 1 ? 'its one reading gives' : 'its readings give'} no usable load.`;
}

function optionOf({ result }: AnswerInput): OptionResult | undefined {
  return result.options.find((option) => option.id === result.decision.option);
}

/** `insulation resistance at 40 °C and vibration are beyond their limits`. */
function beyond(calls: readonly Call[]): string {
  const names = calls.map((call) => uncapitalised(call.title));
  if (names.length === 0) return 'a condition reading is beyond its limit';
  const list = names.length === 1 ? names[0] : `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;
  return `the ${list} ${names.length === 1 ? 'is beyond its limit' : 'are beyond their limits'}`;
}

function byWhat(option: OptionResult, { motor, ratingUnit }: AnswerInput): string {
  if (option.action !== 'resize') return '';
  const { ratedPowerKw, ratedPowerUnit } = motor.plate;
  const size = option.rated_power_kw < ratedPowerKw ? 'a smaller motor' : 'a larger motor';
  return ` by ${size} of ${ratingWords(option.rated_power_kw, ratingUnit ?? ratedPowerUnit)}`;
}

const money = (amount: number, { currency }: AnswerInput): string => formatMoney(amount, currency);

/** `1,690 USD more than`, `3,540 USD less than`, `as much as`. */
function difference(amount: number, input: AnswerInput): string {
  if (Math.abs(amount) < 0.5) return 'as much as';
  return `${money(Math.abs(amount), input)} ${amount > 0 ? 'more' : 'less'} than`;
}

function saves({ money_saved }: OptionResult, against = ''): string {
  if (money_saved === undefined) return '';
  if (money_saved.value <= 0) return ' and saves nothing a year';
  return ` and saves ${formatFigure(money_saved).text} a year${against}`;
}

function back({ simple_payback, money_saved }: OptionResult, { horizonYears }: AnswerInput): string {
  if (simple_payback === undefined || simple_payback.value <= 0) return '';
  if (simple_payback.value > horizonYears) return `, not back within the ${horizonYears} years that the study looks ahead`;
  const instead = paybackWords(simple_payback, money_saved, horizonYears);
  if (instead) return `, back in ${instead.long}`;
  return `, back in ${formatFigure({ ...simple_payback, unit: 'years' }).text}`;
}
