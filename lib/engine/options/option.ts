import type { Money } from '../money/money';
import type { Finding } from '../quantity/finding';
import type { Quantity } from '../quantity/quantity';
import type { Action, Timing } from '../result';
import type { PlanKind } from './flow-counts';
import type { FlowPlan } from './flow-plan';
import type { PriceGrowth } from './running-prices';
import type { Worths } from './worth';

/** Figures of an option under their names in the results, with their doubt and derivation. */
export interface OptionFigures {
  readonly cost: Quantity<'currency'>;
  readonly energy_saved?: Quantity<'kWh/a'> | undefined;
  readonly demand_saved?: Quantity<'kW'> | undefined;
  readonly money_saved?: Quantity<'currency/a'> | undefined;
  readonly emissions_saved?: Quantity<'kg/a'> | undefined;
  readonly simple_payback?: Quantity<'a'> | undefined;
  readonly discounted_payback?: Quantity<'a'> | undefined;
  readonly net_present_value?: Quantity<'currency'> | undefined;
  readonly failure_cost_change?: Quantity<'currency'> | undefined;
}

/** The cash flow by line, year 0 first, rounded; each positive when less is spent than in the baseline. They add up to the cash flow. */
export interface FlowLines {
  readonly energy: readonly Money[];
  readonly demand: readonly Money[];
  readonly avoided_repair: readonly Money[];
  readonly residual: readonly Money[];
  readonly investment: readonly Money[];
  readonly rebate: readonly Money[];
  /** Present only where the tariff charges the power factor. */
  readonly power_factor?: readonly Money[] | undefined;
  /** Relief by repairs and depreciation less the tax on what is left; present only with a depreciation. */
  readonly tax?: readonly Money[] | undefined;
  /** Present only when the settings ask for failure cost inside the value. */
  readonly failure?: readonly Money[] | undefined;
}

/** What a payback beyond a repair is made of. */
export interface CostAndSaving {
  readonly netCost: Quantity<'currency'>;
  readonly firstYear: Quantity<'currency/a'>;
  readonly energySaved: Quantity<'kWh/a'>;
  /** The part of the saving that is energy, in currency a year. */
  readonly energyPart: number;
}

/** What the policy asks of an option in place of a repair: simple payback of what it costs beyond that, and the chance that it keeps the limit. */
export interface BeyondRepair {
  readonly payback?: number | undefined;
  readonly probability: number;
}

/** What the money of an option was worked out from, for whoever writes the arithmetic down. */
export interface OptionWorkings {
  readonly kind: PlanKind;
  readonly plan: FlowPlan;
  readonly growth: PriceGrowth;
  readonly worths: Worths;
  /** What the payback counts: the cost less rebates, and less the repair that is spared. */
  readonly netCost: Quantity<'currency'>;
  /** The saving that the payback counts. */
  readonly firstYear: Quantity<'currency/a'>;
  /** Both beyond the repair that the condition calls for. */
  readonly beyondRepair?: CostAndSaving | undefined;
  /** The part of it that is energy, in currency a year. */
  readonly energyPart: number;
}

/** One option for a motor, weighed against the baseline (docs/methods/options-and-money.md). */
export interface Option {
  /** Such as `replace-now-30-premium`. */
  readonly id: string;
  readonly action: Action;
  readonly timing: Timing;
  readonly ratedPowerKw: number;
  readonly efficiencyClass?: string | undefined;
  readonly nominalEfficiencyPct?: number | undefined;
  readonly figures: OptionFigures;
  readonly internalRateOfReturn?: number | undefined;
  readonly savingsToInvestment?: number | undefined;
  /** Standard uncertainty of the ratio, worked out when asked for. */
  readonly savingsToInvestmentDoubt?: (() => number) | undefined;
  /** Money saved over energy saved, in currency per kWh. */
  readonly marginalPrice?: number | undefined;
  /** Chance that the simple payback is within the policy's limit. */
  readonly probabilityWithinPolicy?: number | undefined;
  /** The same beyond the repair that the condition calls for and that the option spares; absent where it calls for none. */
  readonly beyondRepair?: BeyondRepair | undefined;
  /** Kilograms that are expected to be saved in each year from the first on; present where the factor differs by year. */
  readonly emissionsByYear?: readonly number[] | undefined;
  /** Absent, as the lines are, where no value could be given. */
  readonly workings?: OptionWorkings | undefined;
  readonly lines?: FlowLines | undefined;
  readonly cashFlow: readonly Money[];
  /** Value when carried out in each year of the budget; empty for options that take no budget. */
  readonly netPresentValueByYear: readonly Money[];
  /** What is said of the load that it is weighed at; `findings` begin with it. No other finding bars an option. */
  readonly screening: readonly Finding[];
  /** What is to be said of it, put together when somebody asks: of most options nobody does. */
  readonly findings: () => readonly Finding[];
}
