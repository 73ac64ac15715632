import { formula, input } from '../formula/declare';

export const synchronous_speed = formula({
  title: 'Synchronous speed',
  unit: 'r/min',
  symbol: 'n_s',
  inputs: { frequency: input('Hz', 'f', 'supply frequency'), poles: input('pole', '2p', 'number of poles') },
  expression: '2 * seconds_per_minute * frequency / poles',
  valid: 'Any polyphase machine; poles even.',
  source: 'IEEE 112-2017 clause 5; definition',
  example: { frequency: 60, poles: 4 },
});

export const slip_fraction = formula({
  title: 'Slip',
  unit: '1',
  symbol: 's',
  inputs: { synchronous_speed: input('r/min', 'n_s', 'synchronous speed'), shaft_speed: input('r/min', 'n', 'shaft speed') },
  expression: '(synchronous_speed - shaft_speed) / synchronous_speed',
  valid: 'Motoring: 0 to 1.',
  source: 'IEEE 112-2017 clause 5; definition',
  example: { synchronous_speed: 1800, shaft_speed: 1750 },
});

export const rated_input_power = formula({
  title: 'Rated input power',
  unit: 'kW',
  symbol: 'P_{1r}',
  inputs: {
    rated_power: input('kW', 'P_r', 'rated shaft output'),
    efficiency: input('1', '\\eta_r', 'efficiency at rated load'),
  },
  expression: 'rated_power / efficiency',
  valid: 'Efficiency above 0 and at most 1.',
  source: 'Definition of efficiency; US DOE fact sheet on motor load and efficiency',
  example: { rated_power: 37, efficiency: 0.93 },
});

export const rated_total_loss = formula({
  title: 'Total loss at rated load',
  unit: 'kW',
  symbol: '\\Sigma P_r',
  inputs: {
    rated_power: input('kW', 'P_r', 'rated shaft output'),
    efficiency: input('1', '\\eta_r', 'efficiency at rated load'),
  },
  expression: 'rated_power * (1 / efficiency - 1)',
  valid: 'Efficiency above 0 and at most 1.',
  source: 'Definition of efficiency; C. I. Hubert, Electric Machines, example 4.6',
  example: { rated_power: 37, efficiency: 0.93 },
});

export const apparent_power = formula({
  title: 'Apparent power of a three-phase line',
  unit: 'kVA',
  symbol: 'S',
  inputs: { voltage: input('V', 'U', 'mean line-to-line voltage'), current: input('A', 'I', 'mean line current') },
  expression: 'sqrt(3) * voltage * current / watts_per_kilowatt',
  valid: 'Mean values; unbalance of a few per cent changes the product by less than its square.',
  source: 'Definition',
  example: { voltage: 460, current: 60 },
});

export const power_from_current = formula({
  title: 'Three-phase input power from volts, amperes and power factor',
  unit: 'kW',
  symbol: 'P_1',
  inputs: {
    voltage: input('V', 'U', 'mean line-to-line voltage'),
    current: input('A', 'I', 'mean line current'),
    power_factor: input('1', '\\lambda', 'power factor'),
  },
  expression: 'sqrt(3) * voltage * current * power_factor / watts_per_kilowatt',
  valid: 'Sinusoidal supply, mean values of the three phases.',
  source: 'US DOE fact sheet on motor load and efficiency, input power (from memory; cases recomputed)',
  example: { voltage: 469.7, current: 37, power_factor: 0.763 },
});

export const rated_current_from_power = formula({
  title: 'Rated current from rating, efficiency and power factor',
  unit: 'A',
  symbol: 'I_r',
  inputs: {
    rated_power: input('kW', 'P_r', 'rated shaft output'),
    efficiency: input('1', '\\eta_r', 'efficiency at rated load'),
    power_factor: input('1', '\\lambda_r', 'power factor at rated load'),
    voltage: input('V', 'U_r', 'rated line-to-line voltage'),
  },
  expression: 'watts_per_kilowatt * rated_power / (sqrt(3) * voltage * efficiency * power_factor)',
  valid: 'Rated load, rated voltage.',
  source: 'Definition',
  example: { rated_power: 37, efficiency: 0.93, power_factor: 0.85, voltage: 460 },
});

export const rated_power_factor_from_current = formula({
  title: 'Rated power factor from rating, efficiency and current',
  unit: '1',
  symbol: '\\lambda_r',
  inputs: {
    rated_power: input('kW', 'P_r', 'rated shaft output'),
    efficiency: input('1', '\\eta_r', 'efficiency at rated load'),
    current: input('A', 'I_r', 'rated current'),
    voltage: input('V', 'U_r', 'rated line-to-line voltage'),
  },
  expression: 'watts_per_kilowatt * rated_power / (sqrt(3) * voltage * efficiency * current)',
  valid: 'Rated load, rated voltage.',
  source: 'Definition; C. I. Hubert, Electric Machines, example 4.6',
  example: { rated_power: 37, efficiency: 0.93, current: 60, voltage: 460 },
});

export const magnetising_share = formula({
  title: 'Share of the magnetising current in the rated current',
  unit: '1',
  symbol: 'i_0',
  inputs: {
    power_factor: input('1', '\\lambda_r', 'power factor at rated load'),
    leakage: input('1', 'x_\\sigma', 'total leakage reactance, per unit of rated impedance'),
  },
  expression: 'sqrt(1 - power_factor^2) - leakage',
  valid: 'Cage motors with a power factor below about 0.97; the rated reactive power less that of the leakage, at rated voltage.',
  source: 'Reactive balance of the equivalent circuit at rated load, first order; own derivation',
  example: { power_factor: 0.85, leakage: 0.17 },
});

export const no_load_share = formula({
  title: 'No-load current as a share of rated current',
  unit: '1',
  symbol: 'i_0',
  inputs: {
    no_load_current: input('A', 'I_0', 'current of the uncoupled test'),
    rated_current: input('A', 'I_r', 'rated current'),
    no_load_voltage: input('V', 'U_0', 'voltage of the uncoupled test'),
    rated_voltage: input('V', 'U_r', 'rated voltage'),
  },
  expression: 'no_load_current / rated_current * rated_voltage / no_load_voltage',
  valid: 'Test voltage within about 10 % of rated: the magnetising current is taken as proportional to the voltage.',
  source: 'Definition; C. I. Hubert, Electric Machines, example 5.16 (no-load current per cent)',
  example: { no_load_current: 32.7, rated_current: 57.8, no_load_voltage: 460, rated_voltage: 460 },
});

export const slip_from_rotor_share = formula({
  title: 'Rated slip from the typical share of rotor loss',
  unit: '1',
  symbol: 's_r',
  inputs: {
    rotor_share: input('1', 'k_2', 'rotor loss as a share of total loss'),
    total_loss: input('kW', '\\Sigma P_r', 'total loss at rated load'),
    rated_power: input('kW', 'P_r', 'rated shaft output'),
  },
  expression: 'rotor_share * total_loss / (rated_power + rotor_share * total_loss)',
  valid: 'Where no speed is stamped; rotor loss is slip times air-gap power.',
  source: 'IEEE 112-2017 clause 5.8 (rotor loss from slip), turned round; share from the table of loss shares',
  example: { rotor_share: 0.2, total_loss: 2.8, rated_power: 37 },
});

export const speed_from_slip = formula({
  title: 'Shaft speed from slip',
  unit: 'r/min',
  symbol: 'n',
  inputs: { synchronous_speed: input('r/min', 'n_s', 'synchronous speed'), slip: input('1', 's', 'slip') },
  expression: 'synchronous_speed * (1 - slip)',
  valid: 'Any slip.',
  source: 'Definition; C. I. Hubert, Electric Machines, examples 4.5 and 4.6',
  example: { synchronous_speed: 1800, slip: 0.02 },
});

export const efficiency_after_change = formula({
  title: 'Efficiency after a repair',
  unit: '1',
  symbol: '\\eta',
  inputs: {
    efficiency: input('1', '\\eta_r', 'efficiency before'),
    change: input('1', '\\Delta\\eta', 'change of efficiency, negative for a loss'),
  },
  expression: 'efficiency + change',
  valid: 'Change of a few points at most.',
  source: 'EASA/AEMT studies of 2003 and 2019-2020: see the table of rewind changes',
  example: { efficiency: 0.93, change: -0.005 },
});

export const efficiency_by_present_method = formula({
  title: 'Efficiency of a stamp by the old IEC method, as it is measured today',
  unit: '1',
  symbol: '\\eta',
  inputs: {
    stamped: input('1', '\\eta_r', 'stamped efficiency'),
    excess: input('1', '\\Delta p', 'stray-load loss beyond the fixed allowance, as a fraction of input'),
  },
  expression: 'stamped - excess',
  valid: 'Cage motors whose plate goes by IEC 60034-2 before its edition of 2007.',
  source: 'IEC 60034-2 (0.5 % of input); survey of 817 tests, 0.75 to 375 kW: 1.0 points more at 50 Hz, 0.8 at 60 Hz',
  example: { stamped: 0.92, excess: 0.01 },
});
