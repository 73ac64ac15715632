import type { MotorScope } from '../../context';
import type { Machine } from '../../machine/model';
import type { Motor, Reading } from '../../motor';
import type { HypothesisId } from '../hypothesis-id';
import { polePassLines } from './electrical';
import { lineOf } from './expected';
import { mechanicalLines } from './mechanical';
import { rotationOf, type Turning } from './rotation';
import { coincidences, SIDEBAND_STEPS } from './separation';

/** Lines of other causes that the pole-pass sidebands of one reading cannot be told from. */
export interface Neighbours {
  readonly meanings: readonly string[];
  readonly causes: readonly HypothesisId[];
  readonly resolutionHz: number;
}

/**
 * What a pole-pass sideband in the current may be taken for at the speed and resolution of one reading, by the dimensions of the drive train.
 * Undefined where nothing stands so near, or the speed was not measured: an estimated speed places lines too coarsely to say.
 */
export function sidebandNeighbours(
  scope: MotorScope,
  given: { readonly motor: Motor; readonly machine: Machine; readonly reading: Reading; readonly turning?: Turning | undefined },
): Neighbours | undefined {
  const { motor, machine, reading, turning } = given;
  // The line of shaft speed stands in every motor, a whole turn away: without dimensions there is nothing to compare.
  if (!turning?.metered.speed || motor.lineGeometry === undefined) return undefined;
  const rotation = rotationOf(scope, machine, turning);
  if (!rotation) return undefined;
  const polePassHz = 2 * rotation.supply.value - rotation.poles * rotation.shaft.value;
  if (polePassHz <= 0) return undefined;
  const resolutionHz = reading.spectrumResolutionHz ?? polePassHz / SIDEBAND_STEPS;
  const first = polePassLines(rotation.poles).filter((rule) => rule.id === 'pole-pass-lower' || rule.id === 'pole-pass-upper');
  const others = mechanicalLines(scope, motor.plate, motor.lineGeometry).filter((rule) => rule.spectrum === 'current');
  const sidebands = first.map((rule) => lineOf(scope, rule, rotation));
  const near = others
    .map((rule) => lineOf(scope, rule, rotation))
    .filter((line) =>
      sidebands.some((sideband) => coincidences([sideband, line], { machine, rotation, resolutionHz }).length > 0),
    );
  if (near.length === 0) return undefined;
  const causes = near.flatMap((line) => (line.cause === 'always' ? [] : [line.cause]));
  return { resolutionHz, meanings: [...new Set(near.map((line) => line.meaning))], causes: [...new Set(causes)] };
}
