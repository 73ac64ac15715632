/**
 * The results of a study as they are written: plain data, no engine objects.
 * Key names are those of the results file (contracts: results, schema 1).
 */
import type { Finding } from './quantity/finding';

/** A figure: value, standard uncertainty (k = 1) and unit; `low`/`high` are 95 % limits where they differ from value ± 1.96 u. */
export interface Figure {
  readonly value: number;
  readonly u: number;
  readonly unit: string;
  readonly low?: number;
  readonly high?: number;
}

export type TrustLevel = 'sound' | 'provisional' | 'not-usable';
export type Band = 'within' | 'near' | 'beyond';
export type Action = 'keep' | 'repair' | 'replace' | 'resize';
export type Timing = 'now' | 'at-failure';
export type MethodId = 'input-power' | 'slip' | 'current' | 'circuit' | 'loss-segregation' | 'air-gap-torque' | 'combined';

export interface Losses {
  readonly stator: Figure;
  readonly rotor: Figure;
  readonly core: Figure;
  readonly friction_windage: Figure;
  readonly stray: Figure;
  readonly total: Figure;
}

export interface EstimateResult {
  readonly method: MethodId;
  readonly shaft_power: Figure;
  readonly used: boolean;
  readonly why: readonly string[];
}

/** What the meters showed at one reading. */
export interface Metered {
  readonly input_power?: number;
  readonly voltage?: number;
  readonly current?: number;
  readonly power_factor?: number;
  readonly frequency?: number;
  readonly speed?: number;
}

export interface ReadingResult {
  readonly row: number;
  readonly taken_at?: string;
  readonly shaft_power?: Figure;
  readonly load_fraction?: Figure;
  readonly trust: TrustLevel;
  readonly metered: Metered;
}

export interface Agreement {
  readonly chi_squared: number;
  readonly degrees_of_freedom: number;
  readonly p: number;
}

export interface IndicatorResult {
  readonly id: string;
  readonly value: Figure;
  /** Absent when no verdict may be given; a finding says why. */
  readonly band?: Band;
  /** The limit in words, with its number and unit. */
  readonly limit: string;
  readonly source: string;
  /** How the limit is known: `read`, `read-secondary`, `memory`, `practice`. */
  readonly status: string;
  readonly taken_at?: string;
  readonly findings: readonly Finding[];
}

export interface OptionResult {
  readonly id: string;
  readonly action: Action;
  readonly timing: Timing;
  readonly rated_power_kw: number;
  readonly efficiency_class?: string;
  readonly nominal_efficiency_pct?: number;
  readonly cost: number;
  readonly energy_saved?: Figure;
  readonly demand_saved?: Figure;
  readonly money_saved?: Figure;
  readonly emissions_saved?: Figure;
  readonly simple_payback?: Figure;
  readonly discounted_payback?: Figure;
  /** Absent when hours or load are not known well enough to compute a saving. */
  readonly net_present_value?: Figure;
  readonly internal_rate_of_return?: number;
  readonly savings_to_investment?: number;
  readonly marginal_price?: number;
  readonly failure_cost_change?: Figure;
  readonly cash_flow: readonly number[];
  readonly net_present_value_by_year: readonly number[];
  readonly probability_within_policy?: number;
  readonly findings: readonly Finding[];
}

export interface Because {
  readonly code: string;
  readonly text: string;
}

export interface MotorResult {
  readonly site: string;
  readonly tag: string;
  readonly area?: string;
  readonly description?: string;
  readonly rated_power_kw: number;
  readonly rank: number;
  readonly shaft_power?: Figure;
  readonly load_fraction?: Figure;
  readonly input_power?: Figure;
  readonly efficiency?: Figure;
  readonly losses?: Losses;
  readonly estimates: readonly EstimateResult[];
  readonly readings: readonly ReadingResult[];
  readonly agreement?: Agreement;
  readonly trust: { readonly level: TrustLevel; readonly findings: readonly Finding[] };
  readonly condition: { readonly indicators: readonly IndicatorResult[]; readonly hypotheses: readonly never[] };
  readonly options: readonly OptionResult[];
  readonly decision: {
    readonly action: Action;
    readonly timing: Timing;
    readonly option: string;
    readonly because: readonly Because[];
  };
}

/** One motor's result before the fleet is ranked, with what the ranking sorts by. */
export interface UnrankedMotor extends Omit<MotorResult, 'rank'> {
  readonly ranking: { readonly group: 0 | 1 | 2; readonly value: number };
}
