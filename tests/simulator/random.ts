/** Numbers by chance from a seed: the same seed gives the same world. */
export class Chance {
  #state: number;

  constructor(seed: number) {
    this.#state = (seed ^ 0x9e3779b9) >>> 0;
    for (let i = 0; i < 8; i++) this.unit();
  }

  /** Even between 0 and 1 (32-bit mixing of a counter). */
  unit(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(this.#state ^ (this.#state >>> 15), this.#state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  }

  between(low: number, high: number): number {
    return low + (high - low) * this.unit();
  }

  /** Standard normal (polar angle and radius). */
  normal(mean = 0, sd = 1): number {
    return mean + sd * Math.sqrt(-2 * Math.log(1 - this.unit())) * Math.cos(2 * Math.PI * this.unit());
  }

  /** Normal drawn again until it lies within the limits. */
  normalWithin(mean: number, sd: number, low: number, high: number): number {
    for (;;) {
      const value = this.normal(mean, sd);
      if (value >= low && value <= high) return value;
    }
  }

  happens(probability: number): boolean {
    return this.unit() < probability;
  }

  pick<T>(from: readonly T[]): T {
    const value = from[Math.floor(this.unit() * from.length)];
    if (value === undefined) throw new Error('nothing to pick from');
    return value;
  }

  /** Picks by weight. */
  weighted<T>(from: readonly (readonly [T, number])[]): T {
    let left = this.unit() * from.reduce((sum, [, weight]) => sum + weight, 0);
    for (const [value, weight] of from) {
      left -= weight;
      if (left < 0) return value;
    }
    const last = from.at(-1);
    if (last === undefined) throw new Error('nothing to pick from');
    return last[0];
  }
}
