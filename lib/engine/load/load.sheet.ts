import { formula, input } from '../formula/declare';

export const load_from_input_ratio = formula({
  title: 'Load as the ratio of measured to rated input',
  unit: '1',
  symbol: 'x',
  inputs: {
    input_power: input('kW', 'P_1', 'measured input power'),
    rated_input_power: input('kW', 'P_{1r}', 'rated output over rated efficiency'),
  },
  expression: 'input_power / rated_input_power',
  valid: 'A first look: takes the rated efficiency for the efficiency at the load.',
  source: 'US DOE fact sheet on motor load and efficiency, input power method (from memory; case recomputed)',
  example: { input_power: 22.9, rated_input_power: 32.1 },
});

export const load_from_slip = formula({
  title: 'Load from slip, with the voltage allowed for',
  unit: '1',
  symbol: 'x',
  inputs: {
    synchronous_speed: input('r/min', 'n_s', 'synchronous speed at the supply frequency'),
    shaft_speed: input('r/min', 'n', 'measured speed'),
    rated_synchronous_speed: input('r/min', 'n_{s,r}', 'synchronous speed at rated frequency'),
    rated_speed: input('r/min', 'n_r', 'stamped speed'),
    voltage: input('V', 'U', 'measured voltage'),
    rated_voltage: input('V', 'U_r', 'rated voltage'),
  },
  expression: '(synchronous_speed - shaft_speed) / ((rated_synchronous_speed - rated_speed) * (rated_voltage / voltage)^2)',
  valid: 'Cage motors between about 20 and 120 % load; rests wholly on the stamped slip, whose tolerance is 20 %.',
  source:
    'US DOE fact sheet on motor load and efficiency, slip method (from memory; cases recomputed); NEMA MG 1 12.46 for the tolerance',
  example: {
    synchronous_speed: 1800,
    shaft_speed: 1770,
    rated_synchronous_speed: 1800,
    rated_speed: 1750,
    voltage: 440,
    rated_voltage: 460,
  },
});

export const load_from_current_ratio = formula({
  title: 'Load as the ratio of measured to rated current',
  unit: '1',
  symbol: 'x',
  inputs: {
    current: input('A', 'I', 'measured current'),
    rated_current: input('A', 'I_r', 'rated current'),
    voltage: input('V', 'U', 'measured voltage'),
    rated_voltage: input('V', 'U_r', 'rated voltage'),
  },
  expression: 'current / rated_current * voltage / rated_voltage',
  valid: 'Above about half load; below it the magnetising current makes the load look larger than it is.',
  source: 'US DOE fact sheet on motor load and efficiency, current method (from memory; case recomputed)',
  example: { current: 37, rated_current: 50, voltage: 469.7, rated_voltage: 460 },
});

export const load_fraction = formula({
  title: 'Load fraction',
  unit: '1',
  symbol: 'x',
  inputs: { shaft_power: input('kW', 'P', 'shaft power'), rated_power: input('kW', 'P_r', 'rated shaft output') },
  expression: 'shaft_power / rated_power',
  valid: 'Without service factor.',
  source: 'Definition',
  example: { shaft_power: 22, rated_power: 37 },
});

export const voltage_ratio = formula({
  title: 'Voltage ratio',
  unit: '1',
  symbol: 'u',
  inputs: { voltage: input('V', 'U', 'terminal voltage'), rated_voltage: input('V', 'U_r', 'rated voltage') },
  expression: 'voltage / rated_voltage',
  valid: 'Always.',
  source: 'Definition',
  example: { voltage: 465, rated_voltage: 460 },
});

export const power_behind_drive = formula({
  title: 'Motor input behind a drive',
  unit: 'kW',
  symbol: 'P_1',
  inputs: {
    drive_input_power: input('kW', 'P_d', 'power measured at the input of the drive'),
    drive_efficiency: input('1', '\\eta_d', 'efficiency of the drive at this load'),
  },
  expression: 'drive_input_power * drive_efficiency',
  valid: 'Adjustable-speed drives with a passive rectifier.',
  source: 'US DOE Motor Systems Tip Sheet 11, table 1',
  example: { drive_input_power: 24, drive_efficiency: 0.96 },
});

export const shaft_power_by_losses = formula({
  title: 'Shaft power as input less segregated losses',
  unit: 'kW',
  symbol: 'P',
  inputs: {
    input_power: input('kW', 'P_{in}', 'input power'),
    stator: input('kW', 'P_1', 'stator loss'),
    core: input('kW', 'P_{fe}', 'core loss'),
    slip: input('1', 's', 'slip'),
    friction_windage: input('kW', 'P_{fw}', 'friction and windage'),
    stray: input('kW', 'P_{LL}', 'stray-load loss'),
  },
  expression: '(input_power - stator - core) * (1 - slip) - friction_windage - stray',
  valid: 'Motoring; core loss before the air gap, stray-load loss behind it.',
  source: 'IEEE 112-2017 methods E and E1; IEC 60034-2-1 clause 6',
  example: { input_power: 24, stator: 0.6, core: 0.5, slip: 0.012, friction_windage: 0.25, stray: 0.2 },
});
