import { KILOWATTS_PER_HORSEPOWER } from '../formula/constants';
import type { Plate } from '../motor';
import type { BeyondRepair } from '../options/option';
import { shortRating } from '../options/ratings';
import type { Finding } from '../quantity/finding';
import type { Action, Because, Timing } from '../result';
import type { Settings } from '../settings';
import { because, moneyWords } from './reasons';

/** What a decision looks at in an option: its figures without their doubts, and what speaks against it. */
export interface Choice {
  readonly id: string;
  readonly action: Action;
  readonly timing: Timing;
  readonly ratedPowerKw: number;
  readonly figures: {
    readonly net_present_value?: { readonly value: number } | undefined;
    readonly simple_payback?: { readonly value: number } | undefined;
    readonly money_saved?: { readonly value: number } | undefined;
  };
  readonly probabilityWithinPolicy?: number | undefined;
  readonly beyondRepair?: BeyondRepair | undefined;
  /** What is said of the load that it is weighed at: of all findings these alone bar an option, and they are at hand. */
  readonly screening: readonly Pick<Finding, 'code' | 'severity'>[];
  readonly findings: () => readonly Pick<Finding, 'code' | 'severity' | 'evidence'>[];
}

/** Finding of a duty that the motor cannot carry, so that nothing can be told for a year. */
export const IMPOSSIBLE_DUTY = 'duty-beyond-breakdown';

/** What a decision looks at in a motor. */
export interface ChoosingMotor {
  readonly plate: Pick<Plate, 'status' | 'ratedPowerUnit'>;
  readonly readings: { readonly length: number };
}

/** Net present value of an option; `undefined` where none could be given. */
export function presentValueOf(option: Choice): number | undefined {
  return option.figures.net_present_value?.value;
}

/** The option of the highest value; the first of those without a value when none has one. */
export function best<O extends Choice>(options: readonly O[]): O | undefined {
  let found: O | undefined;
  for (const option of options) {
    const value = presentValueOf(option);
    const highest = found && presentValueOf(found);
    if (!found || (value !== undefined && (highest === undefined || value > highest))) found = option;
  }
  return found;
}

/** What must be checked before the option is carried out, in words. */
export function checksOf(option: Choice): string[] {
  return option
    .findings()
    .filter((found) => found.code === 'check-before')
    .map((found) => String(found.evidence.detail));
}

/** True when the advice may go no further than "check before". */
export function isCapped(option: Choice): boolean {
  return option.findings().some((found) => found.code === 'check-before');
}

/** True when a finding bars the option's figures from a decision. */
export function isBarred({ screening }: Choice): boolean {
  return screening.some((found) => found.severity === 'disqualifies');
}

/** True when payback (years), the chance that it keeps its limit, and the value are as the policy wants them. */
export function keepsPolicy(
  {
    payback,
    probability = 0,
    value = 0,
  }: { readonly payback?: number | undefined; readonly probability?: number | undefined; readonly value?: number | undefined },
  policy: Settings['policy'],
): boolean {
  return payback !== undefined && payback <= policy.maxSimplePaybackYears && probability >= policy.minProbability && value > 0;
}

/** True when an option keeps the policy's limits, and nothing disqualifies it. */
export function isWithinLimits(option: Choice, { policy }: Settings): boolean {
  const figures = {
    payback: option.figures.simple_payback?.value,
    probability: option.probabilityWithinPolicy,
    value: presentValueOf(option),
  };
  return keepsPolicy(figures, policy) && !isBarred(option);
}

/**
 * True when an option may take the place of a repair that is done anyway: what it costs beyond the repair keeps the policy's limits, and its value
 * is above that of the repair.
 */
export function isBetterThanRepair(option: Choice, repair: Choice, { policy }: Settings): boolean {
  const [value, of] = [presentValueOf(option), presentValueOf(repair)];
  if (!option.beyondRepair || value === undefined || of === undefined || isBarred(option)) return false;
  return keepsPolicy({ ...option.beyondRepair, value: value - of }, policy);
}

/** The first limit that the option fails, and by how much. */
export function whyNot(
  option: Choice | undefined,
  given: { readonly motor: ChoosingMotor; readonly settings: Settings },
): Because {
  if (!option) return because('not-priced', {});
  if (isBarred(option)) return because('measure-first', { readings: given.motor.readings.length });
  const { policy, currency } = given.settings;
  const named = () => ({ option: optionWords(option, given.motor.plate) });
  const saved = option.figures.money_saved?.value;
  const value = presentValueOf(option);
  if (saved === undefined)
    return because(option.screening.some(({ code }) => code === IMPOSSIBLE_DUTY) ? 'duty-impossible' : 'hours-unknown', {});
  if (value === undefined) return because('not-priced', {});
  const payback = option.figures.simple_payback?.value;
  if (payback === undefined) return because('saves-nothing', () => ({ ...named(), saved, currency }));
  if (payback > policy.maxSimplePaybackYears)
    return because('payback-too-long', () => ({ ...named(), payback, limit: policy.maxSimplePaybackYears }));
  const probability = option.probabilityWithinPolicy ?? 0;
  if (value > 0 && probability < policy.minProbability)
    return because('probability-too-low', () => ({ ...named(), probability, least: policy.minProbability }));
  return because('value-not-positive', () => ({ ...named(), value: moneyWords(value, currency) }));
}

/** An option in words, such as "a premium motor of 40 hp (29.8 kW)". */
export function optionWords(option: Choice, plate: ChoosingMotor['plate']): string {
  const kilowatts = `${shortRating(option.ratedPowerKw)} kW`;
  const hp = Number((option.ratedPowerKw / KILOWATTS_PER_HORSEPOWER).toPrecision(3));
  const rating = plate.ratedPowerUnit === 'hp' ? `${hp} hp (${kilowatts})` : kilowatts;
  switch (option.action) {
    case 'keep':
      return 'keeping the motor';
    case 'repair':
      return 'the repair';
    case 'replace':
      return `a premium motor of the same ${rating}`;
    default:
      return `a premium motor of ${rating}`;
  }
}
