import type { FittedCircuit } from './circuit-from-tests';

/** What a circuit does at one slip: currents for each phase in A, powers of three phases in W. */
export interface CircuitPoint {
  readonly slip: number;
  readonly current: number;
  readonly rotorCurrentSquared: number;
  readonly inputW: number;
  readonly powerFactor: number;
  readonly statorW: number;
  readonly rotorW: number;
  readonly coreW: number;
  /** Developed mechanical power: shaft power, friction and windage, stray-load loss. */
  readonly developedW: number;
}

/**
 * Exact solution of the per-phase circuit at a slip.
 *
 * Units: line-to-line voltage in V, slip as a fraction. Valid for: slip above zero. Errors: none; every slip has a solution.
 * Source: the T circuit with a core-loss conductance beside the magnetising reactance (C. I. Hubert, Electric Machines, example 5.2).
 */
export function circuitAtSlip(c: FittedCircuit, voltageV: number, slip: number): CircuitPoint {
  const v = voltageV / Math.sqrt(3);
  const r = c.r2 / slip;
  const rotor = r * r + c.x2 * c.x2;
  const g = c.gfe + r / rotor;
  const b = -1 / c.xm - c.x2 / rotor;
  const y = g * g + b * b;
  const re = c.r1 + g / y;
  const im = c.x1 - b / y;
  const squared = (v * v) / (re * re + im * im);
  const gapVoltageSquared = squared / y;
  const rotorCurrentSquared = gapVoltageSquared / rotor;
  return {
    slip,
    current: Math.sqrt(squared),
    rotorCurrentSquared,
    inputW: 3 * squared * re,
    powerFactor: re / Math.sqrt(re * re + im * im),
    statorW: 3 * squared * c.r1,
    rotorW: 3 * rotorCurrentSquared * c.r2,
    coreW: 3 * gapVoltageSquared * c.gfe,
    developedW: 3 * rotorCurrentSquared * r * (1 - slip),
  };
}

const SLIP_LEAST = 1e-9;
const STEPS = 200;

/**
 * The running point at which the shaft gives a power; stray-load loss is a function of the point.
 *
 * Units: W. Bisection between no load and the slip of the largest shaft power; `undefined` beyond breakdown, never a half-solved point.
 */
export function circuitAtShaftPower(
  c: FittedCircuit,
  voltageV: number,
  shaftW: number,
  strayOf: (point: CircuitPoint) => number,
): (CircuitPoint & { readonly strayW: number }) | undefined {
  const surplus = (slip: number) => {
    const point = circuitAtSlip(c, voltageV, slip);
    return point.developedW - c.frictionWindage - strayOf(point) - shaftW;
  };
  let high = SLIP_LEAST;
  while (surplus(high) < 0) {
    const next = high * 1.3;
    if (next > 0.9 || (high > 0.02 && surplus(next) < surplus(high))) return undefined;
    high = next;
  }
  let low = high === SLIP_LEAST ? 0 : high / 1.3;
  for (let i = 0; i < STEPS && high - low > 1e-15; i++) {
    const middle = (low + high) / 2;
    if (surplus(middle) < 0) low = middle;
    else high = middle;
  }
  const point = circuitAtSlip(c, voltageV, high);
  return { ...point, strayW: strayOf(point) };
}
