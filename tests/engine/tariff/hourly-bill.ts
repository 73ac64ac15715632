/**
 * A bill worked out hour by hour over a year, by the rules of a tariff as the settings file and docs/methods/tariffs.md state them. It shares no code
 * with the engine: its hours are squares of a grid, its meter adds up every hour of a calendar, and it bills month after month in order of time.
 */

/** Hours of the week in which something holds: seven days from Monday with 24 hours each. */
export type Grid = readonly (readonly boolean[])[];

/** A tariff in the words of the settings file, but with its hours as grids. */
export interface PlainTariff {
  readonly energy: readonly {
    readonly name: string;
    readonly months?: readonly number[];
    readonly grid?: Grid;
    readonly price: number;
  }[];
  readonly blocks: readonly { readonly upToKwh?: number; readonly upToKwhPerKw?: number; readonly price: number }[];
  readonly demand: readonly PlainDemand[];
  readonly powerFactor?:
    | { readonly kind: 'scaled-demand'; readonly target: number }
    | { readonly kind: 'per-point'; readonly below: number; readonly price: number }
    | { readonly kind: 'reactive-energy'; readonly price: number; readonly free: number };
  readonly fixed: number;
  readonly taxes: readonly number[];
}

export interface PlainDemand {
  readonly name: string;
  readonly months?: readonly number[];
  readonly grid?: Grid;
  readonly price: number;
  readonly unit: 'kW' | 'kVA';
  readonly ratchet?: { readonly share: number; readonly months: number };
  readonly minimum?: number;
}

/** What a site takes: by month from January a steady power, the peak of a quarter of an hour while the machine runs, and the power factor. */
export interface PlainSite {
  readonly kw: readonly number[];
  readonly peakKw: readonly number[];
  readonly powerFactor: readonly number[];
  /** Hours of the week in which the machine runs; outside of them the peak is four fifths of that within. */
  readonly machine: Grid;
}

/** What is saved in every hour of the machine: of the energy, and of the peak of the quarter hour. */
export interface PlainSaving {
  readonly kwh?: number;
  readonly kvarh?: number;
  readonly peakKw?: number;
  readonly peakKvar?: number;
}

/** What the meters show of a month. */
export interface Metered {
  readonly month: number;
  readonly kwh: number[];
  kvarh: number;
  machineHours: number;
  /** Of each demand charge the highest kilowatts in its hours, the kilovars and kilovolt-amperes of the same quarter of an hour. */
  readonly peak: { kw: number; kvar: number; kva: number }[];
}

const DAYS_OF_MONTH = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

const holds = (grid: Grid | undefined, weekday: number, hour: number): boolean =>
  grid === undefined || grid[weekday]?.[hour] === true;
const inMonths = (months: readonly number[] | undefined, month: number): boolean =>
  months === undefined || months.includes(month);

/** Reads the meters hour by hour through a common year whose first of January is the given day of the week (0 is Monday). */
export function meterYear(tariff: PlainTariff, site: PlainSite, firstWeekday: number, saving: PlainSaving = {}): Metered[] {
  const year: Metered[] = [];
  let weekday = firstWeekday;
  DAYS_OF_MONTH.forEach((days, index) => {
    const month = index + 1;
    const meters: Metered = {
      month,
      kwh: tariff.energy.map(() => 0),
      kvarh: 0,
      machineHours: 0,
      peak: tariff.demand.map(() => ({ kw: 0, kvar: 0, kva: 0 })),
    };
    const cosine = site.powerFactor[index] ?? 1;
    const tangent = Math.tan(Math.acos(cosine));
    for (let day = 0; day < days; day++) {
      for (let hour = 0; hour < 24; hour++) {
        const runs = holds(site.machine, weekday, hour);
        const kwh = (site.kw[index] ?? 0) - (runs ? (saving.kwh ?? 0) : 0);
        const period = tariff.energy.findIndex((one) => inMonths(one.months, month) && holds(one.grid, weekday, hour));
        meters.kwh[period] = (meters.kwh[period] ?? 0) + kwh;
        meters.kvarh += (site.kw[index] ?? 0) * tangent - (runs ? (saving.kvarh ?? 0) : 0);
        if (runs) meters.machineHours += 1;
        const usual = (runs ? 1 : 0.8) * (site.peakKw[index] ?? 0);
        const kw = usual - (runs ? (saving.peakKw ?? 0) : 0);
        const kvar = usual * tangent - (runs ? (saving.peakKvar ?? 0) : 0);
        tariff.demand.forEach((charge, at) => {
          const peak = meters.peak[at];
          if (!peak || !holds(charge.grid, weekday, hour)) return;
          const kva = Math.sqrt(kw * kw + kvar * kvar);
          if (kva > peak.kva) Object.assign(peak, { kw, kvar, kva });
        });
      }
      weekday = (weekday + 1) % 7;
    }
    year.push(meters);
  });
  return year;
}

/** The bills of months that follow each other; `before` are the months that came earlier, the last one latest. */
export function billMonths(tariff: PlainTariff, months: readonly Metered[], before: readonly Metered[]): number[] {
  const past = [...before];
  return months.map((now) => {
    const bill = billOf(tariff, now, past);
    past.push(now);
    return bill;
  });
}

function billOf(tariff: PlainTariff, now: Metered, past: readonly Metered[]): number {
  let bill = 0;
  let kwh = 0;
  tariff.energy.forEach((period, at) => {
    bill += (now.kwh[at] ?? 0) * period.price;
    kwh += now.kwh[at] ?? 0;
  });
  const factor = kwh / Math.sqrt(kwh ** 2 + now.kvarh ** 2);
  // Blocks: the month's energy is poured in from the first to the last.
  let poured = 0;
  for (const block of tariff.blocks) {
    let end = kwh;
    if (block.upToKwh !== undefined) end = Math.min(kwh, block.upToKwh);
    if (block.upToKwhPerKw !== undefined) end = Math.min(kwh, block.upToKwhPerKw * (now.peak[0]?.kw ?? 0));
    if (end > poured) {
      bill += (end - poured) * block.price;
      poured = end;
    }
  }
  tariff.demand.forEach((charge, at) => {
    if (!inMonths(charge.months, now.month)) return;
    const measured = (meters: Metered): number => (charge.unit === 'kVA' ? meters.peak[at]?.kva : meters.peak[at]?.kw) ?? 0;
    let billed = measured(now);
    if (charge.minimum !== undefined && charge.minimum > billed) billed = charge.minimum;
    if (charge.ratchet)
      for (const earlier of past.slice(-charge.ratchet.months)) {
        // A month in which the charge is not billed has no demand of it.
        if (!inMonths(charge.months, earlier.month)) continue;
        if (charge.ratchet.share * measured(earlier) > billed) billed = charge.ratchet.share * measured(earlier);
      }
    const rule = tariff.powerFactor;
    if (rule?.kind === 'scaled-demand' && charge.unit === 'kW' && factor < rule.target) billed *= rule.target / factor;
    bill += billed * charge.price;
  });
  const rule = tariff.powerFactor;
  if (rule?.kind === 'per-point' && factor < rule.below) bill += kwh * rule.price * (rule.below - factor) * 100;
  if (rule?.kind === 'reactive-energy' && now.kvarh > rule.free * kwh) bill += (now.kvarh - rule.free * kwh) * rule.price;
  bill += tariff.fixed;
  const taxable = bill;
  for (const rate of tariff.taxes) bill += rate * taxable;
  return bill;
}

/** What a saving takes off the bills, as the mean of seven years that begin on each day of the week once. */
export interface PlainWorth {
  /** In a year in which all months before had the saving as well. */
  readonly steady: number;
  /** In the twelve months after the change, with the months before as they were. */
  readonly first: number;
  readonly machineHours: number;
}

/** Bills the site twice, with and without the saving, and takes the difference; the change is made at the start of a month (1 to 12). */
export function worthOf(tariff: PlainTariff, site: PlainSite, saving: PlainSaving, changedIn = 1): PlainWorth {
  let [steady, first, machineHours] = [0, 0, 0];
  for (let weekday = 0; weekday < 7; weekday++) {
    const [plain, less] = [meterYear(tariff, site, weekday), meterYear(tariff, site, weekday, saving)];
    const turned = (year: readonly Metered[]) => [...year.slice(changedIn - 1), ...year.slice(0, changedIn - 1)];
    const [before, after] = [turned(plain), turned(less)];
    const unchanged = sum(billMonths(tariff, before, before));
    first += unchanged - sum(billMonths(tariff, after, before));
    steady += unchanged - sum(billMonths(tariff, after, after));
    machineHours += sum(plain.map((month) => month.machineHours));
  }
  return { steady: steady / 7, first: first / 7, machineHours: machineHours / 7 };
}

function sum(list: readonly number[]): number {
  return list.reduce((total, one) => total + one, 0);
}
