import { formula, input } from '../formula/declare';

export const annual_energy = formula({
  title: 'Energy of one step of the duty',
  unit: 'kWh/a',
  symbol: 'E_k',
  inputs: { hours: input('h/a', 'h_k', 'hours a year'), power: input('kW', 'P_k', 'power during them') },
  expression: 'hours * power',
  valid: 'Steady power during the hours.',
  source: 'Definition',
  example: { hours: 4000, power: 24.4 },
});

export const energy_sum = formula({
  title: 'Energy of two steps together',
  unit: 'kWh/a',
  symbol: 'E',
  inputs: { first: input('kWh/a', 'E_1', 'energy so far'), second: input('kWh/a', 'E_2', 'energy of one more step') },
  expression: 'first + second',
  valid: 'Steps of one duty.',
  source: 'Arithmetic',
  example: { first: 97600, second: 31000 },
});

export const energy_ratio = formula({
  title: 'Mean efficiency over the duty',
  unit: '1',
  symbol: '\\bar\\eta',
  inputs: {
    shaft_energy: input('kWh/a', 'E_2', 'energy at the shaft'),
    input_energy: input('kWh/a', 'E_1', 'energy at the terminals'),
  },
  expression: 'shaft_energy / input_energy',
  valid: 'Input energy above zero.',
  source: 'Definition',
  example: { shaft_energy: 89000, input_energy: 97600 },
});

export const energy_saved = formula({
  title: 'Energy saved in a year',
  unit: 'kWh/a',
  symbol: '\\Delta E',
  inputs: { before: input('kWh/a', 'E_1', 'energy as it is'), after: input('kWh/a', 'E_2', 'energy with the option') },
  expression: 'before - after',
  valid: 'Same duty; negative when the option takes more.',
  source: 'Y. A. Cengel and M. A. Boles, Thermodynamics: An Engineering Approach, example 2-17',
  example: { before: 97600, after: 94100 },
});

export const billed_demand = formula({
  title: 'Input that falls into the billed peak',
  unit: 'kW',
  symbol: 'D',
  inputs: {
    input_power: input('kW', 'P_1', 'input at the step with the highest input'),
    coincidence: input('1', 'k', 'share of it that falls into the billed peak'),
  },
  expression: 'input_power * coincidence',
  valid: 'Coincidence from 0 to 1.',
  source: 'T. Gonen, Electric Power Distribution System Engineering, example 2.5 (coincidence factor)',
  example: { input_power: 24.4, coincidence: 0.8 },
});

export const reactive_power = formula({
  title: 'Reactive power at an operating point',
  unit: 'kvar',
  symbol: 'Q',
  inputs: { input_power: input('kW', 'P_1', 'input'), power_factor: input('1', '\\cos\\varphi', 'power factor, lagging') },
  expression: 'input_power * sqrt(1 / power_factor^2 - 1)',
  valid: 'Power factor above 0 and below 1.',
  source: 'Definition; V. K. Mehta and R. Mehta, Principles of Power System, example 6.4',
  example: { input_power: 24.4, power_factor: 0.78 },
});

export const reactive_in_peak = formula({
  title: 'Reactive power that falls into the billed peak',
  unit: 'kvar',
  symbol: 'Q_D',
  inputs: {
    reactive: input('kvar', 'Q', 'reactive power at the step with the highest input'),
    coincidence: input('1', 'k', 'share of it that falls into the billed peak'),
  },
  expression: 'reactive * coincidence',
  valid: 'Coincidence from 0 to 1.',
  source: 'T. Gonen, Electric Power Distribution System Engineering, example 2.5 (coincidence factor)',
  example: { reactive: 19.6, coincidence: 0.8 },
});

export const annual_reactive_energy = formula({
  title: 'Reactive energy of one step of the duty',
  unit: 'kvarh/a',
  symbol: 'W_k',
  inputs: { hours: input('h/a', 'h_k', 'hours a year'), reactive: input('kvar', 'Q_k', 'reactive power during them') },
  expression: 'hours * reactive',
  valid: 'Steady power during the hours.',
  source: 'Definition',
  example: { hours: 4000, reactive: 19.6 },
});

export const reactive_energy_sum = formula({
  title: 'Reactive energy of two steps together',
  unit: 'kvarh/a',
  symbol: 'W',
  inputs: { first: input('kvarh/a', 'W_1', 'so far'), second: input('kvarh/a', 'W_2', 'of one more step') },
  expression: 'first + second',
  valid: 'Steps of one duty.',
  source: 'Arithmetic',
  example: { first: 78400, second: 24000 },
});

export const demand_saved = formula({
  title: 'Demand saved',
  unit: 'kW',
  symbol: '\\Delta D',
  inputs: {
    before: input('kW', 'D_1', 'billed demand as it is'),
    after: input('kW', 'D_2', 'billed demand with the option'),
  },
  expression: 'before - after',
  valid: 'Same step of the duty.',
  source: 'Arithmetic',
  example: { before: 19.5, after: 18.9 },
});

export const power_saved_by_efficiency = formula({
  title: 'Input saved by efficiency alone',
  unit: 'kW',
  symbol: '\\Delta P',
  inputs: {
    rated_power: input('kW', 'P_r', 'rated shaft output'),
    load_fraction: input('1', 'x', 'load fraction'),
    efficiency_before: input('1', '\\eta_1', 'efficiency as it is'),
    efficiency_after: input('1', '\\eta_2', 'efficiency with the option'),
  },
  expression: 'rated_power * load_fraction * (1 / efficiency_before - 1 / efficiency_after)',
  valid: 'Same shaft power: the effect of another speed is not in it.',
  source: 'Y. A. Cengel and M. A. Boles, Thermodynamics: An Engineering Approach, example 2-17',
  example: { rated_power: 44.742, load_fraction: 0.8, efficiency_before: 0.89, efficiency_after: 0.932 },
});

export const power_at_speed_ratio = formula({
  title: 'Shaft power at another speed',
  unit: 'kW',
  symbol: "P'",
  inputs: {
    shaft_power: input('kW', 'P', 'shaft power of the existing motor'),
    speed_ratio: input('1', 'r', 'new speed over old speed'),
    torque_exponent: input('1', 'n', 'torque goes with speed to this power'),
  },
  expression: 'shaft_power * speed_ratio^(torque_exponent + 1)',
  valid: 'Speeds a few per cent apart; a fan or pump on a system without static head has n = 2.',
  source: 'Affinity laws of fans and pumps; US DOE fact sheet on buying an energy-efficient motor (1740 to 1760 r/min: 3.5 %)',
  example: { shaft_power: 22, speed_ratio: 1.0115, torque_exponent: 2 },
});

export const hours_at_speed_ratio = formula({
  title: 'Hours for the same flow at another speed',
  unit: 'h/a',
  symbol: "h'",
  inputs: { hours: input('h/a', 'h', 'hours as it is'), speed_ratio: input('1', 'r', 'new speed over old speed') },
  expression: 'hours / speed_ratio',
  valid: 'On-off control: the flow goes with the speed, so the same volume takes less time.',
  source: 'Affinity laws of fans and pumps: flow in proportion to speed',
  example: { hours: 4000, speed_ratio: 1.0115 },
});

export const load_fraction_of_power = formula({
  title: 'Load fraction of another rating',
  unit: '1',
  symbol: 'x',
  inputs: { shaft_power: input('kW', 'P', 'shaft power'), rated_power: input('kW', 'P_r', 'rated shaft output') },
  expression: 'shaft_power / rated_power',
  valid: 'Without service factor.',
  source: 'Definition',
  example: { shaft_power: 22, rated_power: 30 },
});

export const input_ratio_after_repair = formula({
  title: 'Input after a repair over input before',
  unit: '1',
  symbol: 'r_{rep}',
  inputs: {
    efficiency: input('1', '\\eta', 'mean efficiency before the repair'),
    change: input('1', '\\Delta\\eta', 'change of efficiency by the repair, negative when it falls'),
  },
  expression: 'efficiency / (efficiency + change)',
  valid: 'Same shaft power; the change at rated load is taken for the change at the duty.',
  source: 'Efficiency as output over input; change from the table of rewind changes',
  example: { efficiency: 0.91, change: -0.005 },
});

export const energy_after_repair = formula({
  title: 'Energy after a repair',
  unit: 'kWh/a',
  symbol: 'E_{rep}',
  inputs: { energy: input('kWh/a', 'E', 'energy before'), ratio: input('1', 'r_{rep}', 'input after over input before') },
  expression: 'energy * ratio',
  valid: 'Same duty.',
  source: 'Arithmetic',
  example: { energy: 97600, ratio: 1.0055 },
});

export const power_after_repair = formula({
  title: 'Input after a repair',
  unit: 'kW',
  symbol: 'P_{rep}',
  inputs: { power: input('kW', 'P_1', 'input before'), ratio: input('1', 'r_{rep}', 'input after over input before') },
  expression: 'power * ratio',
  valid: 'Same duty.',
  source: 'Arithmetic',
  example: { power: 24.4, ratio: 1.0055 },
});

export const cost_after_repair = formula({
  title: 'Cost of running after a repair',
  unit: 'currency/a',
  symbol: 'C_{rep}',
  inputs: { cost: input('currency/a', 'C', 'cost before'), ratio: input('1', 'r_{rep}', 'input after over input before') },
  expression: 'cost * ratio',
  valid: 'Same duty and prices.',
  source: 'Arithmetic',
  example: { cost: 15480, ratio: 1.0055 },
});

export const emissions_saved = formula({
  title: 'Emissions saved in a year',
  unit: 'kg/a',
  symbol: '\\Delta m',
  inputs: {
    energy_saved: input('kWh/a', '\\Delta E', 'energy saved in a year'),
    emission_factor: input('kg/kWh', 'f', 'emission factor of the supply'),
  },
  expression: 'energy_saved * emission_factor',
  valid: 'Average factor of the supply; carbon dioxide or its equivalent, as the factor says.',
  source: 'Definition of an emission factor',
  example: { energy_saved: 3500, emission_factor: 0.373 },
});
