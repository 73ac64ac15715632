import { formula, input } from './formula/declare';

export const load_of_step = formula({
  title: 'Load at a step of the duty',
  unit: '1',
  symbol: 'x_k',
  inputs: {
    fraction: input('1', 'f_k', 'fraction of the reference load'),
    reference: input('1', 'x', 'load fraction of the reading that the profile refers to; 1 for rated power'),
  },
  expression: 'fraction * reference',
  valid: 'Fractions of shaft load.',
  source: 'Definition of the duty profile in the fleet sheet',
  example: { fraction: 0.5, reference: 0.7 },
});
