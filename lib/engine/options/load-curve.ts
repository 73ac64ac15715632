/** Torque of a driven machine by given points, as the settings name it. */
export interface LoadPoint {
  /** Per cent of the motor's rated speed. */
  readonly speedPct: number;
  /** Per cent of the motor's rated torque. */
  readonly torquePct: number;
}

/** Torque at a speed, its slope there, and whether the points reach so far. */
interface CurveValue {
  readonly torquePct: number;
  readonly slope: number;
  readonly beyond: boolean;
}

/**
 * Torque of a load curve at a speed. Between the points a monotone cubic: it never leaves the range of two neighbours, so that no torque
 * turns negative, and it has no corner at a point. That matters, since points stand at rated speed, where old and new motor run, and a corner
 * there would give the speed ratio two slopes. Beyond the ends the law of the end is held: torque with speed to the power found there.
 *
 * Units: per cent of rated speed and torque; slope in per cent per per cent. Valid for: two points or more, speeds rising, torque not
 * negative. Source: F. N. Fritsch and J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300, slopes as weighted harmonic means (from memory).
 */
export function onCurve(points: readonly LoadPoint[], speedPct: number): CurveValue {
  const last = points.length - 1;
  const beyond = speedPct < at(points, 0).speedPct ? 0 : speedPct > at(points, last).speedPct ? last : undefined;
  if (beyond !== undefined) {
    const { speedPct: x, torquePct: y } = at(points, beyond);
    if (y === 0) return { torquePct: 0, slope: 0, beyond: true };
    const exponent = (tangent(points, beyond) * x) / y;
    const torquePct = y * (speedPct / x) ** exponent;
    return { torquePct, slope: speedPct > 0 ? (exponent * torquePct) / speedPct : 0, beyond: true };
  }
  let k = 0;
  while (k < last - 1 && speedPct > at(points, k + 1).speedPct) k++;
  const [from, to] = [at(points, k), at(points, k + 1)];
  const width = to.speedPct - from.speedPct;
  const rise = to.torquePct - from.torquePct;
  const [start, end] = [tangent(points, k) * width, tangent(points, k + 1) * width];
  const t = (speedPct - from.speedPct) / width;
  // Hermite form, written from the lower point, so that points of one torque give that torque exactly.
  const torquePct = from.torquePct + t * (start + t * (3 * rise - 2 * start - end + t * (start + end - 2 * rise)));
  const slope = (start + t * (2 * (3 * rise - 2 * start - end) + 3 * t * (start + end - 2 * rise))) / width;
  return { torquePct: Math.max(0, torquePct), slope, beyond: false };
}

/**
 * Power of the speed with which torque goes from one speed to another: the mean of the logarithmic slope over the way; at one and the same
 * speed the slope there. Units: per cent of rated speed. `undefined` where the curve has no torque.
 */
export function exponentBetween(points: readonly LoadPoint[], fromPct: number, toPct: number): number | undefined {
  const [from, to] = [onCurve(points, fromPct), onCurve(points, toPct)];
  if (!(from.torquePct > 0 && to.torquePct > 0 && fromPct > 0 && toPct > 0)) return undefined;
  if (Math.abs(toPct / fromPct - 1) < NEAR) return (from.slope * fromPct) / from.torquePct;
  return Math.log(to.torquePct / from.torquePct) / Math.log(toPct / fromPct);
}

/** Speeds nearer than this share are one: rounding would rule the quotient of the logarithms. */
const NEAR = 1e-7;

/** Slope at a point: between two pieces their weighted harmonic mean, 0 at a turn; at an end by the parabola, kept monotone. */
function tangent(points: readonly LoadPoint[], index: number): number {
  const last = points.length - 1;
  if (last === 1) return chord(points, 0);
  if (index === 0 || index === last) {
    const [near, next] = index === 0 ? [0, 1] : [last - 1, last - 2];
    const [d, e] = [chord(points, near), chord(points, next)];
    const [h, g] = [width(points, near), width(points, next)];
    // After a turn a parabola would run off steeply: there the last piece alone says how the torque goes on.
    if (d * e <= 0) return d;
    const slope = ((2 * h + g) * d - h * e) / (h + g);
    return slope * d <= 0 ? 0 : slope;
  }
  const [d, e] = [chord(points, index - 1), chord(points, index)];
  if (d * e <= 0) return 0;
  const [h, g] = [width(points, index - 1), width(points, index)];
  return (3 * (h + g)) / ((2 * g + h) / d + (g + 2 * h) / e);
}

function width(points: readonly LoadPoint[], piece: number): number {
  return at(points, piece + 1).speedPct - at(points, piece).speedPct;
}

function chord(points: readonly LoadPoint[], piece: number): number {
  return (at(points, piece + 1).torquePct - at(points, piece).torquePct) / width(points, piece);
}

/** Point of the list; the settings hold two at least. */
function at(points: readonly LoadPoint[], index: number): LoadPoint {
  const point = points[index];
  if (!point) throw new RangeError(`load curve has no point ${index}`);
  return point;
}
