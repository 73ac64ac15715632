import type { Evaluation } from '../evaluate';
import type { Limits } from '../quantity/coverage';
import type { Finding } from '../quantity/finding';
import { standardUncertainty } from '../quantity/quantity';
import { drawnLimits } from './drawn-limits';
import { type Estimated, Estimator } from './estimator';
import { LOAD } from './findings';
import { pointLimits } from './limits';

/** 95 % limits of the figures of a motor, in their units; the finding where they are but roughly known without draws. */
export interface FigureLimits {
  readonly shaftPower: Limits;
  readonly loadFraction: Limits;
  readonly inputPower: Limits;
  readonly totalLoss: Limits;
  readonly efficiency: Limits;
  readonly finding?: Finding | undefined;
}

/** Place of the reading in use among those of the joint estimate. */
function placeOf({ readings, inUse }: Evaluation): number {
  const rows = readings.flatMap(({ combination, reading }) => (combination ? [reading.row] : []));
  return inUse ? rows.indexOf(inUse.reading.row) : -1;
}

const scaled = ({ low, high }: Limits, factor: number): Limits => ({ low: low * factor, high: high * factor });

function inUnits(of: Readonly<Record<Estimated, Limits>>, { machine }: Evaluation): FigureLimits {
  const kw = machine.model.base.powerKw;
  return {
    loadFraction: of.load,
    shaftPower: scaled(of.load, machine.plate.ratedPower.value),
    inputPower: scaled(of.input, kw),
    totalLoss: scaled(of.loss, kw),
    efficiency: of.efficiency,
  };
}

/** Limits of the figures of the reading in use, see {@link pointLimits}; `undefined` without one. */
export function figureLimits(evaluation: Evaluation): FigureLimits | undefined {
  const { scope, joint, inUse, point } = evaluation;
  if (!joint || !inUse || !point) return undefined;
  const found = pointLimits(scope, joint, placeOf(evaluation), inUse.metered, point);
  const limits = inUnits(found, evaluation);
  if (found.linear) return limits;
  const evidence = {
    row: inUse.reading.row,
    load: point.loadFraction.value,
    u: standardUncertainty(point.loadFraction),
  };
  return { ...limits, finding: LOAD.make('not-linear', evidence) };
}

/** The same by draws through the whole estimate, see {@link drawnLimits}: about half a second. */
export function figureLimitsByDraws(evaluation: Evaluation): FigureLimits | undefined {
  const { scope, joint, inUse, point } = evaluation;
  if (!joint || !inUse || !point) return undefined;
  const found = drawnLimits(new Estimator(scope, joint, placeOf(evaluation), inUse.metered), scope.sources);
  return found && inUnits(found, evaluation);
}
