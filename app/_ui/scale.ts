/** A linear scale from values to lengths of a chart. */
export function linear(from: readonly [number, number], to: readonly [number, number]): (value: number) => number {
  const slope = (to[1] - to[0]) / (from[1] - from[0] || 1);
  return (value) => to[0] + (value - from[0]) * slope;
}

/** Round ticks that cover a range: about `count` of them, at 1, 2 or 5 times a power of ten. */
export function ticks(low: number, high: number, count = 6): number[] {
  if (!(high > low)) return [low];
  const rough = (high - low) / count;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((factor) => factor * power).find((candidate) => candidate >= rough) ?? rough;
  const first = Math.ceil(low / step - 1e-9) * step;
  const all: number[] = [];
  for (let at = first; at <= high + step * 1e-9; at += step) all.push(Number(at.toPrecision(12)));
  return all;
}
