import type { MotorScope } from '../context';
import { leaf } from '../formula/apply';
import type { Motor } from '../motor';
import type { Finding } from '../quantity/finding';
import type { Quantity } from '../quantity/quantity';
import { type MarginalPrices, marginalPrices } from '../tariff/marginal';
import { readSchedule } from '../tariff/schedule';
import type { Tariff, Yearly } from '../tariff/tariff';
import { hoursOf, WHOLE_WEEK } from '../tariff/week';
import { OPTIONS } from './findings';

/** What a year of running is priced with, at the margin of the site's tariff or at the study's flat prices. */
export interface RunningPrices {
  readonly energyPrice: Quantity<'currency/kWh'>;
  /** Mean of twelve months. */
  readonly demandPrice: Quantity<'currency/(kW month)'>;
  readonly coincidence: Quantity<'1'>;
  /** Present where the power factor has a price. */
  readonly reactive?: {
    readonly perKvarMonth: Quantity<'currency/(kvar month)'>;
    readonly perKvarh: Quantity<'currency/kvarh'>;
  };
  readonly growth: PriceGrowth;
  readonly findings: readonly Finding[];
}

/** How prices of running move over the years; one object for all motors of a site, by which their cash-flow plans are remembered. */
export interface PriceGrowth {
  readonly escalation: Yearly;
  /** Share of a year's demand saving that comes in the year after a change: less than 1 under a ratchet still set by the old peak. */
  readonly firstYearDemandShare: number;
}

/** The prices for one motor; `running` is false for a motor that is known never to run, which has no part in the billed peak. */
export function runningPrices(scope: MotorScope, motor: Motor, running: boolean): RunningPrices {
  const { settings } = scope;
  const { plate, site } = motor;
  const own = plate.demandCoincidence;
  const coincidence = leaf(scope, {
    value: running ? (own ?? settings.demandCoincidence) : 0,
    unit: '1',
    label: 'share of the input in the billed peak',
    origin: own === undefined ? 'setting' : 'stamped',
    source: own === undefined ? 'setting demand_coincidence' : 'fleet sheet, demand_coincidence',
  });
  const tariff = Object.hasOwn(settings.tariffs, site) ? settings.tariffs[site] : undefined;
  if (tariff) return { coincidence, ...tariffPrices(scope, motor, tariff) };
  return {
    energyPrice: leaf(scope, {
      value: settings.energyPricePerKwh,
      unit: 'currency/kWh',
      label: 'price of energy',
      origin: 'setting',
      source: 'setting energy_price_per_kwh',
    }),
    demandPrice: leaf(scope, {
      value: settings.demandPricePerKwMonth,
      unit: 'currency/(kW month)',
      label: 'price of demand',
      origin: 'setting',
      source: 'setting demand_price_per_kw_month',
    }),
    coincidence,
    growth: growthOf(settings.energyPriceEscalation, 1),
    findings: [],
  };
}

function tariffPrices(scope: MotorScope, motor: Motor, tariff: Tariff): Omit<RunningPrices, 'coincidence'> {
  const { settings } = scope;
  const { schedule } = motor.plate;
  const read = schedule === undefined ? undefined : readSchedule(schedule);
  const week = read?.ok ? read.week : WHOLE_WEEK;
  const start = Number(settings.asOf.slice(5, 7)) - 1;
  const prices = marginalPrices(tariff, week, read?.ok ? schedule : '', start);
  const source = `tariff of ${motor.site === '' ? 'the site' : motor.site}: bill of a year less the bill with one unit less`;
  const price = <U extends 'currency/kWh' | 'currency/(kW month)' | 'currency/(kvar month)' | 'currency/kvarh'>(
    value: number,
    unit: U,
    label: string,
  ): Quantity<U> => leaf(scope, { value, unit, label, origin: 'derived', source });
  const reactive = prices.reactivePerKvarMonth !== 0 || prices.reactivePerKvarh !== 0;
  return {
    energyPrice: price(prices.energyPerKwh, 'currency/kWh', 'marginal price of energy'),
    demandPrice: price(prices.demandPerKwMonth, 'currency/(kW month)', 'marginal price of demand, mean of twelve months'),
    ...(reactive && {
      reactive: {
        perKvarMonth: price(prices.reactivePerKvarMonth, 'currency/(kvar month)', 'marginal price of a kilovar in the peak'),
        perKvarh: price(prices.reactivePerKvarh, 'currency/kvarh', 'marginal price of a kilovar-hour'),
      },
    }),
    growth: growthOf(tariff.escalation ?? settings.energyPriceEscalation, prices.firstYearDemandShare),
    findings: findingsOf(motor, prices, read && !read.ok ? read : undefined, hoursOf(week)),
  };
}

/** Hours beyond those of the schedule by less than this share are rounding. */
const HOURS_TOLERANCE = 0.02;

function findingsOf(
  { plate, hoursPerYear, site }: Motor,
  prices: MarginalPrices,
  unreadable: { readonly text: string; readonly remedy: string } | undefined,
  hoursPerWeek: number,
): Finding[] {
  const findings: Finding[] = [];
  if (unreadable) findings.push(OPTIONS.make('schedule-unreadable', { problem: unreadable.text, remedy: unreadable.remedy }));
  if (prices.variesByTime && plate.schedule === undefined) findings.push(OPTIONS.make('schedule-unknown', { site }));
  const scheduled = (hoursPerWeek * 365) / 7;
  if (
    plate.schedule !== undefined &&
    !unreadable &&
    hoursPerYear !== undefined &&
    hoursPerYear > scheduled * (1 + HOURS_TOLERANCE)
  )
    findings.push(OPTIONS.make('hours-beyond-schedule', { hours_per_year: hoursPerYear, scheduled_hours: scheduled }));
  if (prices.firstYearDemandShare < 1)
    findings.push(OPTIONS.make('ratchet-holds-demand', { first_year_share: prices.firstYearDemandShare }));
  return findings;
}

const growths = new Map<string, PriceGrowth>();

/** The one object for a way of growing, so that plans can be remembered by it. */
function growthOf(escalation: Yearly, firstYearDemandShare: number): PriceGrowth {
  const key = `${JSON.stringify(escalation)} ${firstYearDemandShare}`;
  const known = growths.get(key);
  if (known) return known;
  const made = { escalation, firstYearDemandShare };
  if (growths.size < 1000) growths.set(key, made);
  return made;
}
