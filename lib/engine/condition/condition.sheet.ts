import { formula, input } from '../formula/declare';

export const deviation_from_mean = formula({
  title: 'Unbalance as the largest deviation from the mean',
  unit: '%',
  symbol: 'U',
  inputs: {
    farthest: input('1', 'v_1', 'the value farthest from the mean'),
    second: input('1', 'v_2', 'one of the other two'),
    third: input('1', 'v_3', 'the other'),
    sign: input('1', '\\sigma', '1 when the farthest value lies above the mean, −1 below'),
  },
  expression: 'percent * sign * (3 * farthest / (farthest + second + third) - 1)',
  valid: 'Three line-to-line voltages, line currents or terminal resistances of one moment.',
  source: 'NEMA MG 1 14.36 (definition); US DOE Motor Systems Tip Sheet 7',
  example: { farthest: 450, second: 460, third: 467, sign: -1 },
});

export const unbalance_rise_factor = formula({
  title: 'Temperature rise under voltage unbalance',
  unit: '1',
  symbol: 'k_t',
  inputs: { unbalance: input('%', 'U', 'voltage unbalance'), unit_percent: input('%', '1\\,\\%', 'one per cent') },
  expression: '1 + 2 * unbalance^2 / (percent * unit_percent)',
  valid: 'Up to about 5 %: per cent unbalance squared and doubled is the rise in per cent.',
  source: 'US DOE Motor Systems Tip Sheet 7',
  example: { unbalance: 2, unit_percent: 1 },
});

export const insulation_life_share = formula({
  title: 'Insulation life left by a higher temperature',
  unit: '1',
  symbol: 'L / L_0',
  inputs: {
    excess: input('K', '\\Delta T', 'winding temperature above the one that the life belongs to'),
    halving: input('K', '\\Delta', '10 K: life halves for each'),
  },
  expression: 'exp(-log(2) * excess / halving)',
  valid: 'To compare, not to forecast; a mean over materials, cautious above about 155 °C.',
  source: 'US DOE Motor Systems Tip Sheets 3 and 7 (2012)',
  example: { excess: 14.6, halving: 10 },
});

export const relative_deviation = formula({
  title: 'Deviation from the rated value',
  unit: '%',
  symbol: '\\Delta',
  inputs: { value: input('V', 'U', 'measured value'), rated: input('V', 'U_r', 'rated value') },
  expression: 'percent * (value / rated - 1)',
  valid: 'Always.',
  source: 'Definition',
  example: { value: 445, rated: 460 },
});

export const relative_frequency = formula({
  title: 'Deviation from the rated frequency',
  unit: '%',
  symbol: '\\Delta_f',
  inputs: { value: input('Hz', 'f', 'measured value'), rated: input('Hz', 'f_r', 'rated value') },
  expression: 'percent * (value / rated - 1)',
  valid: 'Always.',
  source: 'Definition',
  example: { value: 59.5, rated: 60 },
});

export const unbalance_multiple = formula({
  title: 'Current unbalance for each per cent of negative-sequence voltage',
  unit: '1',
  symbol: 'm',
  inputs: {
    shape: input('1', 'k', 'deviation from the mean over negative sequence: 0.87 to 1 by its angle'),
    voltage_ratio: input('1', 'U_1/U_r', 'positive-sequence over rated voltage'),
    base_current: input('A', 'I_b', 'base current: rated shaft power over three times the rated phase voltage'),
    impedance: input('1', 'z_2', 'impedance that the negative sequence meets, per unit'),
    current: input('A', 'I_1', 'positive-sequence line current'),
  },
  expression: 'shape * voltage_ratio * base_current / (impedance * current)',
  valid: 'Any load: the negative-sequence current does not change with it, the current that it is compared with does.',
  source: 'Symmetrical components: I₂/I₁ = (U₂/U₁) · (U₁/I₁)/z₂; Wadhwa, Electrical Power Systems, chapter 13 (components)',
  example: { shape: 0.955, voltage_ratio: 1, base_current: 46.8, impedance: 0.25, current: 40.6 },
});

export const excess_current_unbalance = formula({
  title: 'Current unbalance beyond what the voltage explains',
  unit: '%',
  symbol: 'U_{I,x}',
  inputs: {
    current_unbalance: input('%', 'U_I', 'current unbalance'),
    voltage_unbalance: input(
      '%',
      'U_2',
      'voltage unbalance: negative over positive sequence, or largest deviation from the mean',
    ),
    multiple: input('1', 'm', 'current unbalance for each per cent of voltage unbalance'),
  },
  expression: 'current_unbalance - multiple * voltage_unbalance',
  valid: 'With the multiple of the load at hand: it grows as the load falls.',
  source: 'Symmetrical components; US DOE Motor Systems Tip Sheet 7 for the size of the multiple: 6 to 10 times',
  example: { current_unbalance: 12, voltage_unbalance: 1, multiple: 8 },
});

export const insulation_factor_thermoplastic = formula({
  title: 'Factor to 40 °C, thermoplastic insulation',
  unit: '1',
  symbol: 'K_T',
  inputs: {
    temperature: input('K', 'T', 'winding temperature, in °C'),
    reference: input('K', 'T_r', '40 °C'),
    halving: input('K', '\\Delta', '10 K: resistance halves for each'),
  },
  expression: 'exp(-log(2) * (reference - temperature) / halving)',
  valid: 'Above the dew point; asphaltic and shellac windings, mostly before the 1960s.',
  source: 'IEEE 43-2013 clause 6.3 (from memory); halving read in a secondary text',
  example: { temperature: 25, reference: 40, halving: 10 },
});

export const insulation_factor_thermosetting = formula({
  title: 'Factor to 40 °C, thermosetting insulation',
  unit: '1',
  symbol: 'K_T',
  inputs: {
    temperature: input('K', 'T', 'winding temperature, in °C'),
    reference: input('K', 'T_r', '40 °C'),
    zero: input('K', 'T_0', '273 K, the zero of the scale as the standard rounds it'),
    coefficient: input('K', 'c', '4230 above 40 °C, 1245 below'),
  },
  expression: 'exp(-coefficient * (1 / (temperature + zero) - 1 / (reference + zero)))',
  valid: '10 to 85 °C, above the dew point.',
  source: 'IEEE 43-2013 clause 6.3 (from memory)',
  example: { temperature: 25, reference: 40, zero: 273, coefficient: 1245 },
});

export const insulation_at_reference = formula({
  title: 'Insulation resistance at 40 °C',
  unit: 'MΩ',
  symbol: 'R_{40}',
  inputs: { resistance: input('MΩ', 'R_T', 'one-minute resistance as measured'), factor: input('1', 'K_T', 'factor to 40 °C') },
  expression: 'resistance * factor',
  valid: 'As the factor.',
  source: 'IEEE 43-2013 clause 6.3',
  example: { resistance: 800, factor: 0.82 },
});

export const old_insulation_minimum = formula({
  title: 'Least insulation resistance of old windings',
  unit: 'MΩ',
  symbol: 'R_{min}',
  inputs: {
    voltage: input('V', 'U_r', 'rated line-to-line voltage'),
    per_kilovolt: input('MΩ', 'a', '1 MΩ for each kilovolt'),
    unit_voltage: input('V', 'U_1', '1000 V'),
    offset: input('MΩ', 'b', '1 MΩ'),
  },
  expression: 'per_kilovolt * voltage / unit_voltage + offset',
  valid: 'Most windings made before about 1970.',
  source: 'IEEE 43-2013 clause 12.3: kV + 1 MΩ (read in a secondary text)',
  example: { voltage: 460, per_kilovolt: 1, unit_voltage: 1000, offset: 1 },
});

export const sideband_correction = formula({
  title: 'Correction of a sideband level to full load',
  unit: 'dB',
  symbol: '\\Delta N',
  inputs: {
    decade: input('dB', '20', '20 dB for a decade of amplitude'),
    load_fraction: input('1', 'x', 'load fraction at the reading'),
    magnetising_share: input('1', 'i_0', 'magnetising share'),
  },
  expression: 'decade * log10(sqrt(magnetising_share^2 + load_fraction^2 * (1 - magnetising_share^2)) / load_fraction)',
  valid: 'Load of 40 % and more; inertia, interbar currents and saturation left out.',
  source: 'Line current as phasor sum, sidebands in proportion to the load current; own derivation',
  example: { decade: 20, load_fraction: 0.6, magnetising_share: 0.35 },
});

export const sideband_at_full_load = formula({
  title: 'Sideband level at full load',
  unit: 'dB',
  symbol: 'N',
  inputs: {
    level: input('dB', 'N_x', 'mean of upper and lower sideband, dB below the line component'),
    correction: input('dB', '\\Delta N', 'correction to full load'),
  },
  expression: 'level - correction',
  valid: 'As the correction.',
  source: 'Own derivation, see the correction',
  example: { level: 47, correction: 1.7 },
});

export const broken_bars = formula({
  title: 'Estimated broken bars',
  unit: '1',
  symbol: 'n',
  inputs: {
    bars: input('1', 'R', 'rotor bars'),
    level: input('dB', 'N', 'sideband level at full load, dB below the line component'),
    decade: input('dB', '20', '20 dB for a decade of amplitude'),
    pole_pairs: input('1', 'p', 'pole pairs'),
  },
  expression: '2 * bars / (exp(log(10) * level / decade) + pole_pairs)',
  valid: 'At or near full load, counted bars, steady load.',
  source: 'Thomson and Rankin 1987; Thomson and Fenger 2001 (from memory)',
  example: { bars: 44, level: 40, decade: 20, pole_pairs: 2 },
});

export const overload = formula({
  title: 'Load against the service factor',
  unit: '1',
  symbol: 'x / k_{SF}',
  inputs: { load_fraction: input('1', 'x', 'load fraction'), service_factor: input('1', 'k_{SF}', 'service factor') },
  expression: 'load_fraction / service_factor',
  valid: 'Steady load.',
  source: 'NEMA MG 1 1.42 (service factor)',
  example: { load_fraction: 1.05, service_factor: 1.15 },
});

export const harmonic_factor_bound = formula({
  title: 'Largest harmonic voltage factor that a distortion allows',
  unit: '1',
  symbol: 'HVF_{max}',
  inputs: {
    distortion: input('%', 'THD', 'total harmonic distortion of the voltage'),
    lowest: input('1', 'h', 'lowest harmonic order: 5'),
  },
  expression: 'distortion / percent / sqrt(lowest)',
  valid:
    'No harmonics of even order or divisible by three: HVF = √Σ(V_n²/n) is largest when all distortion is of the lowest order.',
  source: 'NEMA MG 1 30.1.2 (definition, from memory); bound by own derivation',
  example: { distortion: 5, lowest: 5 },
});

export const belt_slip = formula({
  title: 'Slip of the belt',
  unit: '%',
  symbol: 's_b',
  inputs: {
    driven_speed: input('r/min', 'n_2', 'measured speed of the driven shaft'),
    ratio: input('1', 'i', 'motor speed over driven speed without slip'),
    speed: input('r/min', 'n', 'speed of the motor'),
  },
  expression: 'percent * (1 - driven_speed * ratio / speed)',
  valid: 'Both speeds read at the same load.',
  source: 'Kinematics',
  example: { driven_speed: 1160, ratio: 1.5, speed: 1770 },
});

export const vibration_share = formula({
  title: 'Share of one part in the whole vibration',
  unit: '%',
  symbol: 'v_k / v',
  inputs: { part: input('mm/s', 'v_k', 'RMS velocity of the part'), whole: input('mm/s', 'v', 'RMS velocity of the whole') },
  expression: 'percent * part / whole',
  valid: 'Both RMS, of the same bearing and reading.',
  source: 'Definition',
  example: { part: 1.4, whole: 2.5 },
});

export const winding_temperature_by_losses = formula({
  title: 'Winding temperature estimated from the losses',
  unit: '°C',
  symbol: 'T_w',
  inputs: {
    ambient: input('°C', 'T_a', 'temperature of the cooling air'),
    rated_rise: input('K', '\\Delta T_r', 'rise at rated load'),
    losses: input('kW', 'P_v', 'losses at this load'),
    rated_losses: input('kW', 'P_{v,r}', 'losses at rated load'),
  },
  expression: 'ambient + rated_rise * losses / rated_losses',
  valid: 'Steady load, clean cooling, the motor’s own fan at full speed.',
  source: 'Rise in proportion to losses (common practice, about ± 10 K)',
  example: { ambient: 25, rated_rise: 80, losses: 3, rated_losses: 4 },
});

export const permitted_starts = formula({
  title: 'Starts an hour that the load’s inertia permits',
  unit: '1/h',
  symbol: 'z',
  inputs: {
    product: input('1/h', 'B / Wk^2_1', 'permitted starts an hour times inertia, over 1 lb ft²'),
    inertia: input('1', 'Wk^2', 'inertia of the load in lb ft²'),
  },
  expression: 'product / inertia',
  valid: 'Design A and B motors, torque of the load rising with the square of speed, rated voltage.',
  source: 'NEMA MG 10 table 2-3 (read in a handbook)',
  example: { product: 122, inertia: 50 },
});
