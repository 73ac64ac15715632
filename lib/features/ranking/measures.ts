import type { Measure, MeasureId, Screened, Settings } from '@/lib/engine';
import { csvRow, type Writable } from '../fleet/csv-cell';
import type { MotorMeasures } from './fleet-measures';
import { capacitorMoney, worthwhile } from './measure-words';

/** The motors with those of their measures that save energy or money; motors without such a one are left out. */
export function thatSave(motors: readonly MotorMeasures[]): readonly MotorMeasures[] {
  return motors.flatMap((motor) => {
    const measures = motor.found.measures.filter(({ energySaved, moneySaved }) =>
      [energySaved, moneySaved].some((saved) => saved !== undefined && saved.likely > 0),
    );
    return measures.length === 0 ? [] : [{ ...motor, found: { ...motor.found, measures } }];
  });
}

/** Measures of one motor that act on the same energy, so that their savings do not add up; empty where there is but one. */
export function interacting({ found }: Pick<MotorMeasures, 'found'>): readonly MeasureId[] {
  const ids = found.measures.filter(({ energySaved }) => energySaved).map(({ id }) => id);
  return ids.length > 1 ? ids : [];
}

/** Sums over the fleet: of a motor with several measures what they save together. Motors do not share their losses, so these add up. */
export function fleetSum(motors: readonly MotorMeasures[], of: 'energy' | 'money'): Screened {
  const sum = { low: 0, likely: 0, high: 0 };
  for (const { found } of motors) {
    const parts = of === 'energy' ? [found.energySavedTogether] : [found.moneySavedTogether, capacitorMoney(found.measures)];
    for (const part of parts) {
      if (!part) continue;
      sum.low += part.low;
      sum.likely += part.likely;
      sum.high += part.high;
    }
  }
  return sum;
}

const three = (name: string): string[] => [name, `${name}_low`, `${name}_high`];
const HEADS: readonly string[] = [
  ...['site', 'area', 'tag', 'measure', 'text', 'estimate'],
  ...three('energy_saved_kwh'),
  ...three('money_saved'),
  ...['energy_saved_in_sequence_kwh', 'money_saved_in_sequence', 'interacts_with'],
  ...['energy_saved_together_kwh', 'money_saved_together', 'not_with'],
  ...['cost', 'cost_u', 'cost_from', 'cost_together', 'may_cost_at_most'],
  ...three('simple_payback_years'),
  'payback_in_sequence_years',
  ...three('payback_together_years'),
  ...['payback', 'capacitor_kvar', 'currency', 'prices', 'assumed'],
];

/** A measure as the cells of its row, by their heads. */
type MeasureRow = Readonly<Record<string, Writable>>;

/** The measures, one a row of the file; an absent cell is left out. Savings a year at the study's marginal prices. */
export function* measureRows(motors: readonly MotorMeasures[], settings: Settings): Generator<MeasureRow> {
  for (const motor of motors) {
    const { site, area, tag, found, flatPrices } = motor;
    const together = interacting(motor);
    for (const measure of found.measures) {
      const { mayCost, words } = worthwhile(measure, settings);
      const joint = together.includes(measure.id) ? found : undefined;
      yield {
        ...{ site, area, tag, measure: measure.id, text: measure.text, estimate: 'screening' },
        ...screened('energy_saved_kwh', measure.energySaved, short),
        ...screened('money_saved', measure.moneySaved, cents),
        energy_saved_in_sequence_kwh: short(measure.energySavedInSequence),
        money_saved_in_sequence: cents(measure.moneySavedInSequence),
        interacts_with: joint && together.filter((id) => id !== measure.id).join(' '),
        energy_saved_together_kwh: short(joint?.energySavedTogether?.likely),
        money_saved_together: cents(joint?.moneySavedTogether?.likely),
        not_with: measure.notWith,
        ...{ cost: cents(measure.cost?.value), cost_u: cents(measure.cost?.u), cost_from: costFrom(measure) },
        cost_together: cents(joint?.costTogether?.value),
        may_cost_at_most: cents(mayCost),
        ...screened('simple_payback_years', measure.payback, short),
        payback_in_sequence_years: short(measure.paybackInSequence),
        ...screened('payback_together_years', joint?.paybackTogether, short),
        payback: words,
        capacitor_kvar: short(measure.capacitorKvar),
        currency: settings.currency,
        prices: flatPrices ? 'flat prices of the settings' : 'tariff of the site',
        assumed: measure.assumed,
      };
    }
  }
}

/** The measures as CSV, one a line. */
export function* measuresCsv(motors: readonly MotorMeasures[], settings: Settings): Generator<string> {
  yield csvRow(HEADS);
  for (const row of measureRows(motors, settings)) yield csvRow(HEADS.map((head) => row[head]));
}

const cents = (amount: number | undefined) => amount && Math.round(100 * amount) / 100;
const short = (amount: number | undefined) => amount && Number(amount.toPrecision(6));

/** The three cells of a screened figure. */
function screened(
  name: string,
  figure: { readonly low: number; readonly likely: number; readonly high?: number | undefined } | undefined,
  as: typeof short,
): MeasureRow {
  return { [name]: as(figure?.likely), [`${name}_low`]: as(figure?.low), [`${name}_high`]: as(figure?.high) };
}

function costFrom({ cost, item }: Measure): string {
  if (cost)
    return `${cost.invented ? 'invented price list' : 'price list'}: ${cost.items.join(' ')}${cost.extrapolated ? ', carried on' : ''}`;
  return item === undefined ? 'no list holds a price' : `no price in the list: ${item}`;
}
