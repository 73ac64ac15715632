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

export const drive_waveform_loss = formula({
  title: 'Extra loss by the waveform of a drive',
  unit: 'kW',
  symbol: 'P_{d}',
  inputs: {
    share: input('1', 'r_{HL}', 'extra loss over rated loss on a sine'),
    rated_loss: input('kW', '\\Sigma P_r', 'total loss at rated load on a sine'),
  },
  expression: 'share * rated_loss',
  valid: 'Cage motors behind a voltage-source drive; taken as the same at every load.',
  source: 'IEC 61800-9-2 and IEC TS 60034-25 (from memory)',
  example: { share: 0.15, rated_loss: 2.8 },
});

export const harmonic_loss = formula({
  title: 'Extra loss by harmonic distortion of the voltage',
  unit: 'kW',
  symbol: 'P_h',
  inputs: {
    distortion: input('1', 'd', 'total harmonic distortion of the voltage'),
    order: input('1', '\\nu', 'harmonic order to which it is put'),
    leakage: input('1', 'X', 'leakage reactance at rated frequency, per unit'),
    stator_resistance: input('1', 'R_1', 'stator resistance, per unit'),
    rotor_resistance: input('1', 'R_{2\\nu}', 'rotor resistance at the harmonic, per unit'),
    spread: input('1', 'k', 'loss of the true spectrum over that of one harmonic'),
    rated_power: input('kW', 'P_r', 'rated shaft output'),
  },
  expression: 'spread * (distortion / (order * leakage))^2 * (stator_resistance + rotor_resistance) * rated_power',
  valid: 'Distortion of a few per cent; losses in winding and cage alone.',
  source: 'Harmonic current by the leakage alone: textbooks (from memory); own derivation',
  example: {
    distortion: 0.05,
    order: 5,
    leakage: 0.17,
    stator_resistance: 0.02,
    rotor_resistance: 0.05,
    spread: 1,
    rated_power: 37,
  },
});

export const input_without_extra_loss = formula({
  title: 'Input power less what the waveform of the supply adds to the losses',
  unit: 'kW',
  symbol: "P_1'",
  inputs: {
    input_power: input('kW', 'P_1', 'input power of the motor'),
    extra_loss: input('kW', 'P_x', 'extra loss by drive or distortion'),
  },
  expression: 'input_power - extra_loss',
  valid: 'Extra loss well below the input.',
  source: 'Energy balance',
  example: { input_power: 24, extra_loss: 0.4 },
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
