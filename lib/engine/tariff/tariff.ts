/** A figure that is the same in each month, or one for each month from January on. */
export type Monthly = number | readonly number[];

/** A figure of a year that is the same in each, or one for each year of the study, the last carried on. */
export type Yearly = number | readonly number[];

/** A price of energy, and the hours in which it holds. Of several whose hours overlap, the first listed holds. */
interface EnergyPeriod {
  readonly name: string;
  /** Months from 1 to 12; all when absent. */
  readonly months?: readonly number[] | undefined;
  /** Hours of the week as a schedule is written; all when absent. */
  readonly when?: string | undefined;
  readonly pricePerKwh: number;
}

/**
 * What a kilowatt-hour costs beside the price of its hours, by how much the site has used in the month. At most one of the two ends is
 * given; the last block has none.
 */
export interface EnergyBlock {
  readonly upToKwh?: number | undefined;
  /** End in hours of use: kilowatt-hours for each kilowatt of the first demand charge. */
  readonly upToKwhPerKw?: number | undefined;
  readonly pricePerKwh: number;
}

/** A price of the highest demand of a month. */
export interface DemandCharge {
  readonly name: string;
  readonly months?: readonly number[] | undefined;
  readonly when?: string | undefined;
  /** Price of one unit of demand a month. */
  readonly price: number;
  readonly unit: 'kW' | 'kVA';
  /** At least this share of the highest demand of so many months before is billed. */
  readonly ratchet?: { readonly share: number; readonly months: number } | undefined;
  /** At least this is billed. */
  readonly minimum?: number | undefined;
}

/**
 * What a low power factor costs: the billed kilowatts of a month times target over power factor; so much on each kilowatt-hour for each
 * point (0.01) below a limit; or so much for each kilovar-hour beyond those that are free.
 */
type PowerFactorCharge =
  | { readonly kind: 'scaled-demand'; readonly target: number }
  | { readonly kind: 'per-point'; readonly below: number; readonly pricePerKwhPerPoint: number }
  | { readonly kind: 'reactive-energy'; readonly pricePerKvarh: number; readonly freeKvarhPerKwh: number };

/** What the whole site takes, from its bills: without it blocks and ratchets have no place to stand. */
export interface Usage {
  /** Kilowatt-hours of a month, of the site or by name of the period. Of the site: spread over the hours of the month. */
  readonly energyKwh: Monthly | Readonly<Record<string, Monthly>>;
  /** Highest kilowatts of a month, of the site or by name of the demand charge. */
  readonly demandKw: Monthly | Readonly<Record<string, Monthly>>;
  /** Lagging; 1 when absent. */
  readonly powerFactor?: Monthly | undefined;
}

/** The tariff of a site, in the study's currency, before its taxes. Plain data, checked where it is read. */
export interface Tariff {
  readonly name?: string | undefined;
  readonly energy: readonly EnergyPeriod[];
  readonly blocks: readonly EnergyBlock[];
  readonly demand: readonly DemandCharge[];
  readonly powerFactor?: PowerFactorCharge | undefined;
  readonly fixedPerMonth: number;
  /** Each on the sum of all charges before taxes. */
  readonly taxes: readonly { readonly name: string; readonly rate: number }[];
  /** Growth of all prices of the tariff; that of the study when absent. */
  readonly escalation?: Yearly | undefined;
  readonly usage?: Usage | undefined;
}

/** Value of a month (0 to 11). */
export function ofMonth(monthly: Monthly, month: number): number {
  return typeof monthly === 'number' ? monthly : (monthly[month] ?? 0);
}

/** Value of a year of the study (0 is the first); the last of a list is carried on. */
export function ofYear(yearly: Yearly, year: number): number {
  if (typeof yearly === 'number') return yearly;
  return yearly[Math.min(Math.max(year, 0), yearly.length - 1)] ?? 0;
}

/** Growth of a price from the first year of the study to a later one: the product of the rates between. The rate of year 1 is the first of a list. */
export function priceIndex(escalation: Yearly, years: number): number {
  if (typeof escalation === 'number') return (1 + escalation) ** years;
  let index = 1;
  for (let year = 0; year < years; year++) index *= 1 + ofYear(escalation, year);
  return index;
}

/** True when the tariff cannot be judged without knowing what the site takes. */
export function needsUsage(tariff: Pick<Tariff, 'blocks' | 'demand' | 'powerFactor'>): boolean {
  return (
    tariff.blocks.length > 1 ||
    tariff.powerFactor !== undefined ||
    tariff.demand.some((charge) => charge.ratchet !== undefined || charge.minimum !== undefined || charge.unit === 'kVA')
  );
}
