import { CIRCUIT_SLOPES, circuitFromRatedPoint, circuitSlopes } from '../circuit/from-rated-point';
import { COUNT } from '../circuit/parameters';
import { BY, OF_POINT, POINT_COLUMNS, POINT_SLOPES, pointSlopes } from '../circuit/point-slopes';
import { type Solution, solveAtPower, type Terminals } from '../circuit/solve';
import type { MotorScope } from '../context';
import { leastMisfit, type Moved, stepFrom } from '../estimate/least-squares';
import { assumedAmbient } from '../machine/operate';
import { HEAT, PER_READING } from '../machine/predict';
import { EXACT, type Parts } from '../quantity/quantity';
import { copied, doubles } from '../room';
import type { Joint } from './joint';
import type { Metered } from './metered';
import { extraLoss } from './supply-loss';

/** Figures of a reading's operating point that the estimator gives: load fraction, input and total loss in units of the rated power, efficiency. */
export const ESTIMATED = ['load', 'efficiency', 'input', 'loss'] as const;
export type Estimated = (typeof ESTIMATED)[number];

/** How far each source of doubt is off, in its standard uncertainties, by its number. */
export type Scores = Float64Array;

const ofCircuit = new Float64Array(CIRCUIT_SLOPES);
const ofPoint = new Float64Array(POINT_SLOPES);
const INPUT = [OF_POINT.input] as const;

/**
 * The joint estimate as a function of its sources of doubt: what it would give for one reading if stamps, meters and typical values were off by given
 * scores. Weights stay those of the estimate; scores count as widened by the Birge ratio.
 */
export class Estimator {
  readonly sources: number;
  private readonly ambient: number;
  private readonly temperature: Parts;
  private readonly extra: number;
  private readonly ofExtra: Parts;
  private readonly at: number;
  private readonly parts: readonly Parts[];
  private near: Solution | undefined;

  /** @param reading place of the reading among those of the joint estimate. */
  constructor(
    scope: MotorScope,
    private readonly joint: Joint,
    reading: number,
    private readonly metered: Metered,
  ) {
    const ambient = metered.ambient ?? assumedAmbient(scope);
    const extra = extraLoss(metered.supplyLoss);
    const { powerKw } = joint.machine.model.base;
    this.at = COUNT + PER_READING * reading;
    this.parts = joint.fitted.observations.map(({ value }) => value.parts);
    this.ambient = ambient.value;
    this.temperature = (metered.windingTemperature ?? ambient).parts;
    this.extra = (extra?.value ?? 0) / powerKw;
    this.ofExtra = extra ? { at: extra.parts.at, by: extra.parts.by.map((part) => part / powerKw) } : EXACT;
    this.sources = scope.sources.list.length;
  }

  /** Observed values with their sources off by the scores. */
  private observed(scores: Scores): Float64Array {
    const { fitted, birgeRatio } = this.joint;
    const observed = copied(fitted.problem.observed);
    for (let i = 0; i < observed.length; i++)
      observed[i] = (observed[i] as number) + birgeRatio * off(this.parts[i] as Parts, scores);
    return observed;
  }

  /** Where the unknowns go to first order from those at which the gain was worked out. */
  private static moved(from: Float64Array, gain: Float64Array, before: Float64Array, after: Float64Array): Float64Array {
    const n = from.length;
    const unknowns = copied(from);
    for (let i = 0; i < after.length; i++) {
      const by = (after[i] as number) - (before[i] as number);
      if (by === 0) continue;
      for (let k = 0; k < n; k++) unknowns[k] = (unknowns[k] as number) + (gain[i * n + k] as number) * by;
    }
    return unknowns;
  }

  /** One step of the estimate for scores, from unknowns near it; without any, from where first order puts them. */
  step(scores: Scores, near?: Float64Array | undefined): Moved | undefined {
    const { problem, fit } = this.joint.fitted;
    const observed = this.observed(scores);
    return stepFrom(problem, observed, near ?? Estimator.moved(fit.unknowns, fit.gain, problem.observed, observed));
  }

  /** The unknowns by a whole search, as the estimate itself makes it. */
  search(scores: Scores): Float64Array | undefined {
    const { problem, fit } = this.joint.fitted;
    const observed = this.observed(scores);
    const start = Estimator.moved(fit.unknowns, fit.gain, problem.observed, observed);
    const found = leastMisfit(problem, observed, start) ?? leastMisfit(problem, observed, fit.unknowns);
    return found?.unknowns;
  }

  /** The figures at unknowns and scores; undefined where there is no such point. */
  figures(unknowns: Float64Array, scores: Scores): Readonly<Record<Estimated, number>> | undefined {
    const solved = this.solve(unknowns, scores);
    if (!solved) return undefined;
    const load = unknowns[this.at] as number;
    const input = solved.solution.input + this.extra + off(this.ofExtra, scores);
    return { load, input, loss: input - load, efficiency: load / input };
  }

  /** The solved point at unknowns and scores, with what drives it. */
  solve(unknowns: Float64Array, scores: Scores): { readonly solution: Solution; readonly terminals: Terminals } | undefined {
    const { machine } = this.joint;
    const { metered } = this;
    const circuit = circuitFromRatedPoint(unknowns, machine.model.rotorShare);
    if (!circuit) return undefined;
    const warmer = off(this.temperature, scores);
    const terminals: Terminals = {
      load: unknowns[this.at] as number,
      voltage: unknowns[this.at + 1] as number,
      frequency: metered.frequencyRatio,
      ambient: this.ambient + (metered.windingTemperature ? 0 : warmer),
      winding: metered.windingTemperature && metered.windingTemperature.value + warmer,
      hotter: (unknowns[this.at + 2] as number) * HEAT,
      negativeSequence: metered.negativeSequence,
      near: this.near,
    };
    const solution = solveAtPower(circuit, terminals);
    this.near ??= solution;
    return solution && { solution, terminals };
  }

  /** How much each source moves a figure there, at one standard uncertainty; undefined where there is no such point. */
  contributions(of: Estimated, unknowns: Float64Array, gain: Float64Array, scores: Scores): Float64Array | undefined {
    const { birgeRatio, machine } = this.joint;
    const n = unknowns.length;
    const slopes = doubles(n);
    let byTemperature = 0;
    let byExtra = 0;
    if (of === 'load') slopes[this.at] = 1;
    else {
      const circuit = circuitFromRatedPoint(unknowns, machine.model.rotorShare);
      const solved = this.solve(unknowns, scores);
      if (!circuit || !solved) return undefined;
      circuitSlopes(unknowns, machine.model.rotorShare, circuit, ofCircuit);
      pointSlopes(circuit, ofCircuit, solved.terminals, solved.solution, ofPoint, INPUT);
      const input = solved.solution.input + this.extra + off(this.ofExtra, scores);
      const load = unknowns[this.at] as number;
      const scale = of === 'efficiency' ? -load / (input * input) : 1;
      const slope = (column: number): number => scale * (ofPoint[OF_POINT.input * POINT_COLUMNS + column] as number);
      for (let k = 0; k < COUNT; k++) slopes[k] = slope(k);
      slopes[this.at] = slope(BY.load) + (of === 'efficiency' ? 1 / input : of === 'loss' ? -1 : 0);
      slopes[this.at + 1] = slope(BY.voltage);
      slopes[this.at + 2] = slope(BY.hotter) * HEAT;
      byTemperature = slope(BY.temperature);
      byExtra = scale;
    }
    const found = doubles(this.sources);
    for (let i = 0; i < this.parts.length; i++) {
      let weight = 0;
      for (let k = 0; k < n; k++) weight += (slopes[k] as number) * (gain[i * n + k] as number);
      add(found, this.parts[i] as Parts, weight * birgeRatio);
    }
    add(found, this.temperature, byTemperature);
    add(found, this.ofExtra, byExtra);
    return found;
  }
}

function off({ at, by }: Parts, scores: Scores): number {
  let sum = 0;
  for (let i = 0; i < at.length; i++) sum += (by[i] as number) * (scores[at[i] as number] as number);
  return sum;
}

function add(sum: Float64Array, { at, by }: Parts, weight: number): void {
  for (let i = 0; i < at.length; i++) {
    const source = at[i] as number;
    sum[source] = (sum[source] as number) + weight * (by[i] as number);
  }
}
