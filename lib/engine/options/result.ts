import { fromMoney, rounded } from '../money/money';
import type { Quantity } from '../quantity/quantity';
import type { Figure, OptionResult } from '../result';
import { figure, tidy } from '../result-figure';
import type { Option } from './option';

function entry(quantity: Quantity | undefined, currency: string): Figure | undefined {
  return quantity && figure(quantity, currency);
}

function number(value: number | undefined): number | undefined {
  return value === undefined ? undefined : tidy(value);
}

/** A year's money carries the currency's code alone, as the units of the results file are listed. */
function yearly(money: Quantity, currency: string): Figure {
  const { value, u } = figure(money, currency);
  return { value, u, unit: currency };
}

/** An option as plain data of the results; what is absent stays undefined, so that all options have one form. Money in the study's currency with two decimals, yearly money under the currency's code. */
export function optionResult(option: Option, currency: string): OptionResult {
  const { figures } = option;
  return {
    id: option.id,
    action: option.action,
    timing: option.timing,
    rated_power_kw: tidy(option.ratedPowerKw),
    efficiency_class: option.efficiencyClass,
    nominal_efficiency_pct: number(option.nominalEfficiencyPct),
    cost: rounded(figures.cost.value),
    energy_saved: entry(figures.energy_saved, currency),
    demand_saved: entry(figures.demand_saved, currency),
    money_saved: figures.money_saved && yearly(figures.money_saved, currency),
    emissions_saved: entry(figures.emissions_saved, currency),
    emissions_saved_by_year: option.emissionsByYear?.map(tidy),
    simple_payback: entry(figures.simple_payback, currency),
    discounted_payback: entry(figures.discounted_payback, currency),
    net_present_value: entry(figures.net_present_value, currency),
    internal_rate_of_return: number(option.internalRateOfReturn),
    savings_to_investment: number(option.savingsToInvestment),
    marginal_price: number(option.marginalPrice),
    failure_cost_change: entry(figures.failure_cost_change, currency),
    cash_flow: option.cashFlow.map(fromMoney),
    net_present_value_by_year: option.netPresentValueByYear.map(fromMoney),
    probability_within_policy: number(option.probabilityWithinPolicy),
    findings: option.findings(),
  };
}
