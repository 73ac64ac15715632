import { COPPER } from '../circuit/copper';
import { CIRCUIT_SLOPES, circuitFromRatedPoint, circuitSlopes, OF_CIRCUIT } from '../circuit/from-rated-point';
import { type Circuit, COUNT, RATED_AMBIENT } from '../circuit/parameters';
import { BY, OF_POINT, POINT_COLUMNS, POINT_SLOPES, pointSlopes } from '../circuit/point-slopes';
import { type Solution, solveAtPower, type Terminals } from '../circuit/solve';
import type { Problem } from '../estimate/least-squares';
import type { Observation, Observed } from './observation';

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

/** What meters show of a reading's point, with its row in the point's derivatives. */
const SHOWN = {
  input: OF_POINT.input,
  current: OF_POINT.current,
  'power-factor': OF_POINT.powerFactor,
  slip: OF_POINT.slip,
} as const;
type Shown = keyof typeof SHOWN;

/** Place of what is an unknown itself within the unknowns of its reading. */
const UNKNOWN = { load: 0, voltage: 1, heat: 2 } as const;

/** Observations by what they are compared with, each with its place `at` in the list: most are unknowns themselves and take no working out. */
interface Compared {
  readonly direct: readonly { readonly at: number; readonly unknown: number }[];
  readonly ofMachine: readonly { readonly at: number; readonly target: OfMachine }[];
  /** By reading. */
  readonly shown: readonly (readonly { readonly at: number; readonly of: Shown }[])[];
}

type OfMachine = Exclude<Observed, { readonly of: 'parameter' } | { readonly reading: number }>;

function compared(observations: readonly Observation[], readings: number): Compared {
  const direct: { at: number; unknown: number }[] = [];
  const ofMachine: { at: number; target: OfMachine }[] = [];
  const shown: { at: number; of: Shown }[][] = [];
  while (shown.length < readings) shown.push([]);
  observations.forEach(({ target }, at) => {
    switch (target.of) {
      case 'parameter':
        direct.push({ at, unknown: target.index });
        break;
      case 'load':
      case 'voltage':
      case 'heat':
        direct.push({ at, unknown: COUNT + PER_READING * target.reading + UNKNOWN[target.of] });
        break;
      case 'input':
      case 'current':
      case 'power-factor':
      case 'slip':
        shown[target.reading]?.push({ at, of: target.of });
        break;
      default:
        ofMachine.push({ at, target });
    }
  });
  return { direct, ofMachine, shown };
}

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
  const { direct, ofMachine, shown } = compared(observations, conditions.length);
  const rows = shown.map((of) => [...new Set(of.map((each) => SHOWN[each.of]))]);
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
      for (const { at, unknown } of direct) out[at] = unknowns[unknown] as number;
      for (const { at, target } of ofMachine) {
        const value = machineFigure(target, machine);
        if (value === undefined) return false;
        out[at] = value;
      }
      for (let r = 0; r < conditions.length; r++) {
        const solution = solveAtPower(machine, terminals(unknowns, r));
        if (!solution || !(solution.input > 0)) return false;
        points[r] = solution;
        for (const { at, of } of shown[r] as Compared['shown'][number]) out[at] = shownFigure(of, solution);
      }
      return true;
    },
    differentiate(unknowns, jacobian) {
      if (!circuit) return false;
      const n = unknowns.length;
      jacobian.fill(0, 0, observations.length * n);
      circuitSlopes(unknowns, rotorShare, circuit, ofCircuit);
      for (const { at, unknown } of direct) jacobian[at * n + unknown] = 1;
      for (const { at, target } of ofMachine) machineSlopes(target, circuit, jacobian, at * n);
      for (let r = 0; r < conditions.length; r++) {
        const solution = points[r];
        if (!solution) return false;
        if (rows[r]?.length) pointSlopes(circuit, ofCircuit, terminals(unknowns, r), solution, ofPoint, rows[r]);
        for (const { at, of } of shown[r] as Compared['shown'][number])
          shownSlopes(of, solution, jacobian, at * n, COUNT + PER_READING * r);
      }
      return true;
    },
  };
}

function shownFigure(of: Shown, solution: Solution): number {
  switch (of) {
    case 'input':
      return Math.log(solution.input);
    case 'current':
      return Math.log(solution.current);
    case 'power-factor':
      return solution.powerFactor;
    default:
      return solution.slip;
  }
}

/** Puts the derivatives of what a meter shows into its row of the Jacobian; `own` is the place of the reading's unknowns. */
function shownSlopes(of: Shown, solution: Solution, jacobian: Float64Array, start: number, own: number): void {
  const scale = of === 'input' ? 1 / solution.input : of === 'current' ? 1 / solution.current : 1;
  const from = SHOWN[of] * POINT_COLUMNS;
  for (let k = 0; k < COUNT; k++) jacobian[start + k] = scale * (ofPoint[from + k] as number);
  jacobian[start + own + UNKNOWN.load] = scale * (ofPoint[from + BY.load] as number);
  jacobian[start + own + UNKNOWN.voltage] = scale * (ofPoint[from + BY.voltage] as number);
  jacobian[start + own + UNKNOWN.heat] = scale * HEAT * (ofPoint[from + BY.hotter] as number);
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

function machineFigure(target: OfMachine, c: Circuit): number | undefined {
  switch (target.of) {
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
  }
}

/** Puts the derivatives of one observation of the machine into its row of the Jacobian. */
function machineSlopes(target: OfMachine, c: Circuit, jacobian: Float64Array, start: number): void {
  const add = (row: number, scale: number): void => {
    for (let k = 0; k < COUNT; k++)
      jacobian[start + k] = (jacobian[start + k] as number) + scale * (ofCircuit[row * COUNT + k] as number);
  };
  switch (target.of) {
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
    }
  }
}
