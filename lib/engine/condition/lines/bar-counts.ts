import type { MotorScope } from '../../context';
import type { Machine } from '../../machine/model';
import { NORMAL_FACTOR } from '../../quantity/coverage';
import { standardUncertainty } from '../../quantity/quantity';
import { slotLine } from './electrical';
import { lineOf } from './expected';
import type { Line, Rotation } from './line';
import { distance, type PartingPoint, partingPoint, STEPS_APART } from './separation';

/** A count that is only estimated is taken to be right within so many bars (common practice). */
const NEIGHBOURS = 10;
/** Bars for each stator slot where no count is known at all: cages are built with rather fewer or more bars than slots (common practice). */
const SHARE_OF_SLOTS = [0.65, 1.35] as const;

/** One count of bars that explains an observed line, and the slot line by which it does. */
interface BarFit {
  readonly bars: number;
  readonly line: Line;
  /** Observed less expected, Hz. */
  readonly offHz: number;
  /** True for the count that the sheet states. */
  readonly stated: boolean;
  /** True when this reading and the first in the list are one frequency at every speed: only counting the bars decides. */
  readonly together: boolean;
  /** Speed and load at which this line would lie apart from the first in the list. */
  readonly partedAt?: PartingPoint | undefined;
}

/** Every count of bars that fits one observed line. */
export interface ObservedFits {
  readonly observedHz: number;
  readonly fits: readonly BarFit[];
}

/**
 * Which counts of rotor bars would put a slot line where lines were observed. The stated count stands first where it fits, then by
 * distance. Neighbouring counts with a line of dynamic eccentricity often give the same frequency at every speed; others part as the
 * slip grows. Empty when neither bars nor slots are known. Valid for: cage motors. Source: slot lines as {@link slotLine}.
 */
export function fittingBarCounts(
  scope: MotorScope,
  given: {
    readonly machine: Machine;
    readonly rotation: Rotation;
    readonly resolutionHz: number;
    readonly observedHz: readonly number[];
    readonly bars: number | undefined;
    readonly slots: number | undefined;
  },
): readonly ObservedFits[] {
  const range = rangeOf(given.bars, given.slots);
  if (!range) return [];
  const lines: { bars: number; line: Line }[] = [];
  for (let bars = range[0]; bars <= range[1]; bars++)
    for (const order of [-3, -1, 1, 3])
      for (const turn of [0, -1, 1] as const)
        lines.push({ bars, line: lineOf(scope, slotLine(bars, turn, order), given.rotation) });
  return given.observedHz
    .map((observedHz) => ({ observedHz, fits: fitsFor(observedHz, lines, given) }))
    .filter(({ fits }) => fits.length > 0);
}

function rangeOf(bars: number | undefined, slots: number | undefined): readonly [number, number] | undefined {
  if (bars !== undefined) return [Math.max(4, bars - NEIGHBOURS), bars + NEIGHBOURS];
  return slots === undefined
    ? undefined
    : [Math.max(4, Math.ceil(SHARE_OF_SLOTS[0] * slots)), Math.floor(SHARE_OF_SLOTS[1] * slots)];
}

function fitsFor(
  observedHz: number,
  lines: readonly { bars: number; line: Line }[],
  given: { machine: Machine; rotation: Rotation; resolutionHz: number; bars: number | undefined },
): BarFit[] {
  const off = (line: Line) => observedHz - line.frequency.value;
  const fitting = lines
    .filter(({ line }) => Math.abs(off(line)) <= given.resolutionHz + NORMAL_FACTOR * standardUncertainty(line.frequency))
    .sort(
      (a, b) => Number(b.bars === given.bars) - Number(a.bars === given.bars) || Math.abs(off(a.line)) - Math.abs(off(b.line)),
    );
  const leading = fitting[0];
  return fitting.map(({ bars, line }) => {
    const apart = leading && distance(leading.line, line);
    const sameMultiples =
      leading !== undefined &&
      leading.line.supplyMultiple.value === line.supplyMultiple.value &&
      leading.line.shaftMultiple.value === line.shaftMultiple.value;
    const neededHz = STEPS_APART * given.resolutionHz + NORMAL_FACTOR * (apart?.u ?? 0);
    return {
      bars,
      line,
      offHz: off(line),
      stated: bars === given.bars,
      together: sameMultiples && line !== leading?.line,
      partedAt: leading && !sameMultiples ? partingPoint(leading.line, line, given, neededHz) : undefined,
    };
  });
}
