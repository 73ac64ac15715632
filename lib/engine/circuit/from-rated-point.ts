import { COLUMNS, derivatives, PLACE, PLACES, ROW, ROWS, results, search } from '../generated/rated-point';
import { AT, type Circuit, COUNT, type Parameters } from './parameters';

/** Newton steps for the air-gap voltage; four or five are the rule. */
const STEPS = 40;

const x = new Float64Array(PLACES);
const values = new Float64Array(ROWS);
const slope = new Float64Array(1);
const slopes = new Float64Array(ROWS * COLUMNS);
const gap = new Float64Array(COUNT);

/**
 * The circuit whose rated point has exactly the losses, slip, magnetising current and leakage that the parameters state.
 *
 * Units: per unit of rated shaft power and voltage. `rotorShare` is the rotor's part of the leakage (0.5 for designs A and D, 0.6 for B,
 * 0.7 for C: IEEE 112-2017 table of reactance ratios, from memory).
 * Valid for: motors that can carry their rating; returns `undefined` where the leakage is too large for the rated torque.
 * Equations: `rated-point.system.ts`; the air-gap voltage at which the terminal voltage is the rated one, by Newton steps.
 */
export function circuitFromRatedPoint(p: Parameters, rotorShare: number): Circuit | undefined {
  for (let k = 0; k < COUNT; k++) x[PARAMETER + k] = p[k] as number;
  x[PLACE.rotor_share] = rotorShare;
  let e = 0.95;
  for (let i = 0; i < STEPS; i++) {
    x[PLACE.gap_voltage] = e;
    search(x, values, slope);
    const left = values[0] as number;
    const by = slope[0] as number;
    if (!(Math.abs(left) < 0.6)) return undefined;
    if (Math.abs(left) < 1e-13) return read(e);
    // The terminal voltage grows nearly as the air-gap voltage does.
    e -= by > 0.5 && by < 2 ? left / by : left;
    if (!(e > 0.3)) return undefined;
    if (Math.abs(left) < 1e-8) {
      x[PLACE.gap_voltage] = e;
      return read(e);
    }
  }
  return undefined;
}

/** The parameters stand together in the system, in the order of {@link AT}. */
const PARAMETER = PLACE.other_loss;

function read(gapVoltage: number): Circuit | undefined {
  results(x, values);
  if (!(Math.abs(values[ROW.imbalance] as number) < 1e-9)) return undefined;
  const at = (row: number): number => values[row] as number;
  return {
    r1: at(ROW.r1),
    x1: at(ROW.x1),
    r2: at(ROW.r2),
    x2: at(ROW.x2),
    gapVoltage,
    magnetising: at(ROW.magnetising),
    saturation: at(ROW.saturation),
    stator: at(ROW.stator),
    rotor: at(ROW.rotor),
    core: at(ROW.core),
    friction: at(ROW.friction),
    stray: at(ROW.stray),
    rotorCurrentSquared: at(ROW.rotor_squared),
    slip: at(ROW.slip),
    current: at(ROW.current),
    powerFactor: at(ROW.power_factor),
    rise: at(ROW.rise),
  };
}

/** Values of a circuit whose derivatives by the parameters are known, as rows of {@link circuitSlopes}. */
export const OF_CIRCUIT = {
  gapVoltage: ROW.imbalance,
  r1: ROW.r1,
  x1: ROW.x1,
  r2: ROW.r2,
  x2: ROW.x2,
  magnetising: ROW.magnetising,
  saturation: ROW.saturation,
  core: ROW.core,
  friction: ROW.friction,
  stray: ROW.stray,
  strayResistance: ROW.stray_resistance,
  slip: ROW.slip,
  rise: ROW.rise,
  ratedLoss: ROW.rated_loss,
  current: ROW.current,
  powerFactor: ROW.power_factor,
} as const;

/** Length of {@link circuitSlopes}. */
export const CIRCUIT_SLOPES = ROWS * COUNT;

/**
 * Derivatives of a circuit's values by its parameters, put into `out`: row as in {@link OF_CIRCUIT}, column as in {@link AT}, at
 * `row * COUNT + column`.
 * By the implicit-function rule at the solved rated point: the air-gap voltage follows each parameter so that the terminal voltage stays.
 */
export function circuitSlopes(p: Parameters, rotorShare: number, circuit: Circuit, out: Float64Array): void {
  for (let k = 0; k < COUNT; k++) x[PARAMETER + k] = p[k] as number;
  x[PLACE.rotor_share] = rotorShare;
  x[PLACE.gap_voltage] = circuit.gapVoltage;
  derivatives(x, slopes);
  const hold = slopes[ROW.imbalance * COLUMNS] as number;
  for (let k = 0; k < COUNT; k++) gap[k] = -(slopes[ROW.imbalance * COLUMNS + PARAMETER + k] as number) / hold;
  for (let row = 0; row < ROWS; row++) {
    const from = row * COLUMNS;
    const follows = slopes[from] as number;
    for (let k = 0; k < COUNT; k++)
      out[row * COUNT + k] = (slopes[from + PARAMETER + k] as number) + follows * (gap[k] as number);
  }
  for (let k = 0; k < COUNT; k++) out[OF_CIRCUIT.gapVoltage * COUNT + k] = gap[k] as number;
}
