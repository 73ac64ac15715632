/**
 * The results of a study as they are written: plain data, no engine objects.
 * Key names are those of the results file (contracts: results, schema 1).
 */
import type { HypothesisId } from './condition/hypothesis-id';
import type { Finding } from './quantity/finding';
import type { MeteredKind } from './quantity/quantity';

/** A figure: value, standard uncertainty (k = 1) and unit; `low`/`high` are 95 % limits where they differ from value ± 1.96 u. */
export interface Figure {
  readonly value: number;
  readonly u: number;
  readonly unit: string;
  readonly low?: number | undefined;
  readonly high?: number | undefined;
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

/** The same total loss by what causes it. A cause of which nothing was read is absent. */
export interface LossesByCause {
  /** On a balanced sine. */
  readonly fundamental: Figure;
  readonly unbalance?: Figure;
  readonly harmonics?: Figure;
  readonly drive?: Figure;
}

export interface EstimateResult {
  readonly method: MethodId;
  readonly shaft_power: Figure;
  readonly used: boolean;
  readonly why: readonly string[];
}

/** What the meters showed at one reading. */
export interface Metered {
  readonly input_power?: number | undefined;
  readonly voltage?: number | undefined;
  readonly current?: number | undefined;
  readonly power_factor?: number | undefined;
  readonly frequency?: number | undefined;
  readonly speed?: number | undefined;
}

export interface ReadingResult {
  readonly row: number;
  readonly taken_at?: string | undefined;
  readonly shaft_power?: Figure | undefined;
  readonly load_fraction?: Figure | undefined;
  readonly trust: TrustLevel;
  readonly metered: Metered;
}

export interface Agreement {
  readonly chi_squared: number;
  readonly degrees_of_freedom: number;
  readonly p: number;
}

/** How an indicator moved over its dated readings at about the same load. */
export interface TrendResult {
  readonly per_year: Figure;
  readonly readings: number;
  readonly since: string;
  readonly direction: 'worse' | 'better' | 'steady';
}

export interface IndicatorResult {
  readonly id: string;
  readonly value: Figure;
  /** Absent when no verdict may be given; a finding says why. */
  readonly band?: Band | undefined;
  /** What is left to the limit at which `beyond` begins, below zero beyond it; absent without a verdict against a limit. */
  readonly margin?: Figure | undefined;
  /** The limit in words, with its number and unit. */
  readonly limit: string;
  readonly source: string;
  /** How the limit is known: `read`, `read-secondary`, `memory`, `practice`. */
  readonly status: string;
  readonly taken_at?: string | undefined;
  /** Absent without two dated readings at about the same load, a month apart. */
  readonly trend?: TrendResult | undefined;
  readonly findings: readonly Finding[];
}

/** How far a suspicion goes: one independent group of evidence; two and odds of at least even; two and at least 9 to 1. */
export type Strength = 'weak' | 'moderate' | 'strong';

/** What one indicator says of a suspicion; evidence that moves together has the same group. */
export interface EvidenceResult {
  readonly indicator: string;
  readonly group: string;
  readonly text: string;
  /** How many times likelier the reading is with the fault than in a sound motor; absent where nothing was read. */
  readonly ratio?: number;
}

export interface HypothesisResult {
  readonly id: HypothesisId;
  /** p / (1 − p) against all else. */
  readonly odds: number;
  readonly for: readonly EvidenceResult[];
  readonly against: readonly EvidenceResult[];
  readonly missing: readonly EvidenceResult[];
  readonly strength: Strength;
}

/** The reading that would best tell the leading suspicions apart. */
interface NextMeasurementResult {
  readonly indicator: string;
  readonly columns: readonly string[];
  readonly between: readonly HypothesisId[];
  readonly text: string;
}

export interface ConditionResult {
  readonly indicators: readonly IndicatorResult[];
  /** Likeliest first. */
  readonly hypotheses: readonly HypothesisResult[];
  readonly next_measurement?: NextMeasurementResult | undefined;
}

export interface OptionResult {
  readonly id: string;
  readonly action: Action;
  readonly timing: Timing;
  readonly rated_power_kw: number;
  readonly efficiency_class?: string | undefined;
  readonly nominal_efficiency_pct?: number | undefined;
  readonly cost: number;
  readonly energy_saved?: Figure | undefined;
  readonly demand_saved?: Figure | undefined;
  readonly money_saved?: Figure | undefined;
  readonly emissions_saved?: Figure | undefined;
  /** Kilograms in each year of the horizon, the first year first; only where the emission factor differs by year. */
  readonly emissions_saved_by_year?: readonly number[] | undefined;
  readonly simple_payback?: Figure | undefined;
  readonly discounted_payback?: Figure | undefined;
  /** Absent when hours or load are not known well enough to compute a saving. */
  readonly net_present_value?: Figure | undefined;
  readonly internal_rate_of_return?: number | undefined;
  readonly savings_to_investment?: number | undefined;
  readonly marginal_price?: number | undefined;
  readonly failure_cost_change?: Figure | undefined;
  readonly cash_flow: readonly number[];
  readonly net_present_value_by_year: readonly number[];
  readonly probability_within_policy?: number | undefined;
  readonly findings: readonly Finding[];
}

export interface Because {
  readonly code: string;
  readonly text: string;
}

/** By what a motor is recognized as another's sister, beside its site, area and rating. */
export interface Likeness {
  readonly machine_kind: string;
  readonly poles: number;
  readonly rated_voltage_v: number;
  readonly drive_fed: boolean;
  readonly driven_machine?: string;
}

/** How one indicator stands among those of like motors; numbers in `unit`. It says where to look and alters nothing else. */
export interface SisterResult {
  readonly indicator: string;
  /** `type`: same rating, poles, voltage and kind at the site; `place`: same area and driven machine. */
  readonly alike: 'type' | 'place';
  /** The motor's own. */
  readonly value: number;
  readonly count: number;
  readonly median: number;
  /** A value between these is like its sisters'. */
  readonly low: number;
  readonly high: number;
  readonly unit: string;
  readonly standing: 'like' | 'above' | 'below';
  /** True when it stands apart on the bad side. */
  readonly worse: boolean;
}

/** What a figure's doubt does to the values of the options. */
export interface DoubtResult {
  readonly about: 'load' | 'hours' | 'efficiency';
  /** As it is known now. */
  readonly figure: Figure;
  /** How much each value moves, in currency, with one standard uncertainty of the figure; options that do not move are left out. */
  readonly effects: readonly { readonly option: string; readonly net_present_value: number }[];
}

/** What the error of one meter does to figures that are summed over a fleet: their change, with its sign, by one standard uncertainty of it. */
export interface MeterEffects {
  /** As the sheet names it; absent where it names none: then one set of meters is taken to have served the site. */
  readonly instrument?: string;
  readonly reads: MeteredKind;
  readonly input_power: number;
  readonly total_loss: number;
  /** For each of the motor's options, in their order; absent where none is moved. Emissions move as the energy does. */
  readonly energy_saved?: readonly number[];
  readonly demand_saved?: readonly number[];
  readonly money_saved?: readonly number[];
}

export interface MotorResult {
  readonly site: string;
  readonly tag: string;
  readonly area?: string | undefined;
  readonly description?: string | undefined;
  readonly rated_power_kw: number;
  readonly rank: number;
  /** Indicators among those of sisters; absent without five sisters that were read. */
  readonly sisters?: readonly SisterResult[];
  readonly shaft_power?: Figure | undefined;
  readonly load_fraction?: Figure | undefined;
  readonly input_power?: Figure | undefined;
  readonly efficiency?: Figure | undefined;
  readonly losses?: Losses | undefined;
  readonly losses_by_cause?: LossesByCause | undefined;
  readonly estimates: readonly EstimateResult[];
  readonly readings: readonly ReadingResult[];
  readonly agreement?: Agreement | undefined;
  readonly trust: { readonly level: TrustLevel; readonly findings: readonly Finding[] };
  readonly condition: ConditionResult;
  readonly options: readonly OptionResult[];
  /** Absent where no option has a value that hangs on a doubt; results of earlier engines have none. */
  readonly doubts?: readonly DoubtResult[];
  /** Errors of meters that other motors may share; absent without a metered figure, and in results of earlier engines. */
  readonly meters?: readonly MeterEffects[];
  readonly decision: {
    readonly action: Action;
    readonly timing: Timing;
    readonly option: string;
    readonly because: readonly Because[];
  };
}

/** One motor's result before the steps over the fleet, with what these go by. */
export interface UnrankedMotor extends Omit<MotorResult, 'rank' | 'sisters'> {
  readonly ranking: { readonly group: 0 | 1 | 2; readonly value: number };
  readonly likeness: Likeness;
}
