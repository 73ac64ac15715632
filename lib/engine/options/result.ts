import { fromMoney, rounded } from '../money/money';
import type { Quantity } from '../quantity/quantity';
import type { Figure, OptionResult } from '../result';
import { figure, tidy } from '../result-figure';
import type { Option } from './option';

function entry<K extends string>(name: K, quantity: Quantity | undefined, currency: string): { [N in K]?: Figure } {
  return quantity ? ({ [name]: figure(quantity, currency) } as { [N in K]?: Figure }) : {};
}

function number<K extends string>(name: K, value: number | undefined): { [N in K]?: number } {
  return value === undefined ? {} : ({ [name]: tidy(value) } as { [N in K]?: number });
}

/** An option as plain data of the results; money in the study's currency with two decimals, yearly money under the currency's code. */
export function optionResult(option: Option, currency: string): OptionResult {
  const { figures } = option;
  return {
    id: option.id,
    action: option.action,
    timing: option.timing,
    rated_power_kw: tidy(option.ratedPowerKw),
    ...(option.efficiencyClass !== undefined && { efficiency_class: option.efficiencyClass }),
    ...number('nominal_efficiency_pct', option.nominalEfficiencyPct),
    cost: rounded(figures.cost.value),
    ...entry('energy_saved', figures.energy_saved, currency),
    ...entry('demand_saved', figures.demand_saved, currency),
    // A year's money carries the currency's code alone, as the units of the results file are listed.
    ...(figures.money_saved && { money_saved: { ...figure(figures.money_saved, currency), unit: currency } }),
    ...entry('emissions_saved', figures.emissions_saved, currency),
    ...(option.emissionsByYear && { emissions_saved_by_year: option.emissionsByYear.map(tidy) }),
    ...entry('simple_payback', figures.simple_payback, currency),
    ...entry('discounted_payback', figures.discounted_payback, currency),
    ...entry('net_present_value', figures.net_present_value, currency),
    ...number('internal_rate_of_return', option.internalRateOfReturn),
    ...number('savings_to_investment', option.savingsToInvestment),
    ...number('marginal_price', option.marginalPrice),
    ...entry('failure_cost_change', figures.failure_cost_change, currency),
    cash_flow: option.cashFlow.map(fromMoney),
    net_present_value_by_year: option.netPresentValueByYear.map(fromMoney),
    ...number('probability_within_policy', option.probabilityWithinPolicy),
    findings: option.findings,
  };
}
