import type { MotorScope } from '../context';
import type { OperatingPoint } from '../machine/model';
import { coverageFactor, type Limits, rectangularShare } from '../quantity/coverage';
import { covariance, type Parts, type Quantity, scaleParts, standardUncertainty } from '../quantity/quantity';
import { doubles } from '../room';
import { type Estimated, Estimator } from './estimator';
import type { Joint } from './joint';
import { Ladder } from './ladder';
import type { Metered } from './metered';

/** Limits of a reading's figures: input and loss in units of the rated power. `linear` is false where they are but roughly known without draws. */
export interface PointLimits extends Readonly<Record<Estimated, Limits>> {
  readonly linear: boolean;
}

/** Bends, as shares of the half-width, from which a figure that hangs on the load is followed along it. */
const STRONG = { load: 0.2, input: 0.2, loss: 0.2, efficiency: 0.12 } as const;

/** Bend of the load from which the efficiency's may come from it. */
const LOAD_BENDS = 0.15;

/** Bend beyond which the limits hold to a tenth of the width only, and draws do better. */
const TOO_STRONG = 0.3;

/** Directions this near one another, by their correlation, are tried once. */
const NEAR = 0.9;

/** A bend that is too long for one step of the estimate. */
const FAR = 0.5;

/** The efficiency hangs on the load where they are correlated by more than this and the load is not known well, or it is known but roughly: u over load. */
const CORRELATED = 0.35;
const LOOSE = 0.08;
const ROUGH = 0.13;

/** Correlation from which the load alone leads the efficiency. */
const LEADS = 0.42;

/**
 * 95 % limits of the load, input, total loss and efficiency of a reading.
 *
 * The estimate is made again with all sources off together in the direction that moves the figure most, as far as the coverage factor says: exact
 * where the figure is linear, and with the bend along that direction where it is not (the first-order point of a given chance). Where
 * the bend is strong, {@link Ladder}. The limits agree with drawn ones within 5 % of their width, but for what is called not linear.
 * Source: JCGM 100:2008, 5.1.2 note on terms of higher order and G.1; Hasofer and Lind, Journal of Engineering Mechanics 100 (1974), from memory.
 */
export function pointLimits(
  scope: MotorScope,
  joint: Joint,
  reading: number,
  metered: Metered,
  point: OperatingPoint,
): PointLimits {
  const estimator = new Estimator(scope, joint, reading, metered);
  const figures = pointFigures(joint, point);
  let ladder: Ladder | undefined;
  const climb = (of: Estimated): Limits | undefined => {
    ladder ??= new Ladder(estimator, point.loadFraction.parts);
    return ladder.limits(of);
  };
  const leads = Math.abs(correlation(point.loadFraction, point.efficiency)) > LEADS;
  const tried: TriedDirection[] = [];
  const limitsOf = (of: Estimated, climbs: boolean): BentLimits => {
    const figure = figures[of];
    const factor = coverageFactor(rectangularShare(figure.parts, scope.sources));
    const even = straight(figure, factor);
    // Where the input was read, it is that of the meter.
    if (standardUncertainty(figure) === 0 || (of === 'input' && metered.inputPower)) return possible(of, even);
    let near = tried.find(({ quantity }) => Math.abs(correlation(figure, quantity)) > NEAR);
    if (!near) {
      near = tryAlong(estimator, of, figure, factor);
      tried.push(near);
    }
    return possible(of, holding(figure.value, bent(of, figure, even, near, leads, climbs ? climb : undefined), even));
  };
  // A loss bends by itself, an efficiency with the load where the load does.
  const load = limitsOf('load', true);
  const efficiency = limitsOf('efficiency', load.bend > LOAD_BENDS && hangsOnLoad(point));
  const input = limitsOf('input', true);
  const loss = limitsOf('loss', false);
  return { load, efficiency, input, loss, linear: Math.max(load.bend, efficiency.bend, input.bend) < TOO_STRONG };
}

/**
 * Limits that hold their own figure. Where both sides of a figure bend the same way by more than its half-width, what was tried on either side
 * lies beyond the figure: then they reach over what was tried and over the even limits as well.
 */
function holding(value: number, found: BentLimits, even: Limits): BentLimits {
  if (found.low <= value && value <= found.high) return found;
  return {
    low: Math.min(found.low, found.high, even.low),
    high: Math.max(found.low, found.high, even.high),
    bend: found.bend,
  };
}

/** No motor in use takes, gives or loses less than nothing, and none gives more than it takes: no limit lies beyond. */
function possible(of: Estimated, { low, high, bend }: BentLimits): BentLimits {
  return { low: Math.max(0, low), high: of === 'efficiency' ? Math.min(1, high) : high, bend };
}

/** The figures that limits are sought for, as the estimator gives them. */
export function pointFigures(joint: Joint, point: OperatingPoint): Readonly<Record<Estimated, Quantity>> {
  const { powerKw } = joint.machine.model.base;
  const share = (power: Quantity<'kW'>): Quantity => ({
    unit: '1',
    value: power.value / powerKw,
    parts: scaleParts(power.parts, 1 / powerKw),
  });
  return {
    load: point.loadFraction,
    input: share(point.inputPower),
    loss: share(point.losses.total),
    efficiency: point.efficiency,
  };
}

function hangsOnLoad({ loadFraction, efficiency }: OperatingPoint): boolean {
  const u = standardUncertainty(loadFraction);
  if (u < LOOSE * loadFraction.value) return false;
  return u > ROUGH * loadFraction.value || Math.abs(correlation(loadFraction, efficiency)) > CORRELATED;
}

interface BentLimits extends Limits {
  /** The larger bend as a share of the half-width. */
  readonly bend: number;
}

function straight({ value, parts }: Quantity, factor: number): BentLimits {
  const half = factor * standardUncertainty({ parts });
  return { low: value - half, high: value + half, bend: 0 };
}

/** The estimate made again on both sides along the direction of one figure; a side is absent where there is no such point. */
interface TriedDirection {
  readonly quantity: Quantity;
  readonly factor: number;
  readonly up: Readonly<Record<Estimated, number>> | undefined;
  readonly down: Readonly<Record<Estimated, number>> | undefined;
}

function tryAlong(estimator: Estimator, of: Estimated, quantity: Quantity, factor: number): TriedDirection {
  const { value, parts } = quantity;
  const u = standardUncertainty({ parts });
  const side = (sign: 1 | -1): TriedDirection['up'] => {
    const scores = direction(estimator.sources, parts, (sign * factor) / u);
    const at = (unknowns: Float64Array | undefined): TriedDirection['up'] => unknowns && estimator.figures(unknowns, scores);
    const found = at(estimator.step(scores)?.unknowns);
    // A step that lands far off may have overshot: the estimate itself would have halved it.
    return found && Math.abs(found[of] - value - sign * factor * u) < FAR * factor * u ? found : at(estimator.search(scores));
  };
  return { quantity, factor, up: side(1), down: side(-1) };
}

function correlation(a: Quantity, b: Quantity): number {
  return covariance(a, b) / (standardUncertainty(a) * standardUncertainty(b));
}

/** Limits by what was tried along the same direction or a near one, where the bend goes with the square of what the two share. */
function bent(
  of: Estimated,
  quantity: Quantity,
  even: Limits,
  tried: TriedDirection,
  leads: boolean,
  climb: ((of: Estimated) => Limits | undefined) | undefined,
): BentLimits {
  if (!tried.up || !tried.down) {
    const { low, high } = climb?.(of) ?? even;
    return { low, high, bend: Number.POSITIVE_INFINITY };
  }
  const half = (even.high - even.low) / 2;
  const shared = tried.quantity === quantity ? 1 : correlation(quantity, tried.quantity);
  const reach = shared * tried.factor * standardUncertainty(quantity);
  const ahead = (tried.up[of] - quantity.value - reach) / shared ** 2;
  const back = (tried.down[of] - quantity.value + reach) / shared ** 2;
  const [down, up] = shared > 0 ? [back, ahead] : [ahead, back];
  const bend = Math.max(Math.abs(up), Math.abs(down)) / half;
  const low = even.low + down;
  const high = even.high + up;
  const climbed = bend > STRONG[of] ? climb?.(of) : undefined;
  if (!climbed) return { low, high, bend };
  if (of !== 'efficiency' || leads) return { low: climbed.low, high: climbed.high, bend };
  // The one leaves out how the load bends, the other how the losses do: they err to opposite sides.
  return { low: (low + climbed.low) / 2, high: (high + climbed.high) / 2, bend };
}

function direction(sources: number, { at, by }: Parts, length: number): Float64Array {
  const scores = doubles(sources);
  for (let i = 0; i < at.length; i++) scores[at[i] as number] = length * (by[i] as number);
  return scores;
}
