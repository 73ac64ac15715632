import {
  fleetSaving,
  fromMoney,
  type MotorSaving,
  marginalByPeriod,
  marginalPrices,
  readSchedule,
  type Tariff,
  yearBill,
} from '@/lib/engine';

/** What the last unit costs a motor of some hours. */
export interface ShownMarginal {
  readonly hours: string;
  /** Motors of the site that keep these hours. */
  readonly motors: number;
  readonly energy: number;
  readonly demand: number;
  readonly kvar: number;
  readonly kvarh: number;
  readonly firstYearShare: number;
  /** What is wrong with the hours; they then count as all. */
  readonly unreadable?: string;
}

export interface ShownLine {
  readonly name: string;
  readonly kind: string;
  readonly quantity: number;
  readonly unit: string;
  readonly price: number;
  readonly amount: number;
}

/** A tariff as the screen shows it: plain data. */
export interface TariffView {
  readonly currency: string;
  readonly periods: readonly {
    readonly name: string;
    readonly hours: string;
    readonly stated: number;
    readonly last: number | undefined;
  }[];
  readonly marginal: readonly ShownMarginal[];
  /** What the site's decisions save together, billed once; absent without decisions or without what the site takes. */
  readonly together:
    | {
        readonly motors: number;
        readonly kwh: number;
        readonly kw: number;
        readonly saved: number;
        readonly apart: number;
        readonly beyondUse: boolean;
        /** True where the tariff charges the power factor, which is not in these sums. */
        readonly withoutPowerFactor: boolean;
      }
    | undefined;
  /** Bill over energy; absent without what the site takes. */
  readonly average: number | undefined;
  readonly bill:
    | {
        readonly total: number;
        readonly kwh: number;
        readonly months: readonly { readonly month: number; readonly total: number; readonly lines: readonly ShownLine[] }[];
      }
    | undefined;
}

const ALL_HOURS = 'at hours not stated: evenly around the week';

/** Works out what a tariff comes to: marginal prices by its periods and by the hours of the site's motors, and the bill of a year. */
export function viewTariff(
  tariff: Tariff,
  about: {
    readonly currency: string;
    readonly asOf: string;
    readonly schedules: readonly { readonly schedule: string; readonly motors: number }[];
    readonly savings?: readonly MotorSaving[];
  },
): TariffView {
  const start = Number(about.asOf.slice(5, 7)) - 1;
  const last = marginalByPeriod(tariff);
  const bill = tariff.usage && yearBill(tariff);
  return {
    currency: about.currency,
    periods: tariff.energy.map((period, index) => ({
      name: period.name,
      hours:
        [period.months && `months ${period.months.join(', ')}`, period.when].filter(Boolean).join('; ') || 'all that are left',
      stated: period.pricePerKwh,
      last: last[index],
    })),
    marginal: [
      { ...shownMarginal(tariff, '', start), motors: about.schedules.find(({ schedule }) => schedule === '')?.motors ?? 0 },
      ...about.schedules
        .filter(({ schedule }) => schedule !== '')
        .map(({ schedule, motors }) => ({ ...shownMarginal(tariff, schedule, start), motors })),
    ],
    together: together(tariff, about.savings ?? []),
    average: bill && bill.kwh > 0 ? fromMoney(bill.total) / bill.kwh : undefined,
    bill: bill && {
      total: fromMoney(bill.total),
      kwh: bill.kwh,
      months: bill.months.map(({ month, total, lines }) => ({
        month,
        total: fromMoney(total),
        lines: lines.map((line) => ({ ...line, amount: fromMoney(line.amount) })),
      })),
    },
  };
}

function together(tariff: Tariff, savings: readonly MotorSaving[]): TariffView['together'] {
  if (!tariff.usage || savings.length === 0) return undefined;
  const fleet = fleetSaving(tariff, savings);
  return {
    motors: savings.length,
    kwh: savings.reduce((sum, { kwh }) => sum + kwh, 0),
    kw: savings.reduce((sum, { kw }) => sum + kw, 0),
    saved: fromMoney(fleet.saved),
    apart: fromMoney(fleet.apart),
    beyondUse: fleet.beyondUse,
    withoutPowerFactor: tariff.powerFactor !== undefined || tariff.demand.some(({ unit }) => unit === 'kVA'),
  };
}

function shownMarginal(tariff: Tariff, schedule: string, start: number): Omit<ShownMarginal, 'motors'> {
  const read = schedule === '' ? undefined : readSchedule(schedule);
  const prices = read?.ok ? marginalPrices(tariff, read.week, schedule, start) : marginalPrices(tariff, undefined, '', start);
  return {
    hours: schedule === '' ? ALL_HOURS : schedule,
    energy: prices.energyPerKwh,
    demand: prices.demandPerKwMonth,
    kvar: prices.reactivePerKvarMonth,
    kvarh: prices.reactivePerKvarh,
    firstYearShare: prices.firstYearDemandShare,
    ...(read && !read.ok && { unreadable: `${read.text} ${read.remedy}` }),
  };
}
