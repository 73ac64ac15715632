import { describe, expect, it } from 'vitest';
import { probabilityWithin } from '@/lib/engine/options/value';
import { exact, type Parts, type Quantity } from '@/lib/engine/quantity/quantity';
import type { Price } from '@/lib/engine/settings';
import { money, POOR, PRICES, payback, type Trial, weigh } from '../options/weighing';
import { SETTINGS } from '../support/study';

/** Numbers from 0 to 1 that are the same each time (mulberry32, public domain). */
function uniform(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Standard normal numbers by the polar form of G. E. P. Box and M. E. Muller, 1958. */
function normal(seed: number): () => number {
  const next = uniform(seed);
  return () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
}

/** A share counted in so many trials has about this standard deviation. */
const spread = (share: number, trials: number): number => Math.sqrt(Math.max(share * (1 - share), 1 / trials) / trials);

const quantity = <U extends 'currency' | 'currency/a'>(
  value: number,
  unit: U,
  at: readonly number[],
  by: readonly number[],
): Quantity<U> => ({
  unit,
  value,
  parts: { at, by } satisfies Parts,
});

/** The same chance by propagating distributions (JCGM 101:2008): each source drawn once, both quantities moved by it, paybacks counted. */
function counted(saving: Quantity<'currency/a'>, cost: Quantity<'currency'>, limit: number, trials: number): number {
  const draw = normal(20_260_101);
  let within = 0;
  const sources = Math.max(-1, ...saving.parts.at, ...cost.parts.at) + 1;
  for (let trial = 0; trial < trials; trial++) {
    const z = Array.from({ length: sources }, draw);
    const at = (of: Quantity): number =>
      of.parts.at.reduce((sum, source, index) => sum + (of.parts.by[index] ?? 0) * (z[source] ?? 0), of.value);
    const [saved, spent] = [at(saving), at(cost)];
    if (saved > 0 && spent / saved <= limit) within += 1;
  }
  return within / trials;
}

const TRIALS = 20_000;

describe('the chance that the payback keeps the limit, against a count of drawn paybacks (JCGM 101)', () => {
  it.each([
    ['sure of the cost', quantity(1000, 'currency/a', [0], [200]), exact(2800, 'currency')],
    ['sure of the saving', exact(1000, 'currency/a'), quantity(3100, 'currency', [0], [465])],
    ['apart', quantity(1000, 'currency/a', [0, 1], [150, 80]), quantity(2900, 'currency', [2], [435])],
    ['sharing a source that helps both', quantity(1000, 'currency/a', [0], [200]), quantity(2900, 'currency', [0], [500])],
    ['sharing a source that parts them', quantity(1000, 'currency/a', [0], [200]), quantity(2900, 'currency', [0], [-500])],
    ['hardly ever', quantity(500, 'currency/a', [0], [100]), quantity(2900, 'currency', [1], [435])],
  ] as const)('%s', (_, saving, cost) => {
    const formula = probabilityWithin(saving, cost, 3);
    const drawn = counted(saving, cost, 3, TRIALS);
    expect(Math.abs(formula - drawn)).toBeLessThan(4 * spread(formula, TRIALS));
  });

  it('of a weighed option, whose saving and cost hold every source of the motor', () => {
    for (const share of [0.7, 1, 1.5]) {
      const base = weigh({ ...POOR, prices: PRICES }).option('replace', 'now');
      const limit = share * payback(base);
      const policy = { ...SETTINGS.policy, maxSimplePaybackYears: limit };
      const option = weigh({ ...POOR, prices: PRICES, settings: { policy } }).option('replace', 'now');
      const { money_saved, cost } = option.figures;
      if (!money_saved) throw new Error('the option has no saving');
      const drawn = counted(money_saved, cost, limit, TRIALS);
      expect(Math.abs((option.probabilityWithinPolicy ?? Number.NaN) - drawn)).toBeLessThan(4 * spread(drawn, TRIALS));
    }
  });
});

describe('the doubt of saving and cost, against motors weighed again with drawn prices and loads', () => {
  const draws = 300;

  /** Mean and standard deviation of a figure over trials that are each weighed in full. */
  function over(figure: (trial: Trial) => number, trials: readonly Trial[]): { readonly mean: number; readonly sd: number } {
    const values = trials.map(figure);
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    return { mean, sd: Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1)) };
  }

  it('listed prices of motor and removal, each with its 15 %', () => {
    const draw = normal(7);
    const scaledBy = (line: Price, motor: number, removal: number): Price =>
      line.item === 'motor'
        ? { ...line, price: line.price * motor }
        : line.item === 'removal-install'
          ? { ...line, price: line.price * removal }
          : line;
    const trials = Array.from({ length: draws }, (): Trial => {
      const [motor, removal] = [1 + 0.15 * draw(), 1 + 0.15 * draw()];
      return { ...POOR, prices: PRICES.map((line) => scaledBy(line, motor, removal)) };
    });
    const { mean, sd } = over((trial) => weigh(trial).option('replace', 'now').figures.cost.value, trials);
    const { cost } = weigh({ ...POOR, prices: PRICES }).option('replace', 'now').figures;
    const u = Math.hypot(...cost.parts.by);
    // The deviation of so many draws is known to about 1/sqrt(2 n).
    expect(Math.abs(sd / u - 1)).toBeLessThan(4 / Math.sqrt(2 * draws));
    expect(Math.abs(mean - cost.value)).toBeLessThan((4 * u) / Math.sqrt(draws));
  });

  it('the load that both motors share', () => {
    const draw = normal(11);
    const doubt = 0.05;
    const trials = Array.from({ length: draws }, (): Trial => ({ ...POOR, load: 0.75 * (1 + doubt * draw()), loadDoubt: 0 }));
    const { sd } = over((trial) => money(weigh(trial).option('replace', 'now')), trials);
    const shared = weigh({ ...POOR, loadDoubt: doubt }).option('replace', 'now').figures.money_saved;
    const without = weigh({ ...POOR, loadDoubt: 0 }).option('replace', 'now').figures.money_saved;
    if (!shared || !without) throw new Error('the option has no saving');
    const u = Math.sqrt(Math.hypot(...shared.parts.by) ** 2 - Math.hypot(...without.parts.by) ** 2);
    expect(Math.abs(sd / u - 1)).toBeLessThan(4 / Math.sqrt(2 * draws) + 0.05);
  });
});
