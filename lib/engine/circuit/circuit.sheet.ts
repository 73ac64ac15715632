import { formula, input } from '../formula/declare';
import { BACKWARD } from './backward-field';

export const negative_sequence_rotor = formula({
  title: 'Rotor branch that the negative sequence meets',
  unit: '1',
  symbol: BACKWARD.rotor[0],
  inputs: {
    negative_rotor: input('1', 'k_{r2}', 'rotor resistance at twice line frequency over that at slip frequency'),
    r2_hot: input('1', "R_2'", 'rotor resistance at its temperature'),
    s: input('1', 's', 'slip'),
  },
  expression: BACKWARD.rotor[1],
  valid: 'Slip from 0 up to breakdown.',
  source:
    'A field turning backwards sees the rotor at slip 2 − s: Fitzgerald, Kingsley and Umans, Electric Machinery (from memory)',
  example: { negative_rotor: 1.8, r2_hot: 0.02, s: 0.02 },
});

export const negative_sequence_squared = formula({
  title: 'Square of the impedance that the negative sequence meets',
  unit: '1',
  symbol: BACKWARD.impedanceSquared[0],
  inputs: {
    r1_hot: input('1', "R_1'", 'stator resistance at its temperature'),
    backward: input('1', "R_2''", 'rotor branch for the negative sequence'),
    x1_f: input('1', "X_1'", 'stator leakage reactance at the frequency in force'),
    x2_f: input('1', "X_2'", 'rotor leakage reactance at the frequency in force'),
  },
  expression: BACKWARD.impedanceSquared[1],
  valid: 'The magnetising branch hardly counts at that slip.',
  source: 'Fitzgerald, Kingsley and Umans, Electric Machinery (from memory)',
  example: { r1_hot: 0.02, backward: 0.018, x1_f: 0.1, x2_f: 0.12 },
});
