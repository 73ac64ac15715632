import type { Quantity } from '../quantity/quantity';
import type { Figure } from '../result';
import { figure } from '../result-figure';

/** A quantity of a test as a figure. */
export const plain = (quantity: Quantity): Figure => figure(quantity, '');

/** Temperatures on a scale travel as kelvin inside the formulas. */
export const celsius = (quantity: Quantity): Figure => ({ ...plain(quantity), unit: '°C' });
