import {
  countsTogether,
  type Measure,
  type MeasureId,
  type Measures,
  type Screened,
  type ScreenedPayback,
  type Settings,
} from '@/lib/engine';
import { formatFigure, formatMoney } from '@/lib/platform/format';

/** Short names of the measures. */
export const MEASURE_WORDS: Readonly<Record<MeasureId, string>> = {
  'stop-idling': 'Stop idling',
  'speed-control': 'Vary the speed',
  'better-belt': 'Better belt',
  'balance-voltages': 'Balance the voltages',
  'power-factor': 'Correct the power factor',
};

/** A screened figure in words: as many digits as the range that its assumptions allow deserves. */
export function screenedText({ low, likely, high }: Screened): { readonly likely: string; readonly range: string | undefined } {
  const text = formatFigure({ value: likely, u: 0, low, high, unit: '1' });
  return { likely: text.value, range: text.low === undefined ? undefined : `${text.low} to ${text.high}` };
}

/** What a measure's cost and payback come to. */
interface Worthwhile {
  /** Most that it may cost and still pay back within the policy, at the likely saving of the first year; absent where that saves no money. */
  readonly mayCost?: number | undefined;
  readonly words: string;
}

/** What is said of cost and payback: of one measure, or of a motor's together. */
type Weighed = Pick<Measure, 'moneySaved' | 'firstYearSaved' | 'cost' | 'payback' | 'item' | 'chargeUnknown'>;

/** Cost and payback of a measure in words: by the price list, or else the most that it may cost. */
export function worthwhile(measure: Weighed, { policy, currency }: Settings): Worthwhile {
  const { moneySaved, firstYearSaved = moneySaved, cost, payback, item } = measure;
  if (measure.chargeUnknown)
    return { words: 'What it saves depends on a charge for reactive power, of which the flat prices say nothing.' };
  if (!moneySaved || moneySaved.likely <= 0) return { words: 'Saves no money on the bill, so it never pays back.' };
  const years = policy.maxSimplePaybackYears;
  const held = 'nothing comes back in the first year, in which a ratchet holds the old peak';
  const mayCost = firstYearSaved && firstYearSaved.likely > 0 ? firstYearSaved.likely * years : undefined;
  if (cost) {
    const source = `${cost.invented ? 'an invented price' : 'by the price list'}${cost.extrapolated ? ', carried on beyond its ratings' : ''}`;
    const price = `Costs about ${formatMoney(Number(cost.value.toPrecision(2)), currency)} (${source})`;
    if (!payback) return { mayCost, words: `${price}; ${held}.` };
    const verdict = payback.likely <= years ? 'within' : 'beyond';
    return { mayCost, words: `${price} and pays back in ${paybackText(payback)}, ${verdict} the ${years} years of the policy.` };
  }
  const why =
    item === undefined
      ? 'No list holds a price: what it takes differs from case to case'
      : `No price in the list for a ${ITEM_WORDS[item]}`;
  if (mayCost === undefined) return { words: `${why}; ${held}.` };
  const most = formatMoney(Number(mayCost.toPrecision(2)), currency);
  return { mayCost, words: `${why}. It pays back within ${years} years if it costs no more than ${most}.` };
}

/** What is said of all measures of a motor that act on the same energy. */
export function worthwhileTogether(found: Measures, settings: Settings): Worthwhile {
  const { moneySavedTogether: moneySaved, firstYearSavedTogether: firstYearSaved } = found;
  const joint = worthwhile({ moneySaved, firstYearSaved, cost: found.costTogether, payback: found.paybackTogether }, settings);
  const unpriced = found.measures
    .filter((measure) => countsTogether(measure) && !measure.cost)
    .map(({ id }) => MEASURE_WORDS[id].toLowerCase());
  if (unpriced.length === 0 || joint.mayCost === undefined) return joint;
  const most = formatMoney(Number(joint.mayCost.toPrecision(2)), settings.currency);
  return {
    ...joint,
    words: `No price in the list for: ${unpriced.join(', ')}. Together they pay back within ${settings.policy.maxSimplePaybackYears} years if they cost no more than ${most}.`,
  };
}

/** What is left of a measure's payback once those before it are done, in words; nothing for the first, and where it has no price. */
export function afterTheOthers(measure: Measure): string | undefined {
  const { paybackInSequence: years, moneySaved, moneySavedInSequence: left } = measure;
  if (!moneySaved || left === undefined || left >= moneySaved.likely * (1 - SAME)) return undefined;
  if (left <= 0) return 'Once those above are done it saves nothing more.';
  return years === undefined ? undefined : `Once those above are done: ${yearsText(years)} years.`;
}

/** Savings this close are the same. */
const SAME = 0.005;
/** The doubt, as a share, at which a figure is shown with two digits. */
const TWO_DIGITS = 0.5;
/** Beyond so many years the number says nothing more. */
const MANY_YEARS = 100;

function yearsText(years: number): string {
  return years > MANY_YEARS ? `more than ${MANY_YEARS}` : formatFigure({ value: years, u: years * TWO_DIGITS, unit: '1' }).value;
}

/** A screened payback with its limits, as "2.4 years (1.5 to 6.1)". */
function paybackText({ low, likely, high }: ScreenedPayback): string {
  const latest = high === undefined ? 'never, at the least saving' : yearsText(high);
  return `${yearsText(likely)} years (${yearsText(low)} to ${latest})`;
}

/** What an item of the price list is called in a sentence. */
const ITEM_WORDS: Readonly<Record<NonNullable<Measure['item']>, string>> = {
  'notched-belt': 'notched belt',
  'synchronous-belt': 'synchronous belt',
  drive: 'drive',
  capacitor: 'capacitor',
};

/** Money that a capacitor saves beside the other measures; none where one of them rules it out. */
export function capacitorMoney(measures: readonly Measure[]): Screened | undefined {
  const capacitor = measures.find(({ id }) => id === 'power-factor');
  return measures.some(({ id }) => id === capacitor?.notWith) ? undefined : capacitor?.moneySaved;
}
