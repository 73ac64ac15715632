import { circuitMethod } from './circuit';
import { currentMethod } from './current';
import { inputPowerMethod } from './input-power';
import { lossSegregationMethod } from './loss-segregation';
import type { LoadMethod } from './method';
import { slipMethod } from './slip';

/** The ways to the load, in order of preference. A new one is one line here. */
export const LOAD_METHODS: readonly LoadMethod[] = [
  inputPowerMethod,
  slipMethod,
  currentMethod,
  circuitMethod,
  lossSegregationMethod,
];
