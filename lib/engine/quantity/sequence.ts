/** Positive- and negative-sequence magnitudes of three phasors that add up to zero, in the unit of the three. */
interface Sequences {
  readonly positive: number;
  readonly negative: number;
}

/**
 * Sequence components from three magnitudes alone: the three line-to-line voltages, or the three line currents of a motor without a
 * neutral, close a triangle, so that their angles follow.
 *
 *   U₁² = (a² + b² + c²) / 6 + 2 A / √3,  U₂² = (a² + b² + c²) / 6 − 2 A / √3,  A the area of the triangle
 *
 * Units: those of the magnitudes. Valid for: magnitudes above zero that can close a triangle; undefined otherwise, since then one of the
 * three was misread (or, for currents, a neutral carries some). Phase order does not matter. Near balance the difference loses about half
 * of the digits, which leaves eight.
 * Source: closed form of IEC 61000-4-30 and CIGRE (from memory), in its equal form by the triangle's area; the area by Heron's formula in
 * the order that keeps its digits (Kahan).
 */
export function sequenceMagnitudes(values: readonly [number, number, number]): Sequences | undefined {
  const [x, y, z] = values;
  const a = Math.max(x, y, z);
  const b = Math.max(Math.min(x, y), Math.min(Math.max(x, y), z));
  const c = Math.min(x, y, z);
  if (!(c > 0) || !Number.isFinite(a) || c < a - b) return undefined;
  const area = Math.sqrt(Math.max(0, (a + (b + c)) * (c - (a - b)) * (c + (a - b)) * (a + (b - c)))) / 4;
  const squares = (a * a + b * b + c * c) / 6;
  const part = (2 * area) / Math.sqrt(3);
  return { positive: Math.sqrt(squares + part), negative: Math.sqrt(Math.max(0, squares - part)) };
}
