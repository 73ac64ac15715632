import type { AtTheMargin } from '@/lib/engine';
import { formatNumber, formatPercent, withUnit } from '@/lib/platform/format';

/** What of a kilowatt's worth comes in the first year; nothing where all of it does. */
function late(share: number): string {
  if (share >= 1) return '';
  const pct = formatPercent(Math.abs(share));
  const comes = share > 0 ? `only ${pct} of that comes` : share < 0 ? `it costs ${pct} of that` : 'nothing of that comes';
  return `; in the first year ${comes}, since a ratchet holds the old peak`;
}

/** What a saved kilowatt-hour and kilowatt are worth at the motor's site, beside the average of the bill, in sentences. */
export function marginSentences(margin: AtTheMargin, currency: string): string[] {
  const { energyPerKwh, demandPerKwMonth, coincidence, firstYearDemandShare, reactive, averagePerKwh } = margin;
  const price = (value: number, digits: number) => withUnit(formatNumber(value, digits), currency);
  const average =
    averagePerKwh === undefined ? '' : `; the site pays ${price(averagePerKwh, 3)} on average, fixed charges and demand included`;
  const peak =
    demandPerKwMonth === 0
      ? 'A saved kilowatt is worth nothing on the bill.'
      : `A kilowatt saved in the billed peak is worth ${price(demandPerKwMonth, 2)} a month, and ${formatPercent(coincidence)} of what is saved counts there${late(firstYearDemandShare)}.`;
  const parts = [
    reactive && reactive.perKvarMonth !== 0 ? `${price(reactive.perKvarMonth, 2)} a month at the peak for a kilovar` : '',
    reactive && reactive.perKvarh !== 0 ? `${price(reactive.perKvarh, 4)} for a kilovar-hour` : '',
  ].filter((part) => part !== '');
  return [
    `A saved kilowatt-hour is worth ${price(energyPerKwh, 3)} here${average}.`,
    peak,
    ...(parts.length > 0 ? [`Reactive power costs ${parts.join(' and ')}.`] : []),
  ];
}
