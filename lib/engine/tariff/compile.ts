import { sum } from '../numbers';
import { weekWhen } from './schedule';
import { type Monthly, ofMonth, type Tariff, type Usage } from './tariff';
import { common, hoursInMonth, hoursOf, MONTHS, type Week, WHOLE_WEEK, without } from './week';

/** What a site takes in one month. */
export interface MonthUse {
  /** Kilowatt-hours by period. */
  readonly kwh: readonly number[];
  /** Highest kilowatts, and kilovars at the same time, by demand charge. */
  readonly kw: readonly number[];
  readonly kvar: readonly number[];
  readonly kvarh: number;
}

/** A tariff with the hours of each price worked out. */
export interface CompiledTariff {
  readonly tariff: Tariff;
  /** By month and period: the hours of the week in which the price holds. */
  readonly hours: readonly (readonly Week[])[];
  /** By demand charge: the hours of the week in which its peak is taken. */
  readonly peaks: readonly Week[];
  /** By month and demand charge. */
  readonly billed: readonly (readonly boolean[])[];
  readonly usage: readonly MonthUse[];
}

const compiled = new WeakMap<Tariff, CompiledTariff>();

/** Works a tariff out, once for each. */
export function compileTariff(tariff: Tariff): CompiledTariff {
  const known = compiled.get(tariff);
  if (known) return known;
  const hours = eachMonth((month) => pricesOf(tariff, month));
  const peaks = tariff.demand.map(({ when }) => weekWhen(when));
  const billed = eachMonth((month) => tariff.demand.map(({ months }) => holds(months, month)));
  const made = { tariff, hours, peaks, billed, usage: eachMonth((month) => useOf(tariff, hours[month] ?? [], month)) };
  compiled.set(tariff, made);
  return made;
}

/** A value for each month of the year. */
export function eachMonth<T>(make: (month: number) => T): T[] {
  return Array.from({ length: MONTHS }, (_, month) => make(month));
}

function holds(months: readonly number[] | undefined, month: number): boolean {
  return months === undefined || months.includes(month + 1);
}

/** The hours of each period in a month: the first listed takes its hours, the next what is left. */
function pricesOf(tariff: Pick<Tariff, 'energy'>, month: number): Week[] {
  let left: Week = WHOLE_WEEK;
  return tariff.energy.map((period) => {
    if (!holds(period.months, month)) return [];
    const week = common(left, weekWhen(period.when));
    left = without(left, week);
    return week;
  });
}

/** The first month (1 to 12) with hours that no period gives a price, and how many a week; `undefined` when every hour has one. */
export function unpricedHours(tariff: Pick<Tariff, 'energy'>): { readonly month: number; readonly hours: number } | undefined {
  for (let month = 0; month < MONTHS; month++) {
    const priced = pricesOf(tariff, month).reduce((sum, week) => sum + hoursOf(week), 0);
    const hours = hoursOf(WHOLE_WEEK) - priced;
    if (hours > 1e-9) return { month: month + 1, hours };
  }
  return undefined;
}

/** Places in the list of the periods that hold in no hour of any month, since those before them take theirs. */
export function hiddenPeriods(tariff: Pick<Tariff, 'energy'>): number[] {
  const byMonth = eachMonth((month) => pricesOf(tariff, month));
  return tariff.energy.flatMap((_, index) => (byMonth.some((weeks) => hoursOf(weeks[index] ?? []) > 1e-9) ? [] : [index]));
}

/** Without bills any use will do: prices that depend on it demand that it is stated. */
const NOTIONAL: Usage = { energyKwh: 1000, demandKw: 10 };

function useOf(tariff: Tariff, hours: readonly Week[], month: number): MonthUse {
  const usage = tariff.usage ?? NOTIONAL;
  const kwh = byName(
    usage.energyKwh,
    tariff.energy.map(({ name }) => name),
    month,
    hours.map((week) => hoursInMonth(week, month) / hoursInMonth(WHOLE_WEEK, month)),
  );
  const kw = byName(
    usage.demandKw,
    tariff.demand.map(({ name }) => name),
    month,
    tariff.demand.map(() => 1),
  );
  const factor = usage.powerFactor === undefined ? 1 : ofMonth(usage.powerFactor, month);
  const tangent = Math.sqrt(1 - factor * factor) / factor;
  return { kwh, kw, kvar: kw.map((power) => power * tangent), kvarh: sum(kwh) * tangent };
}

function byName(
  given: Monthly | Readonly<Record<string, Monthly>>,
  names: readonly string[],
  month: number,
  shares: readonly number[],
): number[] {
  if (typeof given === 'number' || isList(given)) return shares.map((share) => share * ofMonth(given, month));
  return names.map((name) => ofMonth(given[name] ?? 0, month));
}

function isList(given: Monthly | Readonly<Record<string, Monthly>>): given is readonly number[] {
  return Array.isArray(given);
}
