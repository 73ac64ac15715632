import { formula, input } from '../formula/declare';

export const shaft_power_from_torque = formula({
  title: 'Shaft power from torque and speed',
  unit: 'kW',
  symbol: 'P_2',
  inputs: { torque: input('N m', 'T', 'shaft torque'), speed: input('r/min', 'n', 'shaft speed') },
  expression: '2 * pi * torque * speed / seconds_per_minute / watts_per_kilowatt',
  valid: 'Always.',
  source: 'Definition; IEEE 112-2017 clause 5.6 (from memory)',
  example: { torque: 98.9, speed: 1770 },
});

export const torque_from_power = formula({
  title: 'Torque that a power makes at a speed',
  unit: 'N m',
  symbol: 'T',
  inputs: { power: input('kW', 'P', 'mechanical power'), speed: input('r/min', 'n', 'shaft speed') },
  expression: 'power * watts_per_kilowatt * seconds_per_minute / (2 * pi * speed)',
  valid: 'Speed above zero.',
  source: 'Definition',
  example: { power: 0.4, speed: 1798 },
});

export const temperature_by_resistance = formula({
  title: 'Winding temperature from its resistance',
  unit: 'K',
  symbol: 't',
  inputs: {
    resistance: input('Ω', 'R', 'resistance between terminals, hot'),
    cold_resistance: input('Ω', 'R_c', 'resistance between terminals, cold'),
    cold_temperature: input('K', 't_c', 'temperature of the cold winding, in °C'),
    material: input('K', 'k', 'constant of the conductor, as a temperature'),
  },
  expression: 'resistance / cold_resistance * (material + cold_temperature) - material',
  valid: 'The same terminals and the same conductor.',
  source: 'IEEE 112-2017 clause 5.3, IEC 60034-1 clause 8.6.2 (both from memory)',
  example: { resistance: 0.36, cold_resistance: 0.28, cold_temperature: 24, material: 234.5 },
});

export const temperature_at_coolant = formula({
  title: 'Winding temperature moved to the reference coolant',
  unit: 'K',
  symbol: 't_s',
  inputs: {
    winding: input('K', 't_w', 'winding temperature, in °C'),
    coolant: input('K', 't_a', 'temperature of the cooling air, in °C'),
    reference: input('K', 't_{ref}', 'reference temperature of the cooling air, in °C'),
  },
  expression: 'winding - coolant + reference',
  valid: 'The rise is taken not to change with the coolant.',
  source: 'IEEE 112-2017 clause 5.2, IEC 60034-2-1 clause 5.9 (both from memory)',
  example: { winding: 92, coolant: 28, reference: 25 },
});

export const slip_at_temperature = formula({
  title: 'Slip with the rotor at another temperature',
  unit: '1',
  symbol: 's_s',
  inputs: {
    slip: input('1', 's', 'slip as measured'),
    measured_at: input('K', 't_t', 'temperature at the measurement, in °C'),
    wanted_at: input('K', 't_s', 'temperature wanted, in °C'),
    material: input('K', 'k', 'constant of the rotor conductor, as a temperature'),
  },
  expression: 'slip * (material + wanted_at) / (material + measured_at)',
  valid: 'Same torque; the rotor taken as warm as the stator winding.',
  source: 'IEEE 112-2017 clause 5.4, IEC 60034-2-1 clause 6.1.3 (both from memory)',
  example: { slip: 0.017, measured_at: 92, wanted_at: 89, material: 225 },
});

export const gap_power = formula({
  title: 'Power that crosses the air gap',
  unit: 'kW',
  symbol: 'P_g',
  inputs: {
    input_power: input('kW', 'P_1', 'input power'),
    stator: input('kW', 'P_s', 'stator loss'),
    core: input('kW', 'P_{fe}', 'core loss'),
  },
  expression: 'input_power - stator - core',
  valid: 'Core loss is counted before the air gap.',
  source: 'IEEE 112-2017 clause 5.5, IEC 60034-2-1 clause 6.1.3 (both from memory); C. I. Hubert, Electric Machines, example 4.6',
  example: { input_power: 20.2, stator: 0.55, core: 0.3 },
});

export const rotor_loss_of_gap = formula({
  title: 'Rotor loss as slip times air-gap power',
  unit: 'kW',
  symbol: 'P_r',
  inputs: { slip: input('1', 's', 'slip'), gap_power: input('kW', 'P_g', 'air-gap power') },
  expression: 'slip * gap_power',
  valid: 'Always.',
  source: 'C. I. Hubert, Electric Machines, example 4.5; IEEE 112-2017 clause 5.5 (from memory)',
  example: { slip: 0.017, gap_power: 19.35 },
});

export const developed_power = formula({
  title: 'Mechanical power developed in the rotor',
  unit: 'kW',
  symbol: 'P_m',
  inputs: { slip: input('1', 's', 'slip'), gap_power: input('kW', 'P_g', 'air-gap power') },
  expression: '(1 - slip) * gap_power',
  valid: 'Always.',
  source: 'C. I. Hubert, Electric Machines, example 4.5',
  example: { slip: 0.017, gap_power: 19.35 },
});

export const dynamometer_correction = formula({
  title: 'Torque that the dynamometer does not show',
  unit: 'N m',
  symbol: 'T_c',
  inputs: {
    coupled: input('N m', 'T_A', 'torque developed coupled at the lowest dynamometer torque'),
    uncoupled: input('N m', 'T_B', 'torque developed uncoupled: friction and windage of the motor alone'),
    shown: input('N m', 'T_d', 'torque that the dynamometer showed in the coupled run'),
  },
  expression: 'coupled - uncoupled - shown',
  valid: 'Both runs near rated voltage.',
  source: 'IEEE 112-2017 clause 5.6.1 (from memory)',
  example: { coupled: 3.1, uncoupled: 1.1, shown: 1.2 },
});

export const corrected_torque = formula({
  title: 'Shaft torque with the correction of the dynamometer',
  unit: 'N m',
  symbol: 'T',
  inputs: { shown: input('N m', 'T_d', 'torque as shown'), correction: input('N m', 'T_c', 'correction') },
  expression: 'shown + correction',
  valid: 'Always.',
  source: 'IEEE 112-2017 clause 5.6.1 (from memory)',
  example: { shown: 98.1, correction: 0.8 },
});

export const torque_squared = formula({
  title: 'Square of the shaft torque',
  unit: '(N m)²',
  symbol: 'T^2',
  inputs: { torque: input('N m', 'T', 'shaft torque') },
  expression: 'torque^2',
  valid: 'Always.',
  source: 'Abscissa of the stray-load line',
  example: { torque: 98.9 },
});

export const residual_loss = formula({
  title: 'Apparent loss that the measured parts leave unexplained',
  unit: 'W',
  symbol: 'P_{Lr}',
  inputs: {
    input_power: input('kW', 'P_1', 'input power'),
    shaft_power: input('kW', 'P_2', 'shaft power by torque and speed'),
    stator: input('kW', 'P_s', 'stator loss at the temperature of the test'),
    rotor: input('kW', 'P_r', 'rotor loss at the temperature of the test'),
    core: input('kW', 'P_{fe}', 'core loss'),
    friction_windage: input('kW', 'P_{fw}', 'friction and windage'),
  },
  expression: '(input_power - shaft_power - stator - rotor - core - friction_windage) * watts_per_kilowatt',
  valid: 'Always; it may be negative at light load by the error of the meters.',
  source: 'IEEE 112-2017 clause 5.7, IEC 60034-2-1 clause 6.1.3 (both from memory)',
  example: { input_power: 20.2, shaft_power: 18.6, stator: 0.55, rotor: 0.33, core: 0.3, friction_windage: 0.12 },
});

export const stray_of_torque = formula({
  title: 'Stray-load loss on the line through zero',
  unit: 'kW',
  symbol: 'P_{LL}',
  inputs: { slope: input('W/(N m)²', 'A', 'slope of the stray-load line'), torque: input('N m', 'T', 'shaft torque') },
  expression: 'slope * torque^2 / watts_per_kilowatt',
  valid: 'The intercept of the line is the error of the test and is left out.',
  source: 'IEEE 112-2017 clause 5.7, IEC 60034-2-1 clause 6.1.3 (both from memory)',
  example: { slope: 0.03, torque: 98.9 },
});

export const output_less_losses = formula({
  title: 'Shaft power as input less losses',
  unit: 'kW',
  symbol: 'P_2',
  inputs: { input_power: input('kW', 'P_1', 'input power'), total_loss: input('kW', '\\Sigma P', 'total loss') },
  expression: 'input_power - total_loss',
  valid: 'Always.',
  source: 'IEEE 112-2017 clause 6.4 (from memory); S. J. Chapman, Electric Machinery Fundamentals, example 6-2',
  example: { input_power: 20.2, total_loss: 1.6 },
});

export const input_at_reference = formula({
  title: 'Input power at the reference coolant',
  unit: 'kW',
  symbol: 'P_{1,\\theta}',
  inputs: {
    input_power: input('kW', 'P_1', 'input power as measured'),
    stator: input('kW', 'P_s', 'stator loss as tested'),
    stator_reference: input('kW', 'P_{s,\\theta}', 'stator loss at the reference coolant'),
    rotor: input('kW', 'P_r', 'rotor loss as tested'),
    rotor_reference: input('kW', 'P_{r,\\theta}', 'rotor loss at the reference coolant'),
  },
  expression: 'input_power - stator + stator_reference - rotor + rotor_reference',
  valid: 'Always.',
  source: 'IEC 60034-2-1:2014 clause 6.1.3 (from memory)',
  example: { input_power: 20.2, stator: 0.55, stator_reference: 0.54, rotor: 0.33, rotor_reference: 0.32 },
});

export const bench_power_factor = formula({
  title: 'Power factor',
  unit: '1',
  symbol: '\\cos\\varphi',
  inputs: {
    input_power: input('kW', 'P_1', 'input power'),
    voltage: input('V', 'U', 'mean line-to-line voltage'),
    current: input('A', 'I', 'mean line current'),
  },
  expression: 'input_power * watts_per_kilowatt / (sqrt(3) * voltage * current)',
  valid: 'Balanced sinusoidal supply.',
  source: 'Definition',
  example: { input_power: 20.2, voltage: 460, current: 30.5 },
});

export const inner_voltage = formula({
  title: 'Voltage behind the stator resistance',
  unit: 'V',
  symbol: 'U_i',
  inputs: {
    voltage: input('V', 'U', 'mean line-to-line voltage'),
    current: input('A', 'I', 'mean line current'),
    resistance: input('Ω', 'R', 'resistance between terminals'),
    power_factor: input('1', '\\cos\\varphi', 'power factor'),
  },
  expression:
    'sqrt((voltage - sqrt(3) / 2 * current * resistance * power_factor)^2 + (sqrt(3) / 2 * current * resistance)^2 * (1 - power_factor^2))',
  valid: 'Power factor between 0 and 1.',
  source: 'IEC 60034-2-1:2014 clause 6.1.3 (from memory)',
  example: { voltage: 460, current: 30.5, resistance: 0.36, power_factor: 0.83 },
});

export const windage_at_slip = formula({
  title: 'Friction and windage at the speed of the load',
  unit: 'kW',
  symbol: 'P_{fw}',
  inputs: {
    no_load: input('kW', 'P_{fw,0}', 'friction and windage at no load'),
    slip: input('1', 's', 'slip'),
    exponent: input('1', 'q', 'exponent'),
  },
  expression: 'no_load * (1 - slip)^exponent',
  valid: 'Fan and rotor on one shaft.',
  source: 'IEC 60034-2-1:2014 clause 6.1.3 (from memory): exponent 2.5',
  example: { no_load: 0.12, slip: 0.017, exponent: 2.5 },
});

export const rotor_current_ratio = formula({
  title: 'Square of the rotor current as a ratio to that at rated load',
  unit: '1',
  symbol: 'i_2^2',
  inputs: {
    current: input('A', 'I', 'line current'),
    rated_current: input('A', 'I_N', 'line current at rated load'),
    no_load_current: input('A', 'I_0', 'line current at no load and rated voltage'),
  },
  expression: '(current^2 - no_load_current^2) / (rated_current^2 - no_load_current^2)',
  valid: 'Currents above the no-load current.',
  source: 'IEEE 112-2017 clause 5.7, IEC 60034-2-1:2007 clause 8.2 (both from memory)',
  example: { current: 24, rated_current: 30.5, no_load_current: 12 },
});

export const stray_by_current = formula({
  title: 'Stray-load loss at a current',
  unit: 'kW',
  symbol: 'P_{LL}',
  inputs: {
    rated_stray: input('kW', 'P_{LL,N}', 'stray-load loss at rated load'),
    ratio: input('1', 'i_2^2', 'square of the rotor current over that at rated load'),
  },
  expression: 'rated_stray * ratio',
  valid: 'From no load up to about 150 % load.',
  source: 'IEEE 112-2017 clause 5.7 (from memory)',
  example: { rated_stray: 0.33, ratio: 0.57 },
});

export const rotor_part_of_current = formula({
  title: 'Part of the line current that answers the rotor',
  unit: 'A',
  symbol: 'I_2',
  inputs: {
    current: input('A', 'I', 'line current'),
    no_load_current: input('A', 'I_0', 'line current at no load and rated voltage'),
  },
  expression: 'sqrt(current^2 - no_load_current^2)',
  valid: 'Currents above the no-load current.',
  source: 'IEEE 112-2017 clause 5.7 (from memory)',
  example: { current: 30.5, no_load_current: 12 },
});

export const loss_of_current = formula({
  title: 'Loss that follows a power of the current',
  unit: 'W',
  symbol: 'P',
  inputs: {
    at_reference: input('W', 'P_b', 'loss at the reference current'),
    current: input('A', 'I', 'current'),
    reference: input('A', 'I_b', 'reference current'),
    exponent: input('1', 'N', 'exponent, near two'),
  },
  expression: 'at_reference * (current / reference)^exponent',
  valid: 'Within the currents of the test and somewhat beyond.',
  source: 'IEEE 112-2017 clause 5.7.2 (from memory)',
  example: { at_reference: 80, current: 28, reference: 22, exponent: 1.95 },
});

export const stray_share_of_output = formula({
  title: 'Assumed stray-load loss as a share of rated output',
  unit: 'kW',
  symbol: 'P_{LL,N}',
  inputs: {
    rated_power: input('kW', 'P_r', 'rated shaft output'),
    share: input('1', 'k', 'share for this rating'),
  },
  expression: 'share * rated_power',
  valid: 'Rated load.',
  source: 'IEEE 112 table of assumed stray-load loss (from memory)',
  example: { rated_power: 37.3, share: 0.018 },
});

export const stray_assigned_share = formula({
  title: 'Assigned stray-load loss as a share of input, between 1 and 10 000 kW',
  unit: '1',
  symbol: 'k',
  inputs: {
    rated_power: input('kW', 'P_2', 'rated shaft output'),
    base_power: input('kW', 'P_b', 'the power of one kilowatt'),
    at_base: input('1', 'k_1', 'share at one kilowatt'),
    decade: input('1', 'k_{10}', 'fall of the share with each tenfold rating'),
  },
  expression: 'at_base - decade * log10(rated_power / base_power)',
  valid: '1 kW to 10 000 kW; the ends hold beyond.',
  source: 'IEC 60034-2-1 method 2-1-1C (from memory): 0.025 at 1 kW, falling by 0.005 a decade',
  example: { rated_power: 18.5, base_power: 1, at_base: 0.025, decade: 0.005 },
});

export const stray_share_of_input = formula({
  title: 'Assigned stray-load loss at rated load',
  unit: 'kW',
  symbol: 'P_{LL,N}',
  inputs: { rated_input: input('kW', 'P_{1,N}', 'input power at rated load'), share: input('1', 'k', 'assigned share') },
  expression: 'share * rated_input',
  valid: 'Rated load.',
  source: 'IEC 60034-2-1 method 2-1-1C (from memory)',
  example: { rated_input: 20.2, share: 0.0187 },
});

export const stray_fundamental = formula({
  title: 'Stray-load loss at line frequency, rotor taken out',
  unit: 'W',
  symbol: 'P_{LL,s}',
  inputs: {
    input_power: input('kW', 'P_{rr}', 'input power with the rotor taken out'),
    stator: input('kW', 'P_s', 'stator loss at that current'),
  },
  expression: '(input_power - stator) * watts_per_kilowatt',
  valid: 'Bearing brackets and other structural parts in place.',
  source: 'IEEE 112-2017 clause 5.7.2 (from memory)',
  example: { input_power: 0.62, stator: 0.55 },
});

export const stray_harmonic = formula({
  title: 'Stray-load loss at high frequency, rotor driven backwards',
  unit: 'W',
  symbol: 'P_{LL,r}',
  inputs: {
    shaft_power: input('kW', 'P_{rot}', 'mechanical power that drives the rotor, current on'),
    shaft_power_dead: input('kW', 'P_{rot,0}', 'the same with no current in the stator'),
    input_power: input('kW', 'P_1', 'electrical input power'),
    stator: input('kW', 'P_s', 'stator loss at that current'),
    fundamental: input('W', 'P_{LL,s}', 'stray-load loss at line frequency and this current'),
  },
  expression: '(shaft_power - shaft_power_dead - input_power + stator) * watts_per_kilowatt + fundamental',
  valid: 'Synchronous speed against the field, currents as in the run without rotor.',
  source: 'IEEE 112-2017 clause 5.7.2 (from memory)',
  example: { shaft_power: 1.1, shaft_power_dead: 0.12, input_power: 1.45, stator: 0.55, fundamental: 70 },
});

export const stray_sum = formula({
  title: 'Stray-load loss as the sum of its two parts',
  unit: 'kW',
  symbol: 'P_{LL}',
  inputs: {
    fundamental: input('W', 'P_{LL,s}', 'part at line frequency'),
    harmonic: input('W', 'P_{LL,r}', 'part at high frequency'),
  },
  expression: '(fundamental + harmonic) / watts_per_kilowatt',
  valid: 'Both at the same current.',
  source: 'IEEE 112-2017 clause 5.7.2 (from memory)',
  example: { fundamental: 70, harmonic: 150 },
});
