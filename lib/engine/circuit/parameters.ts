/**
 * What a machine is described by, so that any set of values gives a possible machine and the doubts of each are nearly independent.
 * All are per unit of rated shaft power and rated voltage. A machine is a vector of these numbers in this order.
 */
export const PARAMETERS = [
  /** Logarithm of the loss beside the rotor's at rated load: stator, core, friction and windage, stray-load. */
  'other-loss',
  /** Logarithm of the rated slip, in the rotor's own heat at rated load. */
  'slip',
  /** Logarithm of the magnetising current at the rated air-gap voltage. */
  'magnetising',
  /** Logarithm of the running leakage reactance, stator and rotor together. */
  'leakage',
  /** Logarithms of core, friction and windage, and stray-load loss over stator loss, at rated load. */
  'core',
  'friction',
  'stray',
  /** Logarithm of the winding's rise at rated load over 1 K. */
  'rise',
  /** Exponent by which the magnetising current grows with the air-gap voltage; 1 without saturation. */
  'saturation',
] as const;

/** Number of parameters. */
export const COUNT = PARAMETERS.length;

/** Place of each parameter in the vector. */
export const AT = {
  otherLoss: 0,
  slip: 1,
  magnetising: 2,
  leakage: 3,
  core: 4,
  friction: 5,
  stray: 6,
  rise: 7,
  saturation: 8,
} as const;

/** Ambient temperature to which the rated point belongs, °C. */
export const RATED_AMBIENT = 25;

/** A machine's vector of parameters. */
export type Parameters = Float64Array;

/**
 * A per-phase exact circuit, per unit of rated shaft power and rated voltage: base current = rated power over three times the rated phase
 * voltage. Resistances at the temperature of the rated point.
 */
export interface Circuit {
  readonly r1: number;
  readonly x1: number;
  readonly r2: number;
  readonly x2: number;
  /** Air-gap voltage at the rated point. */
  readonly gapVoltage: number;
  /** Magnetising current at that voltage, and its exponent. */
  readonly magnetising: number;
  readonly saturation: number;
  /** Losses at the rated point. */
  readonly stator: number;
  readonly rotor: number;
  readonly core: number;
  readonly friction: number;
  readonly stray: number;
  /** Square of the rotor current at the rated point: stray-load loss goes with it. */
  readonly rotorCurrentSquared: number;
  readonly slip: number;
  /** Line current and power factor at the rated point. */
  readonly current: number;
  readonly powerFactor: number;
  /** Rise of the winding at the rated point, K. */
  readonly rise: number;
}
