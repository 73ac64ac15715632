/** Constant of copper in the temperature rule of resistance, as a temperature in °C (IEEE 112-2017 clause 5.2, from memory). */
export const COPPER = 234.5;
