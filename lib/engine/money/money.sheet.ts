import { formula, input } from '../formula/declare';

export const energy_cost = formula({
  title: 'Cost of energy in a year',
  unit: 'currency/a',
  symbol: 'C_E',
  inputs: {
    energy: input('kWh/a', 'E', 'energy in a year'),
    energy_price: input('currency/kWh', 'c_E', 'price of energy'),
  },
  expression: 'energy * energy_price',
  valid: 'Flat price; the marginal price where a tariff has blocks.',
  source: 'US DOE fact sheet on buying an energy-efficient motor, question 1',
  example: { energy: 120000, energy_price: 0.11 },
});

export const demand_cost = formula({
  title: 'Cost of demand in a year',
  unit: 'currency/a',
  symbol: 'C_D',
  inputs: {
    demand: input('kW', 'D', 'share of the input that falls into the billed peak'),
    demand_price: input('currency/(kW month)', 'c_D', 'price of demand'),
  },
  expression: 'demand * demand_price * months_per_year',
  valid: 'Demand billed by the month, without ratchet.',
  source: 'Definition of a monthly demand charge',
  example: { demand: 20, demand_price: 9.5 },
});

export const power_factor_cost = formula({
  title: 'Cost of reactive power in a year',
  unit: 'currency/a',
  symbol: 'C_Q',
  inputs: {
    reactive_demand: input('kvar', 'Q', 'reactive power in the billed peak'),
    reactive_demand_price: input('currency/(kvar month)', 'c_Q', 'marginal price of a kilovar in the billed peak'),
    reactive_energy: input('kvarh/a', 'W_Q', 'reactive energy in a year'),
    reactive_energy_price: input('currency/kvarh', 'c_W', 'marginal price of a kilovar-hour'),
  },
  expression: 'reactive_demand * reactive_demand_price * months_per_year + reactive_energy * reactive_energy_price',
  valid: 'Marginal prices of the site: a small part of what it takes.',
  source: 'Definition of marginal prices; V. K. Mehta and R. Mehta, Principles of Power System, example 6.6 (demand in kVA)',
  example: { reactive_demand: 12, reactive_demand_price: 1.4, reactive_energy: 60000, reactive_energy_price: 0.002 },
});

export const running_cost_with_power_factor = formula({
  title: 'Cost of running for a year, power factor included',
  unit: 'currency/a',
  symbol: 'C',
  inputs: {
    running: input('currency/a', 'C_P', 'cost of energy and demand'),
    power_factor: input('currency/a', 'C_Q', 'cost of reactive power'),
  },
  expression: 'running + power_factor',
  valid: 'Always.',
  source: 'Arithmetic',
  example: { running: 15480, power_factor: 320 },
});

export const running_cost = formula({
  title: 'Cost of running for a year',
  unit: 'currency/a',
  symbol: 'C',
  inputs: {
    energy: input('currency/a', 'C_E', 'cost of energy'),
    demand: input('currency/a', 'C_D', 'cost of demand'),
  },
  expression: 'energy + demand',
  valid: 'Always.',
  source: 'Arithmetic',
  example: { energy: 13200, demand: 2280 },
});

export const money_saved = formula({
  title: 'Money saved in a year',
  unit: 'currency/a',
  symbol: '\\Delta C',
  inputs: {
    before: input('currency/a', 'C_1', 'cost of running as it is'),
    after: input('currency/a', 'C_2', 'cost of running with the option'),
  },
  expression: 'before - after',
  valid: 'Prices of the date of the study; negative when the option costs more to run.',
  source:
    'Y. A. Cengel and M. A. Boles, Thermodynamics: An Engineering Approach, example 2-17 (saving as energy saved times its price)',
  example: { before: 15480, after: 14900 },
});

export const first_year_saving = formula({
  title: 'Money saved in the first year',
  unit: 'currency/a',
  symbol: '\\Delta C_1',
  inputs: {
    saving: input('currency/a', '\\Delta C', 'money saved in a year once the old peak is forgotten'),
    demand_before: input('currency/a', 'C_{D1}', 'cost of demand as it is'),
    demand_after: input('currency/a', 'C_{D2}', 'cost of demand with the option'),
    late: input('1', '\\lambda', 'share of the demand saving that a ratchet keeps from the first year'),
  },
  expression: 'saving - late * (demand_before - demand_after)',
  valid: 'Share from 0 to 1; without a ratchet it is 0.',
  source: 'Definition of a ratchet: the share follows from the bills of the two years',
  example: { saving: 1180, demand_before: 2280, demand_after: 2190, late: 0.4 },
});

export const installed_cost = formula({
  title: 'Installed cost',
  unit: 'currency',
  symbol: 'I',
  inputs: {
    machine: input('currency', 'I_m', 'price of the motor or of its repair'),
    removal_install: input('currency', 'I_r', 'removal and installation'),
    adapter: input('currency', 'I_a', 'frame adapter where the frame differs'),
  },
  expression: 'machine + removal_install + adapter',
  valid: 'One motor.',
  source: 'W. R. Murphy and G. McKay, Energy Management, example 11.4 (payback counts installation)',
  example: { machine: 3590, removal_install: 470, adapter: 190 },
});

export const net_cost = formula({
  title: 'What one outlay costs beyond another',
  unit: 'currency',
  symbol: '\\Delta I',
  inputs: {
    outlay: input('currency', 'I', 'installed cost'),
    relief: input('currency', 'I_0', 'rebate, and the repair that is spared when the motor has failed'),
  },
  expression: 'outlay - relief',
  valid: 'Negative when the option is the cheaper one to buy.',
  source: 'Y. A. Cengel and M. A. Boles, Thermodynamics: An Engineering Approach, example 2-17 (difference of purchase prices)',
  example: { outlay: 4060, relief: 2370 },
});

export const simple_payback = formula({
  title: 'Simple payback',
  unit: 'a',
  symbol: 'n',
  inputs: {
    net_cost: input('currency', '\\Delta I', 'net cost of the option'),
    saving: input('currency/a', '\\Delta C', 'money saved in the first year'),
  },
  expression: 'net_cost / saving',
  valid: 'Saving above zero; before tax, maintenance, failure risk and the value of time.',
  source:
    'Y. A. Cengel and M. A. Boles, Thermodynamics: An Engineering Approach, example 2-17; W. R. Murphy and G. McKay, Energy Management, example 11.4',
  example: { net_cost: 4060, saving: 1180 },
});

export const single_present_value = formula({
  title: 'Present value of one flow',
  unit: '1',
  symbol: 'SPV',
  inputs: {
    rate: input('1', 'd', 'discount rate a year'),
    years: input('1', 'N', 'number of years'),
  },
  expression: '(1 + rate)^(-years)',
  valid: 'Rate above −1; flow at the end of year N.',
  source: 'NIST Handbook 135 and its annual supplement (from memory)',
  example: { rate: 0.08, years: 15 },
});

export const uniform_present_value = formula({
  title: 'Present value of an equal yearly flow',
  unit: '1',
  symbol: 'UPV',
  inputs: {
    rate: input('1', 'd', 'discount rate a year'),
    years: input('1', 'N', 'number of years'),
  },
  expression: '(1 - (1 + rate)^(-years)) / rate',
  valid: 'Rate above zero; flows at the end of years 1 to N.',
  source: 'NIST Handbook 135 and its annual supplement (from memory)',
  example: { rate: 0.08, years: 15 },
});

export const savings_to_investment = formula({
  title: 'Savings-to-investment ratio',
  unit: '1',
  symbol: 'SIR',
  inputs: {
    savings: input('currency', 'PV_S', 'present value of the savings'),
    investment: input('currency', 'PV_I', 'present value of the investment less the value left'),
  },
  expression: 'savings / investment',
  valid: 'Investment above zero.',
  source:
    'NIST Handbook 135 (formula from memory); W. R. Murphy and G. McKay, Energy Management, example 3.12 (profitability index)',
  example: { savings: 59690, investment: 30000 },
});

export const adjusted_rate_of_return = formula({
  title: 'Adjusted internal rate of return',
  unit: '1',
  symbol: 'AIRR',
  inputs: {
    rate: input('1', 'd', 'rate at which savings are reinvested'),
    savings_to_investment: input('1', 'SIR', 'savings-to-investment ratio'),
    years: input('1', 'N', 'number of years'),
  },
  expression: '(1 + rate) * savings_to_investment^(1 / years) - 1',
  valid: 'Ratio above zero.',
  source: 'NIST Handbook 135 (formula from memory)',
  example: { rate: 0.03, savings_to_investment: 1.99, years: 15 },
});

export const straight_line_value = formula({
  title: 'Value left by the straight line',
  unit: 'currency',
  symbol: 'V',
  inputs: {
    purchase: input('currency', 'I_m', 'purchase price'),
    salvage: input('currency', 'V_L', 'value at the end of the life'),
    age: input('a', 't', 'age'),
    life: input('a', 'L', 'life'),
  },
  expression: 'salvage + (purchase - salvage) * (1 - age / life)',
  valid: 'Age up to the life.',
  source: 'W. R. Murphy and G. McKay, Energy Management, example 3.5',
  example: { purchase: 40000, salvage: 4000, age: 6, life: 10 },
});
