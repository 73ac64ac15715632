import { formula, input } from '../formula/declare';

export const other_part = formula({
  title: 'What one loss leaves of a sum',
  unit: 'kW',
  symbol: 'P_b',
  inputs: { sum: input('kW', 'P_{ab}', 'sum of two losses'), part: input('kW', 'P_a', 'one of them') },
  expression: 'sum - part',
  valid: 'Result above zero.',
  source: 'Arithmetic',
  example: { sum: 1.5, part: 0.9 },
});

export const stator_loss_from_resistance = formula({
  title: 'Stator loss from terminal resistance',
  unit: 'kW',
  symbol: 'P_1',
  inputs: { resistance: input('Ω', 'R', 'resistance between two terminals'), current: input('A', 'I', 'line current') },
  expression: '1.5 * current^2 * resistance / watts_per_kilowatt',
  valid: 'Star and delta alike; mean of the three pairs.',
  source: 'IEEE 112-2017 clause 5.4; B. L. Theraja, A Textbook of Electrical Technology vol. II, example 34.38',
  example: { resistance: 0.12, current: 75 },
});

export const resistance_at_temperature = formula({
  title: 'Resistance at another temperature',
  unit: 'Ω',
  symbol: 'R_2',
  inputs: {
    resistance: input('Ω', 'R_1', 'resistance as measured'),
    measured_at: input('K', 't_1', 'temperature at the measurement, in °C'),
    wanted_at: input('K', 't_2', 'temperature wanted, in °C'),
    material: input('K', 'k', 'constant of the conductor: 234.5 for copper'),
  },
  expression: 'resistance * (material + wanted_at) / (material + measured_at)',
  valid: 'Copper or aluminium near room and running temperature.',
  source: 'IEEE 112-2017 clause 5.3 (from memory); textbooks',
  example: { resistance: 0.12, measured_at: 25, wanted_at: 95, material: 234.5 },
});

export const no_load_loss = formula({
  title: 'Core loss with friction and windage from the uncoupled test',
  unit: 'kW',
  symbol: 'P_{fe} + P_{fw}',
  inputs: {
    no_load_power: input('kW', 'P_0', 'input power of the uncoupled test'),
    no_load_stator_loss: input('kW', 'P_{1,0}', 'stator loss at the no-load current'),
  },
  expression: 'no_load_power - no_load_stator_loss',
  valid: 'Near rated voltage; rotor loss at no load neglected.',
  source: 'IEEE 112-2017 clause 5.5; C. I. Hubert, Electric Machines, example 5.16',
  example: { no_load_power: 1.2, no_load_stator_loss: 0.1 },
});

export const shaft_power_at_load = formula({
  title: 'Shaft power from load fraction',
  unit: 'kW',
  symbol: 'P',
  inputs: { load_fraction: input('1', 'x', 'load fraction'), rated_power: input('kW', 'P_r', 'rated shaft output') },
  expression: 'load_fraction * rated_power',
  valid: 'Load fraction is taken without service factor.',
  source: 'Definition',
  example: { load_fraction: 0.6, rated_power: 37 },
});

export const stray_with_extra_loss = formula({
  title: 'Stray-load loss with what drive or distortion add',
  unit: 'kW',
  symbol: 'P_{LL}',
  inputs: {
    stray: input('kW', 'P_{LL,1}', 'stray-load loss on a sine'),
    extra_loss: input('kW', 'P_x', 'extra loss by drive or distortion'),
  },
  expression: 'stray + extra_loss',
  valid: 'Always.',
  source: 'The extra losses of a waveform count with the stray-load loss (common practice)',
  example: { stray: 0.2, extra_loss: 0.4 },
});

export const fundamental_loss = formula({
  title: 'Loss on a balanced sine',
  unit: 'kW',
  symbol: '\\Sigma P_1',
  inputs: {
    total_loss: input('kW', '\\Sigma P', 'total loss'),
    unbalance: input('kW', 'P_u', 'loss by the unbalance of the voltages'),
    extra_loss: input('kW', 'P_x', 'extra loss by drive or distortion'),
  },
  expression: 'total_loss - unbalance - extra_loss',
  valid: 'Always.',
  source: 'Sum of the losses by cause',
  example: { total_loss: 2.8, unbalance: 0.05, extra_loss: 0.4 },
});

export const total_loss = formula({
  title: 'Sum of the five losses',
  unit: 'kW',
  symbol: '\\Sigma P',
  inputs: {
    stator: input('kW', 'P_1', 'stator loss'),
    rotor: input('kW', 'P_2', 'rotor loss'),
    core: input('kW', 'P_{fe}', 'core loss'),
    friction_windage: input('kW', 'P_{fw}', 'friction and windage'),
    stray: input('kW', 'P_{LL}', 'stray-load loss'),
  },
  expression: 'stator + rotor + core + friction_windage + stray',
  valid: 'Always.',
  source: 'IEEE 112-2017 clause 5; IEC 60034-2-1 clause 6',
  example: { stator: 0.5, rotor: 0.4, core: 0.5, friction_windage: 0.3, stray: 0.2 },
});

export const input_power = formula({
  title: 'Input power as shaft power and losses',
  unit: 'kW',
  symbol: 'P_1',
  inputs: { shaft_power: input('kW', 'P', 'shaft power'), total_loss: input('kW', '\\Sigma P', 'total loss') },
  expression: 'shaft_power + total_loss',
  valid: 'Motoring.',
  source: 'Energy balance',
  example: { shaft_power: 22, total_loss: 1.9 },
});

export const efficiency = formula({
  title: 'Efficiency as output over input',
  unit: '1',
  symbol: '\\eta',
  inputs: { shaft_power: input('kW', 'P', 'shaft power'), total_loss: input('kW', '\\Sigma P', 'total loss') },
  expression: 'shaft_power / (shaft_power + total_loss)',
  valid: 'Shaft power above zero.',
  source: 'Definition; IEEE 112-2017 clause 6',
  example: { shaft_power: 22, total_loss: 1.9 },
});
