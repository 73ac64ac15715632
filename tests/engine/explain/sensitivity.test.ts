import { describe, expect, it } from 'vitest';
import { evaluateMotor } from '@/lib/engine';
import { type Lever, moved, type Question, statedHours } from '@/lib/engine/explain/lever';
import { optionBreakEven, optionCurve, optionTornado, usualRanges } from '@/lib/engine/explain/sensitivity';
import { motorOf, study } from '../support/study';
import { BY_TIME } from '../tariff/tariffs';

const ask = (settings: Parameters<typeof study>[0] = {}): Question => ({
  motor: motorOf({
    plate: { nominalEfficiencyPct: 87, drivenMachine: 'pump', flowControl: 'drive', driveFed: false },
    reading: { inputPowerKw: 30, currentA: 49, shaftSpeedRpm: undefined },
  }),
  study: study(settings),
});

const optionsOf = ({ motor, study: context }: Question) => evaluateMotor(motor, context).options;
const replacement = (question: Question) => {
  const found = optionsOf(question).find((option) => option.action === 'replace' && option.timing === 'now');
  if (!found) throw new Error('no replacement is offered');
  return found;
};
const question = ask();
const { id } = replacement(question);

/** All of them: one that is added does not compile until it stands here. */
const LEVERS = Object.keys({
  'energy-price': true,
  'demand-price': true,
  hours: true,
  cost: true,
  'failure-rate': true,
  'discount-rate': true,
} satisfies Record<Lever, true>) as Lever[];

describe('levers', () => {
  it('move the prices, hours and costs that they name, and leave the question as it was', () => {
    const before = JSON.stringify(question);
    const saved = replacement(question).figures;
    for (const lever of LEVERS) moved(question, lever, 0.5);
    expect(JSON.stringify(question)).toBe(before);
    const half = replacement(moved(question, 'hours', 0.5)).figures;
    expect(half.energy_saved?.value).toBeCloseTo((saved.energy_saved?.value ?? 0) / 2, 6);
    expect(half.demand_saved?.value).toBeCloseTo(saved.demand_saved?.value ?? 0, 9);
    const dear = replacement(moved(question, 'cost', 2)).figures;
    expect(dear.cost.value).toBeCloseTo(2 * saved.cost.value, 6);
    const { settings } = moved(question, 'energy-price', 3).study;
    expect(settings.energyPricePerKwh).toBeCloseTo(0.33, 12);
  });
  it('move a tariff’s energy prices as they move the flat one', () => {
    const byTime = ask({ tariffs: { North: BY_TIME } });
    const once = replacement(byTime).figures.money_saved?.value ?? 0;
    expect(replacement(moved(byTime, 'energy-price', 2)).figures.money_saved?.value).toBeCloseTo(2 * once, 4);
  });
  it('know the hours of the profile in force', () => {
    expect(statedHours(question)).toBe(6000);
    const profile = motorOf({
      reading: {
        duty: [
          { fraction: 1, hoursPerYear: 3000 },
          { fraction: 0.5, hoursPerYear: 1000 },
        ],
      },
    });
    expect(statedHours({ motor: profile, study: question.study })).toBe(4000);
  });
});

describe('the tornado of an option', () => {
  it('has every lever, widest first, and the price works the way it must', () => {
    const { base, bars } = optionTornado(question, id, 'net-present-value');
    expect(base).toBeCloseTo(replacement(question).figures.net_present_value?.value ?? Number.NaN, 9);
    expect(bars.map((bar) => bar.id).sort()).toEqual([...LEVERS].sort());
    const widths = bars.map((bar) => bar.width);
    expect(widths).toEqual([...widths].sort((a, b) => b - a));
    const bar = (lever: string) => bars.find((one) => one.id === lever);
    expect(bar('energy-price')?.atHigh).toBeGreaterThan(bar('energy-price')?.atLow ?? 0);
    expect(bar('cost')?.atHigh).toBeLessThan(bar('cost')?.atLow ?? 0);
    expect(bar('discount-rate')?.atHigh).toBeLessThan(bar('discount-rate')?.atLow ?? 0);
  });
  it('of an option that is not offered has no base and no width', () => {
    const { base, bars } = optionTornado(question, 'replace-now-999-premium', 'simple-payback');
    expect(base).toBeUndefined();
    expect(bars.every((bar) => bar.width === 0)).toBe(true);
  });
  it('asks for no more hours than a year has', () => {
    const busy = { ...question, motor: { ...question.motor, hoursPerYear: 8760 } };
    const hours = usualRanges(busy).find((range) => range.id === 'hours');
    expect((hours?.high ?? 2) * 8760).toBeLessThanOrEqual(8784);
  });
});

describe('the break-even of an option', () => {
  it('by price, hours, cost and rate: there the value is nothing, and the rate is the rate of return', () => {
    for (const lever of ['energy-price', 'hours', 'cost', 'discount-rate'] as const) {
      const { found } = optionBreakEven(question, id, lever, 'worth-nothing');
      expect(found.kind, lever).toBe('at');
      if (found.kind !== 'at') continue;
      const there = replacement(moved(question, lever, found.value)).figures.net_present_value?.value ?? Number.NaN;
      expect(Math.abs(there), lever).toBeLessThan(0.02);
      if (lever === 'discount-rate') expect(found.value).toBeCloseTo(replacement(question).internalRateOfReturn ?? Number.NaN, 4);
    }
  });
  it('by the limit of the payback is where the payback is that limit, in words of price and hours', () => {
    const { policy } = question.study.settings;
    for (const lever of ['energy-price', 'hours'] as const) {
      const { found, stated } = optionBreakEven(question, id, lever, 'payback-limit');
      if (found.kind !== 'at') throw new Error(`no break-even by ${lever}`);
      const there = replacement(moved(question, lever, found.value)).figures.simple_payback?.value;
      expect(there).toBeCloseTo(policy.maxSimplePaybackYears, 6);
      expect(stated).toBeCloseTo(found.value * (lever === 'hours' ? 6000 : 0.11), 9);
    }
    const rising = optionBreakEven(question, id, 'cost', 'payback-limit').found;
    expect(rising).toMatchObject({ kind: 'at', rising: false });
  });
  it('names no price under a tariff, and nothing for an option that is not offered', () => {
    const byTime = ask({ tariffs: { North: BY_TIME } });
    expect(optionBreakEven(byTime, id, 'energy-price', 'worth-nothing')).toMatchObject({
      found: { kind: 'at' },
      stated: undefined,
    });
    expect(optionBreakEven(question, 'none', 'energy-price', 'worth-nothing').found).toEqual({ kind: 'unknown' });
  });
});

describe('the curve of an option', () => {
  it('by hours: a higher share of the hours never lengthens the payback of an energy saving', () => {
    const curve = optionCurve(question, id, 'hours', [0, 0.25, 0.5, 1, 1.4]);
    expect(curve[0]?.simplePayback).toBeUndefined();
    const paybacks = curve.slice(1).map((point) => point.simplePayback ?? Number.NaN);
    paybacks.forEach((years, index) => {
      if (index > 0) expect(years).toBeLessThan(paybacks[index - 1] ?? 0);
    });
  });
});

describe('the doubt of the savings-to-investment ratio', () => {
  /** A number drawn from a standard normal distribution, the same each time: twelve uniform ones less six, by a linear congruence. */
  function draws(count: number): number[] {
    let state = 12345;
    const next = () => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return state / 2 ** 32;
    };
    return Array.from({ length: count }, () => Array.from({ length: 12 }, next).reduce((sum, part) => sum + part, -6));
  }
  const rated = question.motor.plate.ratedPowerKw;
  const listed = question.study.prices.prices.find(
    (line) =>
      line.item === 'motor' &&
      line.poles === 4 &&
      line.enclosure === 'enclosed' &&
      Math.abs((line.ratedPowerKw ?? 0) / rated - 1) < 0.01,
  );
  const quoted = (price: number): Question => ({
    ...question,
    motor: { ...question.motor, plate: { ...question.motor.plate, quotedPrice: price } },
  });

  it('is that of motors evaluated again at drawn prices, as far as the price goes (JCGM 101)', () => {
    if (!listed) throw new Error('the shipped list has no such motor');
    const ratio = replacement(question);
    const sureRatio = replacement(quoted(listed.price));
    const count = 150;
    const drawn = draws(count).map((z) => replacement(quoted(listed.price * (1 + 0.05 * z))));
    const spread = (values: readonly number[]) => {
      const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
      return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
    };
    const part = (all: number | undefined, rest: number | undefined) => Math.sqrt((all ?? 0) ** 2 - (rest ?? 0) ** 2);
    // Drawn with a third of the 15 % of a listed price, so that the quotient stays straight; a deviation is known to about 1/sqrt(2 n).
    const allowed = 4 / Math.sqrt(2 * count);
    const doubt = (option: typeof ratio) => option.savingsToInvestmentDoubt?.();
    const byRatio =
      (3 * spread(drawn.map((option) => option.savingsToInvestment ?? Number.NaN))) / part(doubt(ratio), doubt(sureRatio));
    expect(Math.abs(byRatio - 1)).toBeLessThan(allowed);
  });
});
