import { COPPER } from '../circuit/copper';
import { circuitFromRatedPoint } from '../circuit/from-rated-point';
import { type Circuit, COUNT, RATED_AMBIENT } from '../circuit/parameters';
import { type Solution, solveAtPower } from '../circuit/solve';
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

/**
 * Predicts every observation from the unknowns: the machine's parameters, then {@link PER_READING} for each reading.
 * A machine or a point that cannot be makes the whole prediction impossible.
 */
export function predictor(
  observations: readonly Observation[],
  conditions: readonly KnownConditions[],
  rotorShare: number,
): (unknowns: Float64Array, out: Float64Array, moved?: number) => boolean {
  const own: number[] = [];
  const ofReading: number[][] = conditions.map(() => []);
  observations.forEach(({ target }, i) => {
    if ('reading' in target) ofReading[target.reading]?.push(i);
    else own.push(i);
  });
  let circuit: Circuit | undefined;
  const last: (Solution | undefined)[] = conditions.map(() => undefined);
  const reading = (unknowns: Float64Array, r: number, c: Circuit, out: Float64Array, base: boolean): boolean => {
    const known = conditions[r] as KnownConditions;
    const at = COUNT + PER_READING * r;
    const load = unknowns[at] as number;
    const voltage = unknowns[at + 1] as number;
    const heat = unknowns[at + 2] as number;
    const solution = solveAtPower(c, {
      load,
      voltage,
      frequency: known.frequency,
      ambient: known.ambient,
      winding: known.winding,
      hotter: heat * HEAT,
      negativeSequence: known.negativeSequence,
      near: last[r],
    });
    if (!solution || !(solution.input > 0)) return false;
    if (base) last[r] = solution;
    for (const i of ofReading[r] as number[])
      out[i] = ofPoint((observations[i] as Observation).target.of, solution, load, voltage, heat);
    return true;
  };
  return (unknowns, out, moved) => {
    if (moved !== undefined && moved >= COUNT && circuit)
      return reading(unknowns, Math.floor((moved - COUNT) / PER_READING), circuit, out, false);
    const machine = circuitFromRatedPoint(unknowns, rotorShare);
    if (!machine) return false;
    if (moved === undefined) circuit = machine;
    for (const i of own) {
      const value = ofMachine(observations[i] as Observation, machine, unknowns);
      if (value === undefined) return false;
      out[i] = value;
    }
    for (let r = 0; r < conditions.length; r++) if (!reading(unknowns, r, machine, out, moved === undefined)) return false;
    return true;
  };
}

function ofPoint(of: Observation['target']['of'], solution: Solution, load: number, voltage: number, heat: number): number {
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
      return load;
    case 'voltage':
      return voltage;
    default:
      return heat;
  }
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
      const free = solveAtPower(c, { load: 0, voltage: target.voltage, frequency: 1, ambient: RATED_AMBIENT });
      if (!free) return undefined;
      return Math.log(target.of === 'free-current' ? free.current : free.input);
    }
    default:
      return undefined;
  }
}
