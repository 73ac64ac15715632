/** A small repeatable source of randomness (mulberry32): the same seed always tells the same story. */
export class Random {
  #state: number;

  constructor(seed: number) {
    this.#state = seed >>> 0;
  }

  /** Uniform in [0, 1). */
  next(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let t = this.#state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  }

  /** Uniform between two values. */
  between(low: number, high: number): number {
    return low + (high - low) * this.next();
  }

  /** Normal with mean 0 and deviation 1, cut at ± 2.5. */
  normal(): number {
    let sum = -6;
    for (let i = 0; i < 12; i++) sum += this.next();
    return Math.max(-2.5, Math.min(2.5, sum));
  }

  /** One of several, each as likely. */
  pick<T>(choices: readonly [T, ...T[]]): T {
    return choices[Math.floor(this.next() * choices.length)] ?? choices[0];
  }
}
