import type { Evaluation } from '../evaluate';
import { fromMoney } from '../money/money';
import { runningPrices } from '../options/running-prices';
import { yearBill } from '../tariff/bill';

/** What a motor's saving is priced with, beside what the site pays on average. Units: currency per kWh, kW and month, kvar and month, kvarh. */
export interface AtTheMargin {
  readonly energyPerKwh: number;
  readonly demandPerKwMonth: number;
  /** Share of the saved kilowatts that falls into the billed peak. */
  readonly coincidence: number;
  /** Share of a year's demand saving that comes in the first year after a change. */
  readonly firstYearDemandShare: number;
  readonly reactive?: { readonly perKvarMonth: number; readonly perKvarh: number } | undefined;
  /** The whole bill over its kilowatt-hours; absent for flat prices and where the tariff does not say what the site takes. */
  readonly averagePerKwh?: number | undefined;
}

/** The marginal prices of a motor's site for its hours, and the average of the bill. */
export function atTheMargin({ scope, motor }: Evaluation): AtTheMargin {
  const { settings } = scope;
  const prices = runningPrices(scope, motor, true);
  const tariff = Object.hasOwn(settings.tariffs, motor.site) ? settings.tariffs[motor.site] : undefined;
  const bill = tariff?.usage && yearBill(tariff);
  return {
    energyPerKwh: prices.energyPrice.value,
    demandPerKwMonth: prices.demandPrice.value,
    coincidence: prices.coincidence.value,
    firstYearDemandShare: prices.growth.firstYearDemandShare,
    ...(prices.reactive && {
      reactive: { perKvarMonth: prices.reactive.perKvarMonth.value, perKvarh: prices.reactive.perKvarh.value },
    }),
    ...(bill && bill.kwh > 0 && { averagePerKwh: fromMoney(bill.total) / bill.kwh }),
  };
}
