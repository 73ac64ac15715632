import { CIRCUIT_SLOPES, circuitFromRatedPoint, circuitSlopes } from '../circuit/from-rated-point';
import { type Circuit, COUNT, PARAMETERS } from '../circuit/parameters';
import type { MotorScope } from '../context';
import { type Fit, leastSquares, type Problem } from '../estimate/least-squares';
import { EXACT, type Parts, PartsTable, type Quantity } from '../quantity/quantity';
import { copied, doubles } from '../room';
import type { Observation } from './observation';
import { type KnownConditions, predictor } from './predict';

/** A machine's parameters with their doubts, and the circuit that they make. */
export interface MachineModel {
  readonly parameters: readonly Quantity<'1'>[];
  readonly circuit: Circuit;
  /** The circuit's derivatives by the parameters, see {@link circuitSlopes}; worked out when first needed. */
  readonly slopes: () => Float64Array;
  readonly rotorShare: number;
  /** Base of power, kW, and of current, A. */
  readonly base: { readonly powerKw: number; readonly currentA: number };
}

/** All that is known of a machine, and where the search starts. */
export interface Evidence {
  readonly observations: readonly Observation[];
  readonly conditions: readonly KnownConditions[];
  readonly start: Float64Array;
  readonly rotorShare: number;
}

/** The evidence as a least-squares problem. */
export function problemOf({ observations, conditions, start, rotorShare }: Evidence): Problem {
  const observed = doubles(observations.length);
  const u = doubles(observations.length);
  observations.forEach((each, i) => {
    observed[i] = each.value.value;
    u[i] = each.u;
  });
  const { predict, differentiate } = predictor(observations, conditions, rotorShare);
  return { start, observed, u, predict, differentiate };
}

/** Fits parameters (and unknowns of readings, if there are conditions) to the evidence; `undefined` when no machine fits. */
export function fitEvidence(evidence: Evidence): Fit | undefined {
  return leastSquares(problemOf(evidence));
}

/** The doubts of a fit's observations, by which those of its unknowns are worked out together. */
export interface Doubts {
  readonly fit: Fit;
  readonly observations: readonly Observation[];
  readonly parts: readonly Parts[];
}

/**
 * Doubts of every unknown of a fit: each observation's doubts count as far as it moves the unknown, so that what is common to two figures
 * (a stamp, a meter) stays common. `widen` multiplies them.
 */
export function doubtsOf(fit: Fit, observations: readonly Observation[], widen = 1): Doubts {
  const n = fit.unknowns.length;
  const table = new PartsTable(observations.map(({ value }) => value.parts));
  const column = doubles(observations.length);
  const parts: Parts[] = [];
  for (let k = 0; k < n; k++) {
    for (let i = 0; i < column.length; i++) column[i] = fit.gain[i * n + k] as number;
    parts.push(table.sum(column, 0, widen));
  }
  return { fit, observations, parts };
}

/** Unknown `k` of a fit as a quantity. */
export function unknownOf(
  scope: MotorScope,
  { fit, observations, parts }: Doubts,
  k: number,
  statement: { readonly label: string; readonly tex: string },
): Quantity<'1'> {
  const n = fit.unknowns.length;
  const result: Quantity<'1'> = { unit: '1', value: fit.unknowns[k] as number, parts: parts[k] ?? EXACT };
  if (scope.trace) {
    const inputs: Record<string, Quantity> = {};
    // Only what moves it by more than a hundredth of its own doubt is shown; the rest would bury the reader.
    const moves = observations.map((each, i) => Math.abs((fit.gain[i * n + k] as number) * each.u));
    const largest = Math.max(...moves);
    observations.forEach((each, i) => {
      if ((moves[i] as number) > 0.01 * largest) inputs[each.name] = each.value;
    });
    scope.trace.set(result, {
      kind: 'solution',
      ...statement,
      residual: fit.residual,
      source: 'Weighted least squares over stamps, readings and what is typical: JCGM 100 5.2, JCGM 102',
      inputs,
    });
  }
  return result;
}

const WORDS = [
  'logarithm of the losses beside the rotor’s',
  'logarithm of the rated slip',
  'logarithm of the magnetising current',
  'logarithm of the leakage reactance',
  'logarithm of core loss over stator loss',
  'logarithm of friction and windage over stator loss',
  'logarithm of stray-load loss over stator loss',
  'logarithm of the winding’s rise',
  'exponent of the magnetising current',
] as const;

const TEX = '\\hat{\\theta} = \\arg\\min_\\theta \\sum_i \\left(\\frac{o_i - m_i(\\theta)}{u_i}\\right)^2';

/** The machine that a fit describes. */
export function modelOf(
  scope: MotorScope,
  doubts: Doubts,
  rotorShare: number,
  base: MachineModel['base'],
  prefix: string,
): MachineModel | undefined {
  const values = copied(doubts.fit.unknowns, 0, COUNT);
  const circuit = circuitFromRatedPoint(values, rotorShare);
  if (!circuit) return undefined;
  let slopes: Float64Array | undefined;
  return {
    parameters: PARAMETERS.map((_, k) => unknownOf(scope, doubts, k, { label: `${prefix}${WORDS[k]}`, tex: TEX })),
    circuit,
    rotorShare,
    base,
    slopes: () => {
      if (!slopes) {
        slopes = doubles(CIRCUIT_SLOPES);
        circuitSlopes(values, rotorShare, circuit, slopes);
      }
      return slopes;
    },
  };
}
