import { IRR, NPV } from '@formulajs/formulajs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitsMoney, fromMoney, rounded, sumMoney, toMoney } from '@/lib/engine/money/money';
import { paybackTime } from '@/lib/engine/money/payback';
import { netPresentValue } from '@/lib/engine/money/present-value';
import { rateOfReturn } from '@/lib/engine/money/rate-of-return';

/** Flows of an ordinary investment: one outlay, then yearly savings. */
const investment = fc
  .tuple(
    fc.double({ min: 100, max: 1e6, noNaN: true }),
    fc.array(fc.double({ min: 1, max: 1e5, noNaN: true }), { minLength: 1, maxLength: 25 }),
  )
  .map(([outlay, savings]) => [-outlay, ...savings]);

describe('money', () => {
  it('rounds to the nearest hundredth, halves away from zero, as decimal numbers are read', () => {
    for (const [amount, minor] of [
      [1.005, 101],
      [-1.005, -101],
      [2.675, 268],
      [0.004999, 0],
      [-0.001, 0],
      [1e9 + 0.125, 100000000013],
    ] as const)
      expect(toMoney(amount)).toBe(minor);
    expect(Object.is(toMoney(-0.001), -0)).toBe(false);
  });
  it('gives two decimals back and adds without drift', () => {
    expect(fromMoney(sumMoney(new Array(10).fill(toMoney(0.1))))).toBe(1);
    expect(rounded(1180.129)).toBe(1180.13);
  });
  it('refuses what cannot be kept exactly', () => {
    for (const amount of [Number.NaN, Number.POSITIVE_INFINITY, 1e14, -1e300]) {
      expect(fitsMoney(amount)).toBe(false);
      expect(() => toMoney(amount)).toThrow(RangeError);
    }
    expect(fitsMoney(9e13)).toBe(true);
  });
});

describe('present value against a spreadsheet library (formulajs NPV, whose first flow falls at the end of year 1)', () => {
  it('agrees for any flows and rates', () => {
    fc.assert(
      fc.property(investment, fc.double({ min: 0.001, max: 0.5, noNaN: true }), (flows, rate) => {
        const [start, ...later] = flows;
        const reference = (start ?? 0) + (NPV(rate, ...later) as number);
        expect(netPresentValue(flows, rate)).toBeCloseTo(reference, 5);
      }),
    );
  });
  it('with a rate of zero is the plain sum, without flows nothing', () => {
    expect(netPresentValue([-100, 30, 30, 30], 0)).toBe(-10);
    expect(netPresentValue([], 0.08)).toBe(0);
  });
});

describe('rate of return', () => {
  it('agrees with a spreadsheet library (formulajs IRR) on ordinary investments', () => {
    for (const flows of [
      [-100000, 30000, 30000, 30000, 30000, 30000],
      [-80000, 10000, 20000, 30000, 40000, 50000],
      [-4300, 1180, 1180, 1180, 1180],
    ]) {
      const found = rateOfReturn(flows);
      expect(found.kind).toBe('one');
      if (found.kind === 'one') expect(found.rate).toBeCloseTo(IRR(flows, 0.1) as number, 6);
    }
  });
  it('makes the present value zero', () => {
    fc.assert(
      fc.property(investment, (flows) => {
        const found = rateOfReturn(flows);
        if (found.kind !== 'one') return;
        const scale = flows.reduce((sum, flow, year) => sum + Math.abs(flow) / (1 + found.rate) ** year, 0);
        expect(Math.abs(netPresentValue(flows, found.rate)) / scale).toBeLessThan(1e-9);
      }),
    );
  });
  it('is absent when flows never change sign', () => {
    for (const flows of [[], [0, 0], [100, 20], [-100, -20], [-100]]) expect(rateOfReturn(flows).kind).toBe('none');
  });
  it('is negative when less comes back than was spent, and absent when next to nothing does', () => {
    const found = rateOfReturn([-100, 40, 40]);
    expect(found.kind === 'one' && found.rate).toBeCloseTo(IRR([-100, 40, 40], -0.1) as number, 6);
    expect(rateOfReturn([-1e9, 1e-3]).kind).toBe('none');
  });
  it('names the negative rate beside the positive one where the running sum changes sign more than once, as Norstrom’s rule is silent then', () => {
    const flows = [-100, 150, -150, 160, 200, -120];
    const found = rateOfReturn(flows);
    expect(found.kind).toBe('several');
    if (found.kind !== 'several') return;
    expect(found.rates.map((rate) => Math.sign(rate))).toEqual([-1, 1]);
    for (const rate of found.rates)
      expect(flows.reduce((sum, flow, year) => sum + flow / (1 + rate) ** year, 0)).toBeCloseTo(0, 6);
  });
  it('names every rate when there are several: 25 % and 400 % (J. H. Lorie and L. J. Savage, 1955, from memory)', () => {
    const found = rateOfReturn([-1600, 10000, -10000]);
    expect(found.kind).toBe('several');
    if (found.kind === 'several') {
      expect(found.rates).toHaveLength(2);
      expect(found.rates[0]).toBeCloseTo(0.25, 9);
      expect(found.rates[1]).toBeCloseTo(4, 9);
    }
  });
  it('of a flow that takes in first is that of a loan, since the present value rises with it (formulajs IRR and NPV)', () => {
    const flows = [1000, -300, -300, -300, -300];
    const found = rateOfReturn(flows);
    expect(found.kind).toBe('loan');
    if (found.kind !== 'loan') return;
    expect(found.rate).toBeCloseTo(IRR(flows, 0.1) as number, 6);
    const [first = 0, ...later] = flows;
    const worth = (rate: number) => first + Number(NPV(rate, ...later));
    // A rate above the discount rate would speak for a return; here what is worth more is the other side.
    expect(worth(found.rate - 0.02)).toBeLessThan(0);
    expect(worth(found.rate + 0.02)).toBeGreaterThan(0);
  });
  it('takes the only positive rate where the running sum changes sign once (roots of −100 + 150 v − 20 v² by hand)', () => {
    const found = rateOfReturn([-100, 150, -20]);
    const v = (150 - Math.sqrt(150 ** 2 - 4 * 20 * 100)) / 40;
    expect(found.kind === 'one' && found.rate).toBeCloseTo(1 / v - 1, 9);
  });
});

describe('time of payback', () => {
  it('lies where the discounted sum is zero: between the years around it', () => {
    fc.assert(
      fc.property(investment, fc.double({ min: 0, max: 0.3, noNaN: true }), (flows, rate) => {
        const found = paybackTime(flows, rate);
        const whole = netPresentValue(flows, rate);
        if (!found) {
          expect(whole).toBeLessThan(1e-6);
          return;
        }
        expect(netPresentValue(flows.slice(0, Math.floor(found.years) + 1), rate)).toBeLessThan(1e-6 * -(flows[0] ?? 0));
        expect(netPresentValue(flows.slice(0, Math.ceil(found.years) + 1), rate)).toBeGreaterThan(1e-6 * (flows[0] ?? 0));
      }),
    );
  });
  it('is zero when nothing is spent, and absent when it never comes', () => {
    expect(paybackTime([0, 5], 0.08)?.years).toBe(0);
    expect(paybackTime([], 0.08)?.years).toBe(0);
    expect(paybackTime([-100, 5, 5], 0.08)).toBeUndefined();
    expect(paybackTime([-100, -5, -5], 0.08)).toBeUndefined();
  });
});
