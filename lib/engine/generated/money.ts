// Written by scripts/generate.ts from money.sheet.ts. Do not edit: change the sheet and run "npm run generate".
import type { Compiled } from '../formula/compiled';

export const adjusted_rate_of_return = {
  id: "money.adjusted_rate_of_return",
  title: "Adjusted internal rate of return",
  unit: "1",
  symbol: "AIRR",
  inputs: {"rate":{"unit":"1","symbol":"d","meaning":"rate at which savings are reinvested"},"savings_to_investment":{"unit":"1","symbol":"SIR","meaning":"savings-to-investment ratio"},"years":{"unit":"1","symbol":"N","meaning":"number of years"}},
  names: ["rate","savings_to_investment","years"],
  f: (rate: number, savings_to_investment: number, years: number) => (1 + rate) * savings_to_investment ** (1 / years) - 1,
  d: [
    (_rate: number, savings_to_investment: number, years: number) => savings_to_investment ** (1 / years),
    (rate: number, savings_to_investment: number, years: number) => (rate + 1) * savings_to_investment ** (1 / years - 1) / years,
    (rate: number, savings_to_investment: number, years: number) => -((rate + 1) * savings_to_investment ** (1 / years) * Math.log(savings_to_investment) / (years * years)),
  ],
  tex: "\\left(1+ d\\right)\\cdot{ SIR}^{\\frac{1}{ N}}-1",
  template: "\\left(1+ ⟦rate⟧\\right)\\cdot{ ⟦savings_to_investment⟧}^{\\frac{1}{ ⟦years⟧}}-1",
  cell: "(1 + {rate}) * {savings_to_investment} ^ (1 / {years}) - 1",
  expression: "(1 + rate) * savings_to_investment^(1 / years) - 1",
  valid: "Ratio above zero.",
  source: "NIST Handbook 135 (formula from memory)",
} as const satisfies Compiled;

export const demand_cost = {
  id: "money.demand_cost",
  title: "Cost of demand in a year",
  unit: "currency/a",
  symbol: "C_D",
  inputs: {"demand":{"unit":"kW","symbol":"D","meaning":"share of the input that falls into the billed peak"},"demand_price":{"unit":"currency/(kW month)","symbol":"c_D","meaning":"price of demand"}},
  names: ["demand","demand_price"],
  f: (demand: number, demand_price: number) => demand * demand_price * 12,
  d: [
    (_demand: number, demand_price: number) => 12 * demand_price,
    (demand: number) => 12 * demand,
  ],
  tex: "D\\cdot c_D\\cdot 12",
  template: "⟦demand⟧\\cdot ⟦demand_price⟧\\cdot 12",
  cell: "{demand} * {demand_price} * 12",
  expression: "demand * demand_price * months_per_year",
  valid: "Demand billed by the month, without ratchet.",
  source: "Definition of a monthly demand charge",
} as const satisfies Compiled;

export const energy_cost = {
  id: "money.energy_cost",
  title: "Cost of energy in a year",
  unit: "currency/a",
  symbol: "C_E",
  inputs: {"energy":{"unit":"kWh/a","symbol":"E","meaning":"energy in a year"},"energy_price":{"unit":"currency/kWh","symbol":"c_E","meaning":"price of energy"}},
  names: ["energy","energy_price"],
  f: (energy: number, energy_price: number) => energy * energy_price,
  d: [
    (_energy: number, energy_price: number) => energy_price,
    (energy: number) => energy,
  ],
  tex: "E\\cdot c_E",
  template: "⟦energy⟧\\cdot ⟦energy_price⟧",
  cell: "{energy} * {energy_price}",
  expression: "energy * energy_price",
  valid: "Flat price; the marginal price where a tariff has blocks.",
  source: "US DOE fact sheet on buying an energy-efficient motor, question 1",
} as const satisfies Compiled;

export const first_year_saving = {
  id: "money.first_year_saving",
  title: "Money saved in the first year",
  unit: "currency/a",
  symbol: "\\Delta C_1",
  inputs: {"saving":{"unit":"currency/a","symbol":"\\Delta C","meaning":"money saved in a year once the old peak is forgotten"},"demand_before":{"unit":"currency/a","symbol":"C_{D1}","meaning":"cost of demand as it is"},"demand_after":{"unit":"currency/a","symbol":"C_{D2}","meaning":"cost of demand with the option"},"late":{"unit":"1","symbol":"\\lambda","meaning":"share of the demand saving that a ratchet keeps from the first year"}},
  names: ["saving","demand_before","demand_after","late"],
  f: (saving: number, demand_before: number, demand_after: number, late: number) => saving - late * (demand_before - demand_after),
  d: [
    () => 1,
    (_saving: number, _demand_before: number, _demand_after: number, late: number) => -late,
    (_saving: number, _demand_before: number, _demand_after: number, late: number) => late,
    (_saving: number, demand_before: number, demand_after: number) => demand_after - demand_before,
  ],
  tex: "\\Delta C- \\lambda\\cdot\\left( C_{D1}- C_{D2}\\right)",
  template: "⟦saving⟧- ⟦late⟧\\cdot\\left( ⟦demand_before⟧- ⟦demand_after⟧\\right)",
  cell: "{saving} - {late} * ({demand_before} - {demand_after})",
  expression: "saving - late * (demand_before - demand_after)",
  valid: "Share from 0 to 1; without a ratchet it is 0.",
  source: "Definition of a ratchet: the share follows from the bills of the two years",
} as const satisfies Compiled;

export const installed_cost = {
  id: "money.installed_cost",
  title: "Installed cost",
  unit: "currency",
  symbol: "I",
  inputs: {"machine":{"unit":"currency","symbol":"I_m","meaning":"price of the motor or of its repair"},"removal_install":{"unit":"currency","symbol":"I_r","meaning":"removal and installation"},"adapter":{"unit":"currency","symbol":"I_a","meaning":"frame adapter where the frame differs"}},
  names: ["machine","removal_install","adapter"],
  f: (machine: number, removal_install: number, adapter: number) => machine + removal_install + adapter,
  d: [
    () => 1,
    () => 1,
    () => 1,
  ],
  tex: "I_m+ I_r+ I_a",
  template: "⟦machine⟧+ ⟦removal_install⟧+ ⟦adapter⟧",
  cell: "{machine} + {removal_install} + {adapter}",
  expression: "machine + removal_install + adapter",
  valid: "One motor.",
  source: "W. R. Murphy and G. McKay, Energy Management, example 11.4 (payback counts installation)",
} as const satisfies Compiled;

export const money_saved = {
  id: "money.money_saved",
  title: "Money saved in a year",
  unit: "currency/a",
  symbol: "\\Delta C",
  inputs: {"before":{"unit":"currency/a","symbol":"C_1","meaning":"cost of running as it is"},"after":{"unit":"currency/a","symbol":"C_2","meaning":"cost of running with the option"}},
  names: ["before","after"],
  f: (before: number, after: number) => before - after,
  d: [
    () => 1,
    () => -1,
  ],
  tex: "C_1- C_2",
  template: "⟦before⟧- ⟦after⟧",
  cell: "{before} - {after}",
  expression: "before - after",
  valid: "Prices of the date of the study; negative when the option costs more to run.",
  source: "Y. A. Cengel and M. A. Boles, Thermodynamics: An Engineering Approach, example 2-17 (saving as energy saved times its price)",
} as const satisfies Compiled;

export const net_cost = {
  id: "money.net_cost",
  title: "What one outlay costs beyond another",
  unit: "currency",
  symbol: "\\Delta I",
  inputs: {"outlay":{"unit":"currency","symbol":"I","meaning":"installed cost"},"relief":{"unit":"currency","symbol":"I_0","meaning":"rebate, and the repair that is spared when the motor has failed"}},
  names: ["outlay","relief"],
  f: (outlay: number, relief: number) => outlay - relief,
  d: [
    () => 1,
    () => -1,
  ],
  tex: "I- I_0",
  template: "⟦outlay⟧- ⟦relief⟧",
  cell: "{outlay} - {relief}",
  expression: "outlay - relief",
  valid: "Negative when the option is the cheaper one to buy.",
  source: "Y. A. Cengel and M. A. Boles, Thermodynamics: An Engineering Approach, example 2-17 (difference of purchase prices)",
} as const satisfies Compiled;

export const power_factor_cost = {
  id: "money.power_factor_cost",
  title: "Cost of reactive power in a year",
  unit: "currency/a",
  symbol: "C_Q",
  inputs: {"reactive_demand":{"unit":"kvar","symbol":"Q","meaning":"reactive power in the billed peak"},"reactive_demand_price":{"unit":"currency/(kvar month)","symbol":"c_Q","meaning":"marginal price of a kilovar in the billed peak"},"reactive_energy":{"unit":"kvarh/a","symbol":"W_Q","meaning":"reactive energy in a year"},"reactive_energy_price":{"unit":"currency/kvarh","symbol":"c_W","meaning":"marginal price of a kilovar-hour"}},
  names: ["reactive_demand","reactive_demand_price","reactive_energy","reactive_energy_price"],
  f: (reactive_demand: number, reactive_demand_price: number, reactive_energy: number, reactive_energy_price: number) => reactive_demand * reactive_demand_price * 12 + reactive_energy * reactive_energy_price,
  d: [
    (_reactive_demand: number, reactive_demand_price: number) => 12 * reactive_demand_price,
    (reactive_demand: number) => 12 * reactive_demand,
    (_reactive_demand: number, _reactive_demand_price: number, _reactive_energy: number, reactive_energy_price: number) => reactive_energy_price,
    (_reactive_demand: number, _reactive_demand_price: number, reactive_energy: number) => reactive_energy,
  ],
  tex: "Q\\cdot c_Q\\cdot 12+ W_Q\\cdot c_W",
  template: "⟦reactive_demand⟧\\cdot ⟦reactive_demand_price⟧\\cdot 12+ ⟦reactive_energy⟧\\cdot ⟦reactive_energy_price⟧",
  cell: "{reactive_demand} * {reactive_demand_price} * 12 + {reactive_energy} * {reactive_energy_price}",
  expression: "reactive_demand * reactive_demand_price * months_per_year + reactive_energy * reactive_energy_price",
  valid: "Marginal prices of the site: a small part of what it takes.",
  source: "Definition of marginal prices; V. K. Mehta and R. Mehta, Principles of Power System, example 6.6 (demand in kVA)",
} as const satisfies Compiled;

export const running_cost = {
  id: "money.running_cost",
  title: "Cost of running for a year",
  unit: "currency/a",
  symbol: "C",
  inputs: {"energy":{"unit":"currency/a","symbol":"C_E","meaning":"cost of energy"},"demand":{"unit":"currency/a","symbol":"C_D","meaning":"cost of demand"}},
  names: ["energy","demand"],
  f: (energy: number, demand: number) => energy + demand,
  d: [
    () => 1,
    () => 1,
  ],
  tex: "C_E+ C_D",
  template: "⟦energy⟧+ ⟦demand⟧",
  cell: "{energy} + {demand}",
  expression: "energy + demand",
  valid: "Always.",
  source: "Arithmetic",
} as const satisfies Compiled;

export const running_cost_with_power_factor = {
  id: "money.running_cost_with_power_factor",
  title: "Cost of running for a year, power factor included",
  unit: "currency/a",
  symbol: "C",
  inputs: {"running":{"unit":"currency/a","symbol":"C_P","meaning":"cost of energy and demand"},"power_factor":{"unit":"currency/a","symbol":"C_Q","meaning":"cost of reactive power"}},
  names: ["running","power_factor"],
  f: (running: number, power_factor: number) => running + power_factor,
  d: [
    () => 1,
    () => 1,
  ],
  tex: "C_P+ C_Q",
  template: "⟦running⟧+ ⟦power_factor⟧",
  cell: "{running} + {power_factor}",
  expression: "running + power_factor",
  valid: "Always.",
  source: "Arithmetic",
} as const satisfies Compiled;

export const savings_to_investment = {
  id: "money.savings_to_investment",
  title: "Savings-to-investment ratio",
  unit: "1",
  symbol: "SIR",
  inputs: {"savings":{"unit":"currency","symbol":"PV_S","meaning":"present value of the savings"},"investment":{"unit":"currency","symbol":"PV_I","meaning":"present value of the investment less the value left"}},
  names: ["savings","investment"],
  f: (savings: number, investment: number) => savings / investment,
  d: [
    (_savings: number, investment: number) => 1 / investment,
    (savings: number, investment: number) => -(savings / (investment * investment)),
  ],
  tex: "\\frac{ PV_S}{ PV_I}",
  template: "\\frac{ ⟦savings⟧}{ ⟦investment⟧}",
  cell: "{savings} / {investment}",
  expression: "savings / investment",
  valid: "Investment above zero.",
  source: "NIST Handbook 135 (formula from memory); W. R. Murphy and G. McKay, Energy Management, example 3.12 (profitability index)",
} as const satisfies Compiled;

export const simple_payback = {
  id: "money.simple_payback",
  title: "Simple payback",
  unit: "a",
  symbol: "n",
  inputs: {"net_cost":{"unit":"currency","symbol":"\\Delta I","meaning":"net cost of the option"},"saving":{"unit":"currency/a","symbol":"\\Delta C","meaning":"money saved in the first year"}},
  names: ["net_cost","saving"],
  f: (net_cost: number, saving: number) => net_cost / saving,
  d: [
    (_net_cost: number, saving: number) => 1 / saving,
    (net_cost: number, saving: number) => -(net_cost / (saving * saving)),
  ],
  tex: "\\frac{ \\Delta I}{ \\Delta C}",
  template: "\\frac{ ⟦net_cost⟧}{ ⟦saving⟧}",
  cell: "{net_cost} / {saving}",
  expression: "net_cost / saving",
  valid: "Saving above zero; before tax, maintenance, failure risk and the value of time.",
  source: "Y. A. Cengel and M. A. Boles, Thermodynamics: An Engineering Approach, example 2-17; W. R. Murphy and G. McKay, Energy Management, example 11.4",
} as const satisfies Compiled;

export const single_present_value = {
  id: "money.single_present_value",
  title: "Present value of one flow",
  unit: "1",
  symbol: "SPV",
  inputs: {"rate":{"unit":"1","symbol":"d","meaning":"discount rate a year"},"years":{"unit":"1","symbol":"N","meaning":"number of years"}},
  names: ["rate","years"],
  f: (rate: number, years: number) => (1 + rate) ** (-years),
  d: [
    (rate: number, years: number) => -(years / (rate + 1) ** (years + 1)),
    (rate: number, years: number) => -(Math.log(rate + 1) / (rate + 1) ** years),
  ],
  tex: "{\\left(1+ d\\right)}^{- N}",
  template: "{\\left(1+ ⟦rate⟧\\right)}^{- ⟦years⟧}",
  cell: "(1 + {rate}) ^ (-{years})",
  expression: "(1 + rate)^(-years)",
  valid: "Rate above −1; flow at the end of year N.",
  source: "NIST Handbook 135 and its annual supplement (from memory)",
} as const satisfies Compiled;

export const straight_line_value = {
  id: "money.straight_line_value",
  title: "Value left by the straight line",
  unit: "currency",
  symbol: "V",
  inputs: {"purchase":{"unit":"currency","symbol":"I_m","meaning":"purchase price"},"salvage":{"unit":"currency","symbol":"V_L","meaning":"value at the end of the life"},"age":{"unit":"a","symbol":"t","meaning":"age"},"life":{"unit":"a","symbol":"L","meaning":"life"}},
  names: ["purchase","salvage","age","life"],
  f: (purchase: number, salvage: number, age: number, life: number) => salvage + (purchase - salvage) * (1 - age / life),
  d: [
    (_purchase: number, _salvage: number, age: number, life: number) => 1 - age / life,
    (_purchase: number, _salvage: number, age: number, life: number) => age / life,
    (purchase: number, salvage: number, _age: number, life: number) => (salvage - purchase) / life,
    (purchase: number, salvage: number, age: number, life: number) => (purchase - salvage) * age / (life * life),
  ],
  tex: "V_L+\\left( I_m- V_L\\right)\\cdot\\left(1-\\frac{ t}{ L}\\right)",
  template: "⟦salvage⟧+\\left( ⟦purchase⟧- ⟦salvage⟧\\right)\\cdot\\left(1-\\frac{ ⟦age⟧}{ ⟦life⟧}\\right)",
  cell: "{salvage} + ({purchase} - {salvage}) * (1 - {age} / {life})",
  expression: "salvage + (purchase - salvage) * (1 - age / life)",
  valid: "Age up to the life.",
  source: "W. R. Murphy and G. McKay, Energy Management, example 3.5",
} as const satisfies Compiled;

export const uniform_present_value = {
  id: "money.uniform_present_value",
  title: "Present value of an equal yearly flow",
  unit: "1",
  symbol: "UPV",
  inputs: {"rate":{"unit":"1","symbol":"d","meaning":"discount rate a year"},"years":{"unit":"1","symbol":"N","meaning":"number of years"}},
  names: ["rate","years"],
  f: (rate: number, years: number) => (1 - (1 + rate) ** (-years)) / rate,
  d: [
    (rate: number, years: number) => (years / (rate + 1) ** (years + 1) + (1 / (rate + 1) ** years - 1) / rate) / rate,
    (rate: number, years: number) => Math.log(rate + 1) / (rate + 1) ** years / rate,
  ],
  tex: "\\frac{1-{\\left(1+ d\\right)}^{- N}}{ d}",
  template: "\\frac{1-{\\left(1+ ⟦rate⟧\\right)}^{- ⟦years⟧}}{ ⟦rate⟧}",
  cell: "(1 - (1 + {rate}) ^ (-{years})) / {rate}",
  expression: "(1 - (1 + rate)^(-years)) / rate",
  valid: "Rate above zero; flows at the end of years 1 to N.",
  source: "NIST Handbook 135 and its annual supplement (from memory)",
} as const satisfies Compiled;
