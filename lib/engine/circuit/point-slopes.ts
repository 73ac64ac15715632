import { COLUMNS, derivatives, PLACE, PLACES, ROW, ROWS } from '../generated/running-point';
import { OF_CIRCUIT } from './from-rated-point';
import { type Circuit, COUNT } from './parameters';
import { HOTTEST, placeInto, type Solution, type Terminals } from './solve';

/** Values of a running point whose derivatives are known, as rows of {@link pointSlopes}. */
export const OF_POINT = {
  stator: 0,
  rotor: 1,
  core: 2,
  friction: 3,
  stray: 4,
  input: 5,
  current: 6,
  powerFactor: 7,
  unbalance: 8,
  slip: 9,
  winding: 10,
} as const;
const POINT_ROWS = 11;

/** Every row, in order. */
export const ALL_ROWS: readonly number[] = Object.values(OF_POINT);

/** Every row but the loss by unbalance, which a balanced supply does not have. */
export const BALANCED_ROWS: readonly number[] = ALL_ROWS.filter((row) => row !== OF_POINT.unbalance);

/** Columns of {@link pointSlopes}: first the machine's parameters, then the conditions; temperature is the measured winding's or the ambient's. */
export const BY = { load: COUNT, voltage: COUNT + 1, temperature: COUNT + 2, hotter: COUNT + 3 } as const;
export const POINT_COLUMNS = COUNT + 4;

const VALUES = Int32Array.of(
  ROW.stator_loss,
  ROW.rotor_loss,
  ROW.core_loss,
  ROW.friction_loss,
  ROW.stray_loss,
  ROW.input,
  ROW.current,
  ROW.power_factor,
  ROW.unbalance,
);

/** Circuit values that the running point hangs on stand together, in this order of their rows among the circuit's slopes. */
const FIRST = PLACE.r1;
const ROWS_OF_CIRCUIT = Int32Array.of(
  OF_CIRCUIT.r1,
  OF_CIRCUIT.x1,
  OF_CIRCUIT.r2,
  OF_CIRCUIT.x2,
  OF_CIRCUIT.gapVoltage,
  OF_CIRCUIT.magnetising,
  OF_CIRCUIT.saturation,
  OF_CIRCUIT.core,
  OF_CIRCUIT.friction,
  OF_CIRCUIT.strayResistance,
  OF_CIRCUIT.slip,
  OF_CIRCUIT.rise,
);

const x = new Float64Array(PLACES);
const slopes = new Float64Array(ROWS * COLUMNS);
const totals = new Float64Array(COLUMNS);

/** Length of {@link pointSlopes}. */
export const POINT_SLOPES = POINT_ROWS * POINT_COLUMNS;

/**
 * Derivatives of a solved point by the machine's parameters and by its conditions, put into `out` at `row * POINT_COLUMNS + column`, rows as
 * in {@link OF_POINT} and columns as in AT and {@link BY}; per K for temperatures.
 *
 * By the implicit-function rule: air-gap voltage, slip and winding temperature follow so that voltage, power and heat stay in balance.
 * `ofCircuit` are the circuit's own slopes by its parameters (see `circuitSlopes`); only the `rows` that are asked for are worked out.
 */
export function pointSlopes(
  c: Circuit,
  ofCircuit: Float64Array,
  at: Terminals,
  point: Solution,
  out: Float64Array,
  rows: readonly number[] = ALL_ROWS,
): void {
  placeInto(x, c, at);
  x[PLACE.e] = point.gapVoltage;
  x[PLACE.s] = point.slip;
  x[PLACE.winding] = point.winding;
  derivatives(x, slopes);
  const ratedLoss = c.stator + c.rotor + c.core + c.friction + c.stray;
  const loss = point.stator + point.rotor + point.core + point.friction + point.stray;
  const reckoned = at.winding === undefined;
  const follows = reckoned && loss < HOTTEST * ratedLoss ? c.rise / ratedLoss : 0;
  const share = reckoned ? Math.min(loss / ratedLoss, HOTTEST) : 0;
  // The three balances by the three unknowns, and the inverse.
  const a00 = slopes[VOLTAGE] as number;
  const a01 = slopes[VOLTAGE + 1] as number;
  const a02 = slopes[VOLTAGE + 2] as number;
  const a10 = slopes[POWER] as number;
  const a11 = slopes[POWER + 1] as number;
  const a12 = slopes[POWER + 2] as number;
  const a20 = -follows * (slopes[LOSS] as number);
  const a21 = -follows * (slopes[LOSS + 1] as number);
  const a22 = 1 - follows * (slopes[LOSS + 2] as number);
  const c0 = a11 * a22 - a12 * a21;
  const c1 = a12 * a20 - a10 * a22;
  const c2 = a10 * a21 - a11 * a20;
  const determinant = a00 * c0 + a01 * c1 + a02 * c2;
  const i00 = c0 / determinant;
  const i01 = (a02 * a21 - a01 * a22) / determinant;
  const i02 = (a01 * a12 - a02 * a11) / determinant;
  const i10 = c1 / determinant;
  const i11 = (a00 * a22 - a02 * a20) / determinant;
  const i12 = (a02 * a10 - a00 * a12) / determinant;
  const i20 = c2 / determinant;
  const i21 = (a01 * a20 - a00 * a21) / determinant;
  const i22 = (a00 * a11 - a01 * a10) / determinant;
  const heatOfRatedLoss = (-follows * loss) / ratedLoss;
  for (const row of rows) {
    const isValue = row < VALUES.length;
    const from = isValue ? (VALUES[row] as number) * COLUMNS : 0;
    const byE = isValue ? (slopes[from] as number) : 0;
    const byS = isValue ? (slopes[from + 1] as number) : row === OF_POINT.slip ? 1 : 0;
    const byT = isValue ? (slopes[from + 2] as number) : row === OF_POINT.winding ? 1 : 0;
    // What a unit of imbalance in each balance does to the value.
    const v = byE * i00 + byS * i10 + byT * i20;
    const p = byE * i01 + byS * i11 + byT * i21;
    const t = byE * i02 + byS * i12 + byT * i22;
    const l = t * follows;
    for (let column = FIRST; column < COLUMNS; column++)
      totals[column] =
        (isValue ? (slopes[from + column] as number) : 0) -
        v * (slopes[VOLTAGE + column] as number) -
        p * (slopes[POWER + column] as number) +
        l * (slopes[LOSS + column] as number);
    totals[PLACE.rise] = (totals[PLACE.rise] as number) + t * share;
    const start = row * POINT_COLUMNS;
    const ofRatedLoss = t * heatOfRatedLoss;
    for (let k = 0; k < COUNT; k++) {
      let slope = ofRatedLoss * (ofCircuit[RATED_LOSS + k] as number);
      for (let i = 0; i < ROWS_OF_CIRCUIT.length; i++)
        slope += (totals[FIRST + i] as number) * (ofCircuit[(ROWS_OF_CIRCUIT[i] as number) * COUNT + k] as number);
      out[start + k] = slope;
    }
    out[start + BY.load] = totals[PLACE.load] as number;
    out[start + BY.voltage] = totals[PLACE.voltage] as number;
    out[start + BY.temperature] = t;
    out[start + BY.hotter] = totals[PLACE.hotter] as number;
  }
}

const RATED_LOSS = OF_CIRCUIT.ratedLoss * COUNT;
const VOLTAGE = ROW.voltage_left * COLUMNS;
const POWER = ROW.power_left * COLUMNS;
const LOSS = ROW.loss * COLUMNS;
