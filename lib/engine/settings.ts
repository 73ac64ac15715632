import type { LoadPoint } from './options/load-curve';
import type { Tariff, Yearly } from './tariff/tariff';

/** The settings of a study, complete: every key has a value. Keys are those of the settings file in camel case. */
export interface Settings {
  readonly schema: 1;
  readonly currency: string;
  readonly frequencyHz: 50 | 60;
  readonly standards: 'nema' | 'iec';
  /** ISO date: the study's "today"; the engine has no clock. */
  readonly asOf: string;
  readonly energyPricePerKwh: number;
  readonly demandPricePerKwMonth: number;
  readonly demandCoincidence: number;
  readonly discountRate: number;
  /** Growth of energy and demand prices a year; a list has one for each year, the last carried on. */
  readonly energyPriceEscalation: Yearly;
  readonly horizonYears: number;
  readonly taxRate: number;
  readonly policy: Policy;
  readonly budget: readonly number[];
  readonly moneyTerms: 'real' | 'nominal';
  readonly inflation: number;
  readonly includeFailureCost: boolean;
  readonly objective: 'net-present-value' | 'energy' | 'emissions' | 'risk';
  readonly assumedLoad: number;
  readonly repairShop: 'unknown' | 'accredited';
  readonly rebates: readonly Rebate[];
  /** Of the supply; a list has one for each year from that of `asOf` on, the last carried on. */
  readonly emissionFactorKgPerKwh: Yearly;
  /** By site; the flat prices above serve where none is given. */
  readonly tariffs: Readonly<Record<string, Tariff>>;
  /** Torque laws of driven machines by given points, by name; speeds rise. The fleet sheet names one in `load_curve`. */
  readonly loadCurves: Readonly<Record<string, readonly LoadPoint[]>>;
  /** How purchases are written off for tax; `null` leaves the relief out. */
  readonly depreciation: Depreciation | null;
  /** Rate of unplanned failures of a motor in ordinary condition, per year. */
  readonly failureRatePerYear: number;
  /** Default meter errors where neither the row nor its instrument states one: per cent of reading, speed in r/min. */
  readonly accuracy: {
    readonly voltagePct: number;
    readonly currentPct: number;
    readonly powerPct: number;
    readonly speedRpm: number;
  };
  /** Limits of condition indicators changed by the user, by limit id, each with its reason. */
  readonly limits: Readonly<Record<string, { readonly value: number; readonly reason: string }>>;
}

interface Policy {
  readonly maxSimplePaybackYears: number;
  readonly minProbability: number;
  readonly maxReadingAgeYears: number;
  readonly atFailure: 'repair' | 'replace';
  readonly spareCapacityPct: number;
  readonly resizeBelowLoadFraction: number;
}

/** A payment by a programme for a replacement: the sum of its parts, up to its caps. */
export interface Rebate {
  readonly action: 'replace' | 'resize';
  /** Per kW of the new rating. */
  readonly perKw: number;
  /** Per kWh saved in the first year. */
  readonly perKwh?: number | undefined;
  readonly perMotor?: number | undefined;
  /** At most so much, and at most this share of the installed cost. */
  readonly cap?: number | undefined;
  readonly capShare?: number | undefined;
}

/** How a purchase is written off over its tax life, nothing being left of it. */
export interface Depreciation {
  readonly method: 'straight-line' | 'declining-balance';
  readonly years: number;
  /** Declining balance: this over the years is written off of what is left, until the straight line gives more. 2 when absent. */
  readonly factor?: number | undefined;
}

/**
 * What a price list may hold: a motor, jobs on one and its fitting; then, each as fitted, what the measures beside a new motor want. A
 * capacitor is priced by the kvar, all else by the piece for a motor of the rating.
 */
export const PRICE_ITEMS = [
  ...(['motor', 'rewind', 'bearing-job', 'removal-install', 'frame-adapter'] as const),
  ...(['notched-belt', 'synchronous-belt', 'drive', 'capacitor'] as const),
] as const;

/** One line of a price list, in the study's currency. */
export interface Price {
  readonly item: (typeof PRICE_ITEMS)[number];
  readonly ratedPowerKw?: number | undefined;
  readonly poles?: number | undefined;
  readonly efficiencyClass?: string | undefined;
  readonly nominalEfficiencyPct?: number | undefined;
  readonly ratedSpeedRpm?: number | undefined;
  readonly frame?: string | undefined;
  readonly enclosure?: 'open' | 'enclosed' | undefined;
  readonly price: number;
  /** Day of the quotation (ISO 8601), and weeks until delivery: for people, and for the spares on the shelf; no option rests on them. */
  readonly date?: string | undefined;
  readonly leadTimeWeeks?: number | undefined;
  readonly source?: string | undefined;
}

/** A price list; `invented` marks the shipped demonstration list. */
export interface PriceList {
  readonly invented: boolean;
  readonly prices: readonly Price[];
}
