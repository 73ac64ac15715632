import type { Measure, MeasureId, Screened, Settings } from '@/lib/engine';
import { formatMoney } from '@/lib/platform/format';
import { csvRow } from '../fleet/csv-cell';
import type { MotorMeasures } from './measures-page';

/** Short names of the measures. */
export const MEASURE_WORDS: Readonly<Record<MeasureId, string>> = {
  'stop-idling': 'Stop idling',
  'speed-control': 'Vary the speed',
  'better-belt': 'Better belt',
  'balance-voltages': 'Balance the voltages',
  'power-factor': 'Correct the power factor',
};

/** What a measure's cost and payback come to. No list holds prices of belts, drives, capacitors or work, and none is invented here. */
export interface Worthwhile {
  /** Most that it may cost and still pay back within the policy, at the likely saving; absent where it saves no money. */
  readonly mayCost?: number | undefined;
  readonly words: string;
}

/** Cost and payback of a measure in words: the most that it may cost, since its price is not known. */
export function worthwhile({ moneySaved }: Pick<Measure, 'moneySaved'>, { policy, currency }: Settings): Worthwhile {
  if (!moneySaved || moneySaved.likely <= 0) return { words: 'Saves no money on the bill, so it never pays back.' };
  const years = policy.maxSimplePaybackYears;
  const mayCost = moneySaved.likely * years;
  return {
    mayCost,
    words: `Cost not known: pays back within ${years} years if it costs no more than ${formatMoney(Number(mayCost.toPrecision(2)), currency)}.`,
  };
}

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

function capacitorMoney(measures: readonly Measure[]): Screened | undefined {
  return measures.find(({ id }) => id === 'power-factor')?.moneySaved;
}

const RANGES = ['energy_saved_kwh', 'money_saved'] as const;
const HEADS = [
  ...['site', 'area', 'tag', 'measure', 'text', 'estimate'],
  ...RANGES.flatMap((name) => [name, `${name}_low`, `${name}_high`]),
  ...['energy_saved_in_sequence_kwh', 'interacts_with', 'energy_saved_together_kwh', 'money_saved_together'],
  ...['cost', 'may_cost_at_most', 'payback', 'capacitor_kvar', 'currency', 'prices', 'assumed'],
];

/** The measures as CSV, one a line; savings a year at the study's marginal prices. */
export function* measuresCsv(motors: readonly MotorMeasures[], settings: Settings): Generator<string> {
  yield csvRow(HEADS);
  const cents = (amount: number | undefined) => amount && Math.round(100 * amount) / 100;
  const short = (amount: number | undefined) => amount && Number(amount.toPrecision(6));
  for (const motor of motors) {
    const { site, area, tag, found, flatPrices } = motor;
    const together = interacting(motor);
    for (const measure of found.measures) {
      const { energySaved: energy, moneySaved: money } = measure;
      const { mayCost, words } = worthwhile(measure, settings);
      const joint = together.includes(measure.id);
      yield csvRow([
        ...[site, area, tag, measure.id, measure.text, 'screening'],
        ...[short(energy?.likely), short(energy?.low), short(energy?.high)],
        ...[cents(money?.likely), cents(money?.low), cents(money?.high)],
        ...[short(measure.energySavedInSequence), joint ? together.filter((id) => id !== measure.id).join(' ') : undefined],
        ...[
          joint ? short(found.energySavedTogether?.likely) : undefined,
          joint ? cents(found.moneySavedTogether?.likely) : undefined,
        ],
        ...['not known', cents(mayCost), words, short(measure.capacitorKvar), settings.currency],
        ...[flatPrices ? 'flat prices of the settings' : 'tariff of the site', measure.assumed],
      ]);
    }
  }
}
