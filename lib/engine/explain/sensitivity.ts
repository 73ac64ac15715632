import { evaluateMotor } from '../evaluate';
import { MOST_HOURS_PER_YEAR } from '../formula/constants';
import { type BreakEven, breakEven } from '../money/break-even';
import { type Tornado, type TornadoInput, tornado } from '../money/tornado';
import type { Option } from '../options/option';
import { type Lever, moved, type Question, statedHours } from './lever';

/** Which figure of an option is asked about: value in currency, payback in years. */
type Asked = 'net-present-value' | 'simple-payback';

/** How far each lever is moved when nobody says otherwise; for the discount rate, how many points up and down. */
const USUAL: Readonly<Record<Lever, number>> = {
  'energy-price': 0.2,
  'demand-price': 0.2,
  hours: 0.1,
  // Listed prices carry 15 % of standard doubt; about two of them.
  cost: 0.3,
  // A factor of two either way, as the doubt of the rate is counted.
  'failure-rate': 0.5,
  'discount-rate': 0.02,
};

/** The option of a question as it comes out when a lever is moved; `undefined` where it is not offered. */
function optionAt(question: Question, id: string, lever?: Lever, to?: number): Option | undefined {
  const { motor, study } = lever === undefined || to === undefined ? question : moved(question, lever, to);
  return evaluateMotor(motor, study).options.find((option) => option.id === id);
}

function figureOf(option: Option | undefined, asked: Asked): number | undefined {
  return asked === 'net-present-value' ? option?.figures.net_present_value?.value : option?.figures.simple_payback?.value;
}

/** The usual ends of every lever, as {@link Lever} counts them. */
export function usualRanges(question: Question): readonly (TornadoInput & { readonly id: Lever })[] {
  const rate = question.study.settings.discountRate;
  const hours = statedHours(question);
  const most = hours === undefined || hours <= 0 ? 1 + USUAL.hours : MOST_HOURS_PER_YEAR / hours;
  const around = (id: Lever) => ({ id, low: 1 - USUAL[id], high: 1 + USUAL[id] });
  return [
    around('energy-price'),
    around('demand-price'),
    { ...around('hours'), high: Math.max(1, Math.min(1 + USUAL.hours, most)) },
    around('cost'),
    { id: 'failure-rate', low: 0.5, high: 2 },
    { id: 'discount-rate', low: Math.max(0, rate - USUAL['discount-rate']), high: rate + USUAL['discount-rate'] },
  ];
}

/**
 * What an option's value or payback hangs on: each lever alone is moved to its ends and the whole motor evaluated again, so that every
 * rule of the tariff, the prices and the operating point takes part. About a dozen evaluations; for a page, not for a fleet.
 * Units: of the figure asked for. Source: {@link tornado}.
 */
export function optionTornado(
  question: Question,
  id: string,
  asked: Asked,
  ranges: readonly (TornadoInput & { readonly id: Lever })[] = usualRanges(question),
): Tornado {
  const levers = new Map<string, Lever>(ranges.map((range) => [range.id, range.id]));
  return tornado(figureOf(optionAt(question, id), asked), ranges, (input, to) => {
    const lever = levers.get(input);
    return lever && figureOf(optionAt(question, id, lever, to), asked);
  });
}

/** Where an option just pays: the lever's factor there, and the price or hours that it means where one number says it. */
export interface OptionBreakEven {
  readonly lever: Lever;
  readonly goal: 'worth-nothing' | 'payback-limit';
  readonly found: BreakEven;
  /** The flat price of energy, hours a year, or the rate itself; absent for other levers, under a tariff, or where there is none. */
  readonly stated?: number | undefined;
}

/**
 * The factor on a price, the hours or the cost at which an option is worth nothing more than the baseline, or at which its simple payback
 * just keeps the policy's limit; found by evaluating the motor again.
 * Valid for: factors from 0 to 10, hours up to those of a leap year, a discount rate from 0 to 100 %.
 */
export function optionBreakEven(question: Question, id: string, lever: Lever, goal: OptionBreakEven['goal']): OptionBreakEven {
  const { settings } = question.study;
  const hours = statedHours(question);
  const limit = settings.policy.maxSimplePaybackYears;
  const margin = (to: number): number | undefined => {
    const option = optionAt(question, id, lever, to);
    if (goal === 'worth-nothing') return figureOf(option, 'net-present-value');
    const saving = option?.figures.money_saved?.value;
    const payback = figureOf(option, 'simple-payback');
    if (saving === undefined || option?.figures.net_present_value === undefined) return undefined;
    // As a sum of money, which is straight where the payback has a pole: so many years of the saving less what they must cover.
    if (payback === undefined) return saving * limit - Math.max(0, option.figures.cost.value);
    return saving * (limit - payback);
  };
  const low = lever === 'discount-rate' ? 0 : lever === 'cost' ? 0.001 : 0;
  const high = lever === 'discount-rate' ? 1 : lever === 'hours' && hours ? MOST_HOURS_PER_YEAR / hours : 10;
  const found = breakEven(margin, low, high);
  return { lever, goal, found, stated: found.kind === 'at' ? inWords(question, lever, found.value, hours) : undefined };
}

function inWords({ motor, study }: Question, lever: Lever, at: number, hours: number | undefined): number | undefined {
  const { settings } = study;
  if (lever === 'discount-rate') return at;
  if (lever === 'hours') return hours === undefined ? undefined : at * hours;
  if (Object.hasOwn(settings.tariffs, motor.site)) return undefined;
  if (lever === 'energy-price') return at * settings.energyPricePerKwh;
  return lever === 'demand-price' ? at * settings.demandPricePerKwMonth : undefined;
}

/** The figure of an option at several values of a lever, for a curve; absent where it cannot be given. */
export function optionCurve(
  question: Question,
  id: string,
  lever: Lever,
  at: readonly number[],
): readonly { readonly at: number; readonly netPresentValue: number | undefined; readonly simplePayback: number | undefined }[] {
  return at.map((to) => {
    const option = optionAt(question, id, lever, to);
    return { at: to, netPresentValue: figureOf(option, 'net-present-value'), simplePayback: figureOf(option, 'simple-payback') };
  });
}
