import type { AtTheMargin } from '@/lib/engine';
import { formatNumber } from '@/lib/platform/format';

/** What a saved kilowatt-hour and kilowatt are worth at the motor's site, beside the average of the bill, in sentences. */
export function marginSentences(margin: AtTheMargin, currency: string): string[] {
  const { energyPerKwh, demandPerKwMonth, coincidence, firstYearDemandShare, reactive, averagePerKwh } = margin;
  const price = (value: number, digits: number) => `${formatNumber(value, digits)} ${currency}`;
  const average =
    averagePerKwh === undefined ? '' : `; the site pays ${price(averagePerKwh, 3)} on average, fixed charges and demand included`;
  const peak =
    demandPerKwMonth === 0
      ? 'A saved kilowatt is worth nothing on the bill.'
      : `A kilowatt saved in the billed peak is worth ${price(demandPerKwMonth, 2)} a month, and ${formatNumber(100 * coincidence, 0)} % of what is saved counts there${firstYearDemandShare < 1 ? `; in the first year only ${formatNumber(100 * firstYearDemandShare, 0)} % of that comes, since a ratchet holds the old peak` : ''}.`;
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
