import type { MotorScope } from '../context';
import { leaf } from '../formula/apply';
import { assignedStrayShare, strayShareByTests } from '../nameplate/old-iec-stamp';
import type { Quantity } from '../quantity/quantity';
import { frictionShare, lossShare } from './loss-share';
import type { CompletedPlate } from './model';

/** Logarithms of core, friction and windage, and stray-load loss over stator loss at rated load, as an ordinary motor has them. */
export interface TypicalLosses {
  readonly core: Quantity<'1'>;
  readonly friction: Quantity<'1'>;
  readonly stray: Quantity<'1'>;
}

/** Of what the rotor leaves, stray-load loss takes no more than this in a motor of few losses (common practice). */
const MOST_STRAY = 0.4;

/**
 * What is typical of the losses beside the rotor's, over the stator's.
 *
 * Core loss goes by the published shares, friction and windage by share and rating. On stray-load loss two kinds of text disagree: as a share of the total it is
 * 10 to 20 % of any motor, while by tests it is a part of the input that falls with the rating: 8 % of the loss of an IE1 motor of 1 kW and 17 % at 100 kW. The
 * geometric mean of both is taken, but no more than IEC 60034-2-1 assigns to a motor that was not tested, which is meant to be ample; the doubt is that of the shares.
 * Units: `totalLossKw` in kW at rated load; result logarithms of ratios. Valid for: cage motors of 0.1 to 10,000 kW. Source: table of loss shares; survey of 817 tests (2002)
 * and IEC 60034-2-1 for the part of the input; the mean of both is common practice.
 */
export function typicalLosses(scope: MotorScope, completed: CompletedPlate, totalLossKw: number, prefix: string): TypicalLosses {
  const { ratedPower, ratedFrequency, poles } = completed;
  const stator = lossShare(scope, 'stator');
  const core = lossShare(scope, 'core');
  const stray = lossShare(scope, 'stray');
  const friction = frictionShare(scope, ratedPower.value);
  const coreRatio = core.value / stator.value;
  const frictionRatio = (frictionByPoles(poles) * friction.value) / stator.value;
  const rest = (1 - lossShare(scope, 'rotor').value) * totalLossKw;
  /** Stray-load loss of a part of the input, over stator loss. */
  const overStator = (ofInput: number): number => {
    const kw = Math.min(MOST_STRAY * rest, ofInput * (ratedPower.value + totalLossKw));
    return (kw * (1 + coreRatio + frictionRatio)) / (rest - kw);
  };
  const tested = strayShareByTests(scope, ratedPower.value, ratedFrequency.value);
  const assigned = assignedStrayShare(scope)?.(ratedPower.value);
  const byShare = stray.value / stator.value;
  const strayRatio = Math.min(
    tested === undefined ? byShare : Math.sqrt(byShare * overStator(tested)),
    assigned === undefined ? Number.POSITIVE_INFINITY : overStator(assigned),
  );
  const title = scope.tables.lossShares.title;
  const ratio = (component: string, value: number, relative: number, source: string): Quantity<'1'> =>
    leaf(scope, {
      value: Math.log(value),
      unit: '1',
      label: `${prefix}logarithm of ${component} loss over stator loss`,
      origin: 'table',
      source,
      doubts: [
        { id: `${prefix}share:stator`, label: `${prefix}share of stator loss`, u: -stator.relative },
        { id: `${prefix}share:${component}`, label: `${prefix}share of ${component} loss`, u: relative },
      ],
    });
  return {
    core: ratio('core', coreRatio, core.relative, `${title}, mean of the texts`),
    friction: ratio(
      'friction-windage',
      frictionRatio,
      friction.relative,
      `${title}, general range by rating and poles (common practice)`,
    ),
    stray: ratio(
      'stray',
      strayRatio,
      stray.relative,
      `${title}, and the part of the input that tests found (survey of 2002, IEC 60034-2-1)`,
    ),
  };
}

/** Friction and windage by poles: fast fans take more (common practice). */
function frictionByPoles(poles: number): number {
  return poles <= 2 ? 1.4 : poles >= 6 ? 0.75 : 1;
}
