import type { ShelfOf } from '@/lib/engine';
import { formatCount, formatMoney, formatNumber, formatPercent } from '@/lib/platform/format';
import { csvRow } from '../fleet/csv-cell';

/** What a spare of one kind comes to, for a page and a file. */
export interface SpareAdvice extends ShelfOf {
  /** In order: what speaks for it or against it, then what is in stock, then what is not known. */
  readonly reasons: readonly string[];
  /** Share of the cost of a stop that one spare must save to be worth its keeping; absent where it is worth it without, or no stop could make it so. */
  readonly stopShareNeeded?: number | undefined;
}

/** Puts the reasons of a shelf into words. Money without cents: these are expectations over years. */
export function adviceOf(
  shelf: ShelfOf,
  { currency, horizonYears }: { readonly currency: string; readonly horizonYears: number },
): SpareAdvice {
  const { best, one, stopsMet, stopsUnknown, inStock, tags } = shelf;
  const money = (amount: number) => formatMoney(amount, currency);
  const shortfall = -one.value;
  const share = best.spares === 0 && shortfall > 0 && stopsMet > shortfall ? shortfall / stopsMet : undefined;
  const reasons: string[] = [];
  if (best.callsPerYear === 0) {
    reasons.push('A new motor in place of what is done anyway at a failure is worth nothing for any of them.');
  } else if (best.spares > 0) {
    reasons.push(
      `A failure calls for one every ${years(1 / best.callsPerYear)}; with a motor at hand it is replaced and not repaired, which is worth ${money(best.gained)} over ${horizonYears} years against ${money(best.cost)} for keeping.`,
    );
  } else {
    reasons.push(
      `A failure calls for one only every ${years(1 / best.callsPerYear)}: the first spare makes ${money(one.gained)} possible over ${horizonYears} years and costs ${money(one.cost)} to keep.`,
    );
    if (share !== undefined)
      reasons.push(
        `It is worth it once it saves ${share < 0.01 ? 'less than 1 %' : formatPercent(share)} of what the stops cost that find it on the shelf.`,
      );
  }
  if (inStock > 0)
    reasons.push(
      `${formatCount(inStock)} of this kind ${inStock === 1 ? 'is' : 'are'} in stock already${inStock >= best.spares && best.spares > 0 ? ', as many as are worth keeping' : ''}; look at its class and its bearings.`,
    );
  if (stopsUnknown > 0)
    reasons.push(
      tags.length === 1
        ? 'Nobody has said what a stop of it costs: its stops are not counted.'
        : `Of ${formatCount(stopsUnknown)} of ${formatCount(tags.length)} nobody has said what a stop costs: their stops are not counted.`,
    );
  return { ...shelf, reasons, ...(share !== undefined && { stopShareNeeded: share }) };
}

function years(value: number): string {
  return value < 1.5 ? `${formatNumber(12 * value, 0)} months` : `${formatNumber(value, 0)} years`;
}

const HEADS = [
  ...[
    'site',
    'rated_power_kw',
    'poles',
    'frame',
    'enclosure',
    'mounting',
    'motors',
    'tags',
    'in_stock',
    'spares',
    'calls_per_year',
  ],
  ...['purchase', 'chance_shelf_empty', 'gained', 'keeping_cost', 'value', 'first_spare_value', 'stops_met', 'stop_cost_unknown'],
  ...['stop_share_needed', 'restock_weeks', 'restock_listed', 'currency', 'reasons'],
];

/** The spares as CSV, one kind a line; money in the study's currency over the horizon, dated as of the study. */
export function* sparesCsv(list: readonly SpareAdvice[], currency: string): Generator<string> {
  yield csvRow(HEADS);
  const cents = (amount: number) => Math.round(100 * amount) / 100;
  for (const each of list) {
    const { best, one } = each;
    yield csvRow([
      ...[each.site, Number(each.ratedPowerKw.toPrecision(6)), each.poles, each.frame, each.enclosure, each.mounting],
      ...[each.tags.length, each.tags.join(' '), each.inStock, best.spares, Number(best.callsPerYear.toPrecision(6))],
      ...[cents(each.purchase), Number(best.empty.toPrecision(6)), cents(best.gained), cents(best.cost), cents(best.value)],
      ...[
        cents(one.value),
        cents(each.stopsMet),
        each.stopsUnknown,
        each.stopShareNeeded && Number(each.stopShareNeeded.toPrecision(4)),
      ],
      ...[
        Number(((each.restockYears * 365.25) / 7).toPrecision(4)),
        each.restockListed ? 'yes' : 'no',
        currency,
        each.reasons.join(' '),
      ],
    ]);
  }
}
