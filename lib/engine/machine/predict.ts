import { COPPER } from '../circuit/copper';
import { CIRCUIT_SLOPES, circuitFromRatedPoint, circuitSlopes, OF_CIRCUIT } from '../circuit/from-rated-point';
import { type Circuit, COUNT, RATED_AMBIENT } from '../circuit/parameters';
import { BY, OF_POINT, POINT_COLUMNS, POINT_SLOPES, pointSlopes } from '../circuit/point-slopes';
import { type Solution, solveAtPower, type Terminals } from '../circuit/solve';
import type { Problem } from '../estimate/least-squares';
import type { Observation } from './observation';

/** What of a reading's conditions is taken as known. */
export interface KnownConditions {
  readonly frequency: number;
  readonly ambient: number;
  readonly winding?: number | undefined;
  readonly negativeSequence?: number | undefined;
}

/** Unknowns of one reading: load fraction, voltage ratio, heat beyond the reckoned in K over {@link HEAT}. */
export const PER_READING = 3;

/** Scale of the unknown heat, K: keeps all unknowns of the order of one. */
export const HEAT = 10;

/** Predictions and their derivatives, as a least-squares problem asks for them. */
export type Predictor = Pick<Problem, 'predict' | 'differentiate'>;

/** Rows of a point's derivatives that readings ask for. */
const READ = [OF_POINT.input, OF_POINT.current, OF_POINT.powerFactor, OF_POINT.slip] as const;

const ofCircuit = new Float64Array(CIRCUIT_SLOPES);
const ofPoint = new Float64Array(POINT_SLOPES);

/**
 * Predicts every observation from the unknowns: the machine's parameters, then {@link PER_READING} for each reading.
 * A machine or a point that cannot be makes the whole prediction impossible.
 */
export function predictor(
  observations: readonly Observation[],
  conditions: readonly KnownConditions[],
  rotorShare: number,
): Predictor {
  const own: number[] = [];
  const ofReading: number[][] = conditions.map(() => []);
  observations.forEach(({ target }, i) => {
    if ('reading' in target) ofReading[target.reading]?.push(i);
    else own.push(i);
  });
  const rows = conditions.map((_, r) =>
    READ.filter((row) => ofReading[r]?.some((i) => rowOf((observations[i] as Observation).target.of) === row)),
  );
  let circuit: Circuit | undefined;
  const points: (Solution | undefined)[] = conditions.map(() => undefined);
  const terminals = (unknowns: Float64Array, r: number): Terminals => {
    const known = conditions[r] as KnownConditions;
    const at = COUNT + PER_READING * r;
    return {
      load: unknowns[at] as number,
      voltage: unknowns[at + 1] as number,
      frequency: known.frequency,
      ambient: known.ambient,
      winding: known.winding,
      hotter: (unknowns[at + 2] as number) * HEAT,
      negativeSequence: known.negativeSequence ?? 0,
      near: points[r],
    };
  };
  return {
    predict(unknowns, out) {
      const machine = circuitFromRatedPoint(unknowns, rotorShare);
      if (!machine) return false;
      circuit = machine;
      for (const i of own) {
        const value = ofMachine(observations[i] as Observation, machine, unknowns);
        if (value === undefined) return false;
        out[i] = value;
      }
      for (let r = 0; r < conditions.length; r++) {
        const solution = solveAtPower(machine, terminals(unknowns, r));
        if (!solution || !(solution.input > 0)) return false;
        points[r] = solution;
        const at = COUNT + PER_READING * r;
        for (const i of ofReading[r] as number[])
          out[i] = ofReadingAt((observations[i] as Observation).target.of, solution, unknowns, at);
      }
      return true;
    },
    differentiate(unknowns, jacobian) {
      if (!circuit) return false;
      const n = unknowns.length;
      jacobian.fill(0, 0, observations.length * n);
      circuitSlopes(unknowns, rotorShare, circuit, ofCircuit);
      for (const i of own) machineSlopes((observations[i] as Observation).target, circuit, jacobian, i * n);
      for (let r = 0; r < conditions.length; r++) {
        const solution = points[r];
        if (!solution) return false;
        if (rows[r]?.length) pointSlopes(circuit, ofCircuit, terminals(unknowns, r), solution, ofPoint, rows[r]);
        const at = COUNT + PER_READING * r;
        for (const i of ofReading[r] as number[])
          readingSlopes((observations[i] as Observation).target.of, solution, jacobian, i * n, at);
      }
      return true;
    },
  };
}

/** Row of a point's derivatives that an observed value asks for; none where it is an unknown itself. */
function rowOf(of: Observation['target']['of']): number | undefined {
  switch (of) {
    case 'input':
      return OF_POINT.input;
    case 'current':
      return OF_POINT.current;
    case 'power-factor':
      return OF_POINT.powerFactor;
    case 'slip':
      return OF_POINT.slip;
    default:
      return undefined;
  }
}

/** Place of the unknown that an observed value is, within the unknowns of its reading. */
const UNKNOWN = { load: 0, voltage: 1, heat: 2 } as const;

function ofReadingAt(of: Observation['target']['of'], solution: Solution, unknowns: Float64Array, at: number): number {
  switch (of) {
    case 'input':
      return Math.log(solution.input);
    case 'current':
      return Math.log(solution.current);
    case 'power-factor':
      return solution.powerFactor;
    case 'slip':
      return solution.slip;
    case 'load':
    case 'voltage':
      return unknowns[at + UNKNOWN[of]] as number;
    default:
      return unknowns[at + UNKNOWN.heat] as number;
  }
}

function readingSlopes(
  of: Observation['target']['of'],
  solution: Solution,
  jacobian: Float64Array,
  start: number,
  at: number,
): void {
  const row = rowOf(of);
  if (row === undefined) {
    jacobian[start + at + (of === 'load' || of === 'voltage' ? UNKNOWN[of] : UNKNOWN.heat)] = 1;
    return;
  }
  const scale = of === 'input' ? 1 / solution.input : of === 'current' ? 1 / solution.current : 1;
  const from = row * POINT_COLUMNS;
  for (let k = 0; k < COUNT; k++) jacobian[start + k] = scale * (ofPoint[from + k] as number);
  jacobian[start + at + UNKNOWN.load] = scale * (ofPoint[from + BY.load] as number);
  jacobian[start + at + UNKNOWN.voltage] = scale * (ofPoint[from + BY.voltage] as number);
  jacobian[start + at + UNKNOWN.heat] = scale * HEAT * (ofPoint[from + BY.hotter] as number);
}

/** The machine running free at a voltage, as an uncoupled test finds it. */
function runningFree(c: Circuit, voltage: number): [Terminals, Solution | undefined] {
  const at: Terminals = {
    load: 0,
    voltage,
    frequency: 1,
    ambient: RATED_AMBIENT,
    winding: undefined,
    hotter: 0,
    negativeSequence: 0,
    near: undefined,
  };
  return [at, solveAtPower(c, at)];
}

function ofMachine({ target }: Observation, c: Circuit, parameters: Float64Array): number | undefined {
  switch (target.of) {
    case 'parameter':
      return parameters[target.index];
    case 'rated-loss':
      return Math.log(c.stator + c.rotor + c.core + c.friction + c.stray);
    case 'rated-current':
      return Math.log(c.current);
    case 'rated-power-factor':
      return c.powerFactor;
    case 'resistance':
      return Math.log((c.r1 * (COPPER + target.temperature)) / (COPPER + RATED_AMBIENT + c.rise));
    case 'friction':
      return Math.log(c.friction);
    case 'free-current':
    case 'free-input': {
      const [, free] = runningFree(c, target.voltage);
      if (!free) return undefined;
      return Math.log(target.of === 'free-current' ? free.current : free.input);
    }
    case 'stray':
      return Math.log(c.stray);
    case 'free-core':
    case 'free-constant': {
      const [, free] = runningFree(c, 1);
      return free && Math.log(free.core + (target.of === 'free-core' ? 0 : free.friction));
    }
    default:
      return undefined;
  }
}

/** Puts the derivatives of one observation of the machine into its row of the Jacobian. */
function machineSlopes(target: Observation['target'], c: Circuit, jacobian: Float64Array, start: number): void {
  const add = (row: number, scale: number): void => {
    for (let k = 0; k < COUNT; k++)
      jacobian[start + k] = (jacobian[start + k] as number) + scale * (ofCircuit[row * COUNT + k] as number);
  };
  switch (target.of) {
    case 'parameter':
      jacobian[start + target.index] = 1;
      return;
    case 'rated-loss':
      add(OF_CIRCUIT.ratedLoss, 1 / (c.stator + c.rotor + c.core + c.friction + c.stray));
      return;
    case 'rated-current':
      add(OF_CIRCUIT.current, 1 / c.current);
      return;
    case 'rated-power-factor':
      add(OF_CIRCUIT.powerFactor, 1);
      return;
    case 'resistance':
      add(OF_CIRCUIT.r1, 1 / c.r1);
      add(OF_CIRCUIT.rise, -1 / (COPPER + RATED_AMBIENT + c.rise));
      return;
    case 'friction':
      add(OF_CIRCUIT.friction, 1 / c.friction);
      return;
    case 'free-current':
    case 'free-input': {
      const [at, free] = runningFree(c, target.voltage);
      if (!free) return;
      const row = target.of === 'free-current' ? OF_POINT.current : OF_POINT.input;
      pointSlopes(c, ofCircuit, at, free, ofPoint, [row]);
      const scale = 1 / (target.of === 'free-current' ? free.current : free.input);
      for (let k = 0; k < COUNT; k++) jacobian[start + k] = scale * (ofPoint[row * POINT_COLUMNS + k] as number);
      return;
    }
    case 'stray':
      add(OF_CIRCUIT.stray, 1 / c.stray);
      return;
    case 'free-core':
    case 'free-constant': {
      const [at, free] = runningFree(c, 1);
      if (!free) return;
      const rows = target.of === 'free-core' ? [OF_POINT.core] : [OF_POINT.core, OF_POINT.friction];
      pointSlopes(c, ofCircuit, at, free, ofPoint, rows);
      const scale = 1 / (free.core + (target.of === 'free-core' ? 0 : free.friction));
      for (const row of rows)
        for (let k = 0; k < COUNT; k++)
          jacobian[start + k] = (jacobian[start + k] as number) + scale * (ofPoint[row * POINT_COLUMNS + k] as number);
      return;
    }
    default:
      return;
  }
}
