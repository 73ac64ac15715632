import { formula, input } from '../../formula/declare';

const BEARING = 'Rolling without slip; real bearings slip by about 1 to 2 % (common practice).';
const bearing = {
  elements: input('1', 'N_b', 'rolling elements'),
  ball: input('mm', 'd', 'diameter of a rolling element'),
  pitch: input('mm', 'D', 'pitch diameter'),
  cosine: input('1', '\\cos\\alpha', 'cosine of the contact angle'),
};
const bearingExample = { elements: 9, ball: 7.94, pitch: 39.04, cosine: 1 };

export const supply_frequency = formula({
  title: 'Supply frequency of the synchronous speed',
  unit: 'Hz',
  symbol: 'f_1',
  inputs: { synchronous_speed: input('r/min', 'n_s', 'synchronous speed'), poles: input('pole', '2p', 'number of poles') },
  expression: 'synchronous_speed * poles / (2 * seconds_per_minute)',
  valid: 'Always.',
  source: 'Definition of synchronous speed',
  example: { synchronous_speed: 1800, poles: 4 },
});

export const shaft_frequency = formula({
  title: 'Shaft frequency',
  unit: 'Hz',
  symbol: 'f_r',
  inputs: { speed: input('r/min', 'n', 'shaft speed') },
  expression: 'speed / seconds_per_minute',
  valid: 'Always.',
  source: 'Definition',
  example: { speed: 1755 },
});

export const spectral_line = formula({
  title: 'Line of a spectrum',
  unit: 'Hz',
  symbol: 'f',
  inputs: {
    supply_multiple: input('1', 'a', 'multiple of the supply frequency'),
    supply: input('Hz', 'f_1', 'supply frequency'),
    shaft_multiple: input('1', 'b', 'multiple of the shaft frequency'),
    shaft: input('Hz', 'f_r', 'shaft frequency'),
  },
  expression: 'supply_multiple * supply + shaft_multiple * shaft',
  valid: 'Steady speed and supply while the record is taken.',
  source: 'Every line of motor and drive train is such a sum; the multiples have a source each',
  example: { supply_multiple: -1, supply: 60, shaft_multiple: 4, shaft: 29.25 },
});

export const pole_pass = formula({
  title: 'Pole-pass frequency',
  unit: 'Hz',
  symbol: 'f_p',
  inputs: {
    supply: input('Hz', 'f_1', 'supply frequency'),
    shaft: input('Hz', 'f_r', 'shaft frequency'),
    poles: input('1', '2p', 'number of poles'),
  },
  expression: '2 * supply - poles * shaft',
  valid: 'Cage and wound-rotor induction machines: twice slip times supply frequency.',
  source: 'Pole-pass frequency = 2 s f₁ = poles × slip speed (read in a trade text on electrical frequencies)',
  example: { supply: 60, shaft: 29.25, poles: 4 },
});

export const belt_multiple = formula({
  title: 'Belt passes for each turn of the shaft',
  unit: '1',
  symbol: 'b_b',
  inputs: {
    sheave: input('mm', 'D', 'pitch diameter of the motor’s sheave'),
    length: input('mm', 'L', 'pitch length of the belt'),
  },
  expression: 'pi * sheave / length',
  valid: 'Belt without slip on the motor’s sheave.',
  source: 'Kinematics: belt speed π D n over belt length',
  example: { sheave: 101.6, length: 1371.6 },
});

export const speed_share = formula({
  title: 'Turns of the driven shaft for each turn of the driving one',
  unit: '1',
  symbol: 'i^{-1}',
  inputs: {
    driver: input('1', 'd_1', 'size of the driver: sheave diameter or teeth'),
    driven: input('1', 'd_2', 'size of the driven one'),
  },
  expression: 'driver / driven',
  valid: 'Without slip.',
  source: 'Kinematics',
  example: { driver: 23, driven: 67 },
});

export const bearing_outer = formula({
  title: 'Passes over the outer race for each turn',
  unit: '1',
  symbol: 'b_o',
  inputs: bearing,
  expression: 'elements / 2 * (1 - ball / pitch * cosine)',
  valid: BEARING,
  source: 'Kinematics of rolling bearings; checked against the published multipliers of a 6205 bearing',
  example: bearingExample,
});

export const bearing_inner = formula({
  title: 'Passes over the inner race for each turn',
  unit: '1',
  symbol: 'b_i',
  inputs: bearing,
  expression: 'elements / 2 * (1 + ball / pitch * cosine)',
  valid: BEARING,
  source: 'Kinematics of rolling bearings; checked against the published multipliers of a 6205 bearing',
  example: bearingExample,
});

export const bearing_cage = formula({
  title: 'Turns of the bearing’s cage for each turn',
  unit: '1',
  symbol: 'b_c',
  inputs: { ball: bearing.ball, pitch: bearing.pitch, cosine: bearing.cosine },
  expression: '(1 - ball / pitch * cosine) / 2',
  valid: BEARING,
  source: 'Kinematics of rolling bearings; checked against the published multipliers of a 6205 bearing',
  example: { ball: 7.94, pitch: 39.04, cosine: 1 },
});

export const bearing_element = formula({
  title: 'Hits of a damaged rolling element for each turn',
  unit: '1',
  symbol: 'b_e',
  inputs: { ball: bearing.ball, pitch: bearing.pitch, cosine: bearing.cosine },
  expression: 'pitch / ball * (1 - (ball / pitch * cosine)^2)',
  valid: `The element hits both races in one spin, so this is twice the spin frequency. ${BEARING}`,
  source: 'Kinematics of rolling bearings; checked against the published multipliers of a 6205 bearing',
  example: { ball: 7.94, pitch: 39.04, cosine: 1 },
});

export const resolution_needed = formula({
  title: 'Spectral resolution that parts two lines',
  unit: 'Hz',
  symbol: '\\Delta f',
  inputs: {
    apart: input('Hz', '\\delta', 'distance of the lines'),
    steps: input('1', 'k', 'steps of the spectrum between them'),
  },
  expression: 'apart / steps',
  valid: 'Steady speed; the number of steps is common practice.',
  source: 'A spectrum’s step is one over the length of its record',
  example: { apart: 1.2, steps: 5 },
});

export const record_length = formula({
  title: 'Length of record for a resolution',
  unit: 's',
  symbol: 'T',
  inputs: { resolution: input('Hz', '\\Delta f', 'distance of neighbouring steps of the spectrum') },
  expression: '1 / resolution',
  valid: 'Without averaging of shorter pieces.',
  source: 'A spectrum’s step is one over the length of its record',
  example: { resolution: 0.24 },
});

export const load_from_speed = formula({
  title: 'Load at a speed, by slip',
  unit: '1',
  symbol: 'x',
  inputs: {
    synchronous_speed: input('r/min', 'n_s', 'synchronous speed'),
    speed: input('r/min', 'n', 'shaft speed'),
    rated_slip: input('1', 's_r', 'rated slip'),
  },
  expression: '(1 - speed / synchronous_speed) / rated_slip',
  valid: 'To find the load at which to read again; about ± 20 %, as the stamped slip.',
  source: 'Slip in proportion to load',
  example: { synchronous_speed: 1800, speed: 1780, rated_slip: 0.02 },
});
