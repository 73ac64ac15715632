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

/** A logarithmic scale from values above nothing to lengths of a chart. */
export function logarithmic(from: readonly [number, number], to: readonly [number, number]): (value: number) => number {
  const scale = linear([Math.log(from[0]), Math.log(from[1])], to);
  return (value) => scale(Math.log(value));
}

/** Ticks of a logarithmic scale: 1, 2 and 5 times the powers of ten within it. */
export function logarithmicTicks(low: number, high: number): number[] {
  const all: number[] = [];
  for (let power = Math.floor(Math.log10(low)); power <= Math.ceil(Math.log10(high)); power++)
    for (const factor of [1, 2, 5]) {
      const tick = Number((factor * 10 ** power).toPrecision(12));
      if (tick >= low * (1 - 1e-9) && tick <= high * (1 + 1e-9)) all.push(tick);
    }
  return all;
}
