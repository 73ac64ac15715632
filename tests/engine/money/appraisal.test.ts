import { DDB, FV, MIRR, NPV, PV, SLN } from '@formulajs/formulajs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as $ from '@/lib/engine/generated/money';
import { appraise, type Stated } from '@/lib/engine/money/appraisal';
import { breakEven } from '@/lib/engine/money/break-even';
import { writtenOff } from '@/lib/engine/money/depreciation';
import { incrementalAnalysis } from '@/lib/engine/money/incremental';
import { modifiedRateOfReturn } from '@/lib/engine/money/modified-rate';
import { netPresentValue } from '@/lib/engine/money/present-value';
import { taxTerms } from '@/lib/engine/money/tax-relief';
import { tornado } from '@/lib/engine/money/tornado';
import { discountedYears } from '@/lib/engine/options/shelf';

const rate = fc.double({ min: 0.001, max: 0.4, noNaN: true });
/** Whole hundredths, as money has them. */
const flows = fc.array(
  fc.integer({ min: -1e7, max: 1e7 }).map((minor) => minor / 100),
  { minLength: 2, maxLength: 20 },
);
const of = (stated: Stated): number => (stated.kind === 'value' ? stated.value : Number.NaN);

describe('modified rate of return', () => {
  it('agrees with a spreadsheet library (formulajs MIRR) where one outlay comes first', () => {
    // Elsewhere that function closes the gaps between outlays: of 0, −1, 0, 1 at 0.1 % it makes 0, where 1.001^(1/3) − 1 is right.
    const invested = fc.tuple(
      fc.integer({ min: 1, max: 1e7 }),
      fc.array(fc.integer({ min: 0, max: 1e6 }), { minLength: 1, maxLength: 15 }),
    );
    fc.assert(
      fc.property(invested, rate, rate, ([outlay, income], finance, reinvest) => {
        const given = [-outlay, ...income];
        const found = modifiedRateOfReturn(given, finance, reinvest);
        if (income.every((flow) => flow === 0)) expect(found).toBeUndefined();
        else expect((1 + (found ?? Number.NaN)) / (1 + (MIRR(given, finance, reinvest) as number))).toBeCloseTo(1, 9);
      }),
    );
    expect(modifiedRateOfReturn([0, -1, 0, 1], 0.001, 0.001)).toBeCloseTo(1.001 ** (1 / 3) - 1, 12);
  });
  it('for any flows is its definition by present and future worth (formulajs NPV, each flow in its own year)', () => {
    fc.assert(
      fc.property(flows, rate, rate, (given, finance, reinvest) => {
        const found = modifiedRateOfReturn(given, finance, reinvest);
        const earned = NPV(reinvest, ...given.map((flow) => Math.max(flow, 0))) as number;
        const spent = NPV(finance, ...given.map((flow) => Math.min(flow, 0))) as number;
        const years = given.length - 1;
        if (earned <= 0 || spent >= 0) expect(found).toBeUndefined();
        else {
          const growth = (-earned * (1 + reinvest) ** given.length) / (spent * (1 + finance));
          expect((1 + (found ?? Number.NaN)) / growth ** (1 / years)).toBeCloseTo(1, 9);
        }
      }),
    );
  });
  it('is the spreadsheet’s on its usual example: five years, 10 % and 12 %', () => {
    const given = [-120000, 39000, 30000, 21000, 37000, 46000];
    expect(modifiedRateOfReturn(given, 0.1, 0.12)).toBeCloseTo(MIRR(given, 0.1, 0.12) as number, 12);
  });
  it('with one outlay at the start is the adjusted rate of return (NIST Handbook 135, from memory)', () => {
    const saved = [-30000, ...new Array<number>(15).fill(5000)];
    const ratio = $.savings_to_investment.f(netPresentValue([0, ...saved.slice(1)], 0.03), 30000);
    expect(modifiedRateOfReturn(saved, 0.03, 0.03)).toBeCloseTo($.adjusted_rate_of_return.f(0.03, ratio, 15), 12);
  });
  it('is absent without both signs or a year', () => {
    for (const given of [[], [5], [-5], [-5, -1], [5, 1], [0, 0]])
      expect(modifiedRateOfReturn(given, 0.05, 0.05)).toBeUndefined();
  });
});

describe('depreciation', () => {
  it('by the straight line is that of a spreadsheet (formulajs SLN)', () => {
    for (const years of [1, 3, 7, 15]) {
      const shares = writtenOff({ method: 'straight-line', years });
      expect(shares).toHaveLength(years);
      for (const share of shares) expect(1000 * share).toBeCloseTo(SLN(1000, 0, years) as number, 9);
    }
  });
  it('by declining balance is that of a spreadsheet (formulajs DDB) until the straight line gives more, then level', () => {
    for (const [years, factor] of [
      [7, 2],
      [10, 1.5],
      [20, 2],
      [5, 1],
    ] as const) {
      const shares = writtenOff({ method: 'declining-balance', years, factor });
      let switched = false;
      shares.forEach((share, index) => {
        const declining = (DDB(1, 0, years, index + 1, factor) as number) || 0;
        const left = 1 - shares.slice(0, index).reduce((sum, part) => sum + part, 0);
        switched ||= left / (years - index) >= declining - 1e-12;
        expect(share).toBeCloseTo(switched ? left / (years - index) : declining, 12);
      });
    }
  });
  it('writes off the whole, no year less than nothing, and never rising', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.double({ min: 1, max: 10, noNaN: true }), (years, factor) => {
        const shares = writtenOff({ method: 'declining-balance', years, factor });
        expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
        shares.forEach((share, index) => {
          expect(share).toBeGreaterThanOrEqual(0);
          if (index > 0) expect(share).toBeLessThanOrEqual((shares[index - 1] ?? 0) + 1e-12);
        });
      }),
    );
  });
  it('gives a relief whose present value is that of an annuity (formulajs PV)', () => {
    const settings = {
      taxRate: 0.3,
      depreciation: { method: 'straight-line', years: 6 },
      moneyTerms: 'nominal',
      inflation: 0.02,
    } as const;
    const [relief] = taxTerms(settings, [{ yearly: [-1200, 0, 0, 0, 0, 0, 0, 0, 0] }], () => 'purchase');
    expect(netPresentValue(relief?.yearly ?? [], 0.08)).toBeCloseTo(0.3 * -(PV(0.08, 6, 200) as number), 9);
  });
  it('is worth the same in real money at the real rate as in nominal money at the nominal one (Fisher, formulajs PV)', () => {
    const settings = {
      taxRate: 0.3,
      depreciation: { method: 'straight-line', years: 6 },
      moneyTerms: 'real',
      inflation: 0.1,
    } as const;
    const nominal = 1.05 * 1.1 - 1;
    const spent = [{ yearly: [-1200, 0, 0, 0, 0, 0, 0, 0, 0] }];
    const [purchase] = taxTerms(settings, spent, () => 'purchase');
    expect(netPresentValue(purchase?.yearly ?? [], 0.05)).toBeCloseTo(0.3 * -(PV(nominal, 6, 200) as number), 9);
    // A repair that opens a year is deducted at that year's end: 30 % of 1200, a year's inflation later.
    const [opening] = taxTerms(settings, spent, () => 'expense-at-start');
    expect(netPresentValue(opening?.yearly ?? [], 0.05)).toBeCloseTo(360 / (1 + nominal), 9);
  });
  it('deducts a repair and taxes what is left in the year in which they fall', () => {
    const settings = {
      taxRate: 0.3,
      depreciation: { method: 'straight-line', years: 6 },
      moneyTerms: 'real',
      inflation: 0.1,
    } as const;
    const terms = [{ yearly: [0, -1000, 0] }, { yearly: [0, 0, 500] }];
    const kinds = new Map([
      [terms[0], 'expense'],
      [terms[1], 'proceeds'],
    ] as const);
    const found = taxTerms(settings, terms, (term) => kinds.get(term));
    expect(found.map(({ yearly }) => yearly.map((amount) => amount + 0))).toEqual([
      [0, 300, 0],
      [0, 0, -150],
    ]);
  });
  it('is nothing without a tax or a method', () => {
    const terms = [{ yearly: [-1200, 0] }];
    const base = { moneyTerms: 'real', inflation: 0 } as const;
    expect(
      taxTerms({ ...base, taxRate: 0, depreciation: { method: 'straight-line', years: 6 } }, terms, () => 'purchase'),
    ).toEqual([]);
    expect(taxTerms({ ...base, taxRate: 0.3, depreciation: null }, terms, () => 'purchase')).toEqual([]);
  });
});

describe('present-worth factors against a spreadsheet library', () => {
  it('single and uniform are its PV, for the rates and years of the NIST Handbook 135 tables', () => {
    for (const d of [0.01, 0.03, 0.07])
      for (const years of [1, 5, 10, 15, 20, 25, 30]) {
        expect($.single_present_value.f(d, years)).toBeCloseTo(-(PV(d, years, 0, 1) as number), 12);
        expect($.uniform_present_value.f(d, years)).toBeCloseTo(-(PV(d, years, 1) as number), 10);
        expect(discountedYears(d, years)).toBeCloseTo(-(PV(d, years, 1) as number), 10);
        // Growing flows are uniform ones at the rate that is left.
        const net = 1.03 / 1.02 - 1;
        const growing = Array.from({ length: years }, (_, year) => 1.02 ** (year + 1));
        expect(netPresentValue([0, ...growing], 0.03)).toBeCloseTo(-(PV(net, years, 1) as number), 9);
      }
  });
});

describe('an appraisal in words', () => {
  it('gives every measure of an ordinary investment', () => {
    const found = appraise([-30000, ...new Array<number>(15).fill(5000)], { discountRate: 0.03 });
    expect(of(found.simplePayback)).toBeCloseTo(6, 12);
    expect(of(found.savingsToInvestment)).toBeCloseTo(1.99, 2);
    expect(of(found.adjustedRateOfReturn)).toBeCloseTo(0.0783, 4);
    expect(of(found.modifiedRateOfReturn)).toBeCloseTo(of(found.adjustedRateOfReturn), 12);
    expect(of(found.discountedPayback)).toBeCloseTo(6.71, 1);
  });
  it('takes the value left off the investment and out of the payback', () => {
    const found = appraise([-1000, 100, 1100], { discountRate: 0, residual: [0, 0, 900] });
    expect(of(found.savingsToInvestment)).toBeCloseTo(300 / 100, 12);
    expect(found.simplePayback).toMatchObject({ kind: 'none', text: 'It is not paid back within 2 years.' });
  });
  it.each([
    ['nothing spent', [0, 100, 100], /Nothing is spent beyond/],
    ['negative saving', [-100, -10, -10], /Nothing comes back/],
    ['nothing at all', [0, 0, 0], /Nothing is spent beyond/],
    ['several', [-1600, 10000, -10000], /several rates of return \(25\.0 %, 400\.0 %\)/],
    ['next to nothing back', [-1e9, 1e-3], /no rate of return between/],
    ['a single year', [-100], /Nothing comes back/],
    ['no flow', [], /Nothing is spent beyond/],
    ['income first', [1000, -300, -300, -300, -300], /that of a loan \(7\.7 %\)/],
  ])('says why there is no rate of return: %s', (_, given, text) => {
    const { internalRateOfReturn } = appraise(given, { discountRate: 0.05 });
    expect(internalRateOfReturn.kind).not.toBe('value');
    if (internalRateOfReturn.kind !== 'value') expect(internalRateOfReturn.text).toMatch(text);
  });
  it('says that a negative saving is never paid back, and what a rate has to do with it', () => {
    expect(appraise([-100, -1, -1], { discountRate: 0.05 }).simplePayback).toMatchObject({
      text: 'Nothing is saved, so it is never paid back.',
    });
    expect(appraise([-100, 50, 51], { discountRate: 0.05 }).discountedPayback).toMatchObject({
      text: 'It is not paid back within 2 years at 5.0 % a year.',
    });
  });
  it('never denies a rate of return where only the adjusted one is missing, for what is left at the end', () => {
    const of = (left: number) => appraise([-100, -1, left - 1], { discountRate: 0.05, residual: [0, 0, left] });
    // Less than nothing saved, and yet a return by the value left.
    expect(of(105).internalRateOfReturn.kind).toBe('value');
    expect(of(105).adjustedRateOfReturn).toMatchObject({
      text: 'Nothing is saved over the years beside what is left at the end, so there is no adjusted rate.',
    });
    expect(of(120).adjustedRateOfReturn).toMatchObject({
      text: 'No more is spent beyond what would be anyway than is left of it at the end, so there is no adjusted rate.',
    });
  });
  it('is never infinite and never NaN, whatever the flows', () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(-1e6, -100, -1e-9, 0, 1e-9, 100, 1e6), { maxLength: 8 }),
        fc.constantFrom(0, 0.05, 1),
        (given, discountRate) => {
          JSON.stringify(appraise(given, { discountRate }), (_key, value: unknown) => {
            if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
            return value;
          });
        },
      ),
    );
  });
});

describe('incremental analysis', () => {
  it('chooses the alternative of the highest value, or none when all are worth less than nothing', () => {
    fc.assert(
      fc.property(fc.array(flows, { maxLength: 6 }), rate, (list, discountRate) => {
        const alternatives = list.map((given, index) => ({ id: `a${index}`, flows: given }));
        const worth = (id: string | undefined) =>
          netPresentValue(alternatives.find((one) => one.id === id)?.flows ?? [], discountRate);
        const best = Math.max(0, ...alternatives.map((one) => worth(one.id)));
        expect(worth(incrementalAnalysis(alternatives, discountRate).chosen)).toBeCloseTo(best, 5);
      }),
    );
  });
  it('prefers the larger one although the smaller has the higher rate of return, by hand', () => {
    // 50 % on 100 against 30 % on 1000 in one year, at 10 %: the other 900 earn 27.8 %.
    const found = incrementalAnalysis(
      [
        { id: 'large', flows: [-1000, 1300] },
        { id: 'small', flows: [-100, 150] },
      ],
      0.1,
    );
    expect(found.chosen).toBe('large');
    expect(found.increments.map(({ from, to, extraCost }) => [from, to, extraCost])).toEqual([
      [undefined, 'small', 100],
      ['small', 'large', 900],
    ]);
    const [, second] = found.increments;
    expect(second?.rateOfReturn.kind === 'one' && second.rateOfReturn.rate).toBeCloseTo(1150 / 900 - 1, 9);
  });
  it('takes what is worth a cent, and not what is worth nothing', () => {
    const chosen = (income: number) => incrementalAnalysis([{ id: 'one', flows: [-100, income] }], 0.1).chosen;
    expect(chosen(110.02)).toBe('one');
    expect(chosen(110)).toBeUndefined();
    expect(chosen(109.98)).toBeUndefined();
  });
  it('keeps the cheaper of two that are worth the same, and says nothing where there is nothing', () => {
    const same = incrementalAnalysis(
      [
        { id: 'dear', flows: [-200, 330] },
        { id: 'cheap', flows: [-100, 220] },
      ],
      0.1,
    );
    expect(same.chosen).toBe('cheap');
    expect(incrementalAnalysis([], 0.1)).toEqual({ increments: [], chosen: undefined });
  });
});

describe('break-even', () => {
  it('finds where a straight line is zero in three questions, and a curve to the ninth digit', () => {
    let asked = 0;
    const line = breakEven(
      (x) => {
        asked += 1;
        return 3 * x - 1;
      },
      0,
      10,
    );
    expect(line).toMatchObject({ kind: 'at', rising: true });
    expect(line.kind === 'at' && line.value).toBeCloseTo(1 / 3, 9);
    expect(asked).toBe(3);
    const curve = breakEven((x) => 2 - x * x, 0, 10);
    expect(curve.kind === 'at' && curve.value).toBeCloseTo(Math.SQRT2, 7);
    expect(curve).toMatchObject({ rising: false });
  });
  it('agrees with the future worth of a spreadsheet (formulajs FV): the rate at which 1000 become 2000 in 9 years', () => {
    const found = breakEven((r) => -(FV(r, 9, 0, 1000) as number) - 2000, 0, 1);
    expect(found.kind === 'at' && found.value).toBeCloseTo(2 ** (1 / 9) - 1, 8);
  });
  it('finds the jump of a margin that is never zero', () => {
    const found = breakEven((x) => (x < 3 ? -1 : 1), 0, 10);
    expect(found.kind === 'at' && found.value).toBeCloseTo(3, 8);
    expect(found).toMatchObject({ rising: true });
  });
  it('says always, never and unknown', () => {
    expect(breakEven(() => 1, 0, 1)).toEqual({ kind: 'always' });
    expect(breakEven((x) => x, 0, 1)).toEqual({ kind: 'always' });
    expect(breakEven((x) => 1 - x, 0, 1)).toEqual({ kind: 'always' });
    expect(breakEven(() => -1, 0, 1)).toEqual({ kind: 'never' });
    expect(breakEven(() => undefined, 0, 1)).toEqual({ kind: 'unknown' });
    expect(breakEven((x) => (x > 0.2 && x < 0.8 ? undefined : x - 0.5), 0, 1)).toEqual({ kind: 'unknown' });
  });
});

describe('a tornado', () => {
  it('orders the inputs by what they do, and keeps the order of equals', () => {
    const inputs = ['a', 'b', 'c'].map((id) => ({ id, low: -1, high: 1 }));
    const weights: Readonly<Record<string, number>> = { a: 2, b: -5, c: 2 };
    const found = tornado(10, inputs, (id, at) => 10 + (weights[id] ?? 0) * at);
    expect(found.bars.map(({ id, width }) => [id, width])).toEqual([
      ['b', 10],
      ['a', 4],
      ['c', 4],
    ]);
    expect(found.bars[0]).toMatchObject({ atLow: 15, atHigh: 5 });
  });
  it('measures from the base where an end has no figure, and has no width without any', () => {
    const inputs = [{ id: 'x', low: 0, high: 1 }];
    expect(tornado(3, inputs, (_, at) => (at === 0 ? undefined : 5)).bars[0]).toMatchObject({ atLow: undefined, width: 2 });
    expect(tornado(undefined, inputs, () => undefined).bars[0]?.width).toBe(0);
  });
});
