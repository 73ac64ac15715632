import { PV } from '@formulajs/formulajs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestShelf, type Shelf, shelfWorth } from '@/lib/engine/options/shelf';

const SHELF: Shelf = {
  valuesAtFailure: [900, 700, -50, 0],
  purchase: 2000,
  failureRatePerYear: 0.05,
  discountRate: 0.08,
  horizonYears: 15,
  restockYears: 0.25,
  keepingPerYear: 0.02,
};

/** Of as many motors as give the offered calls at a failure a year each. */
function emptyAt(offered: number, spares: number): number | undefined {
  return shelfWorth({ ...SHELF, valuesAtFailure: new Array(offered).fill(1), failureRatePerYear: 1, restockYears: 1 }, spares)
    ?.empty;
}

describe('spares on the shelf', () => {
  it('are found empty by the loss formula: 1/2, 1/5, 1/16 at 1 erlang; 0.1101 at 3 erlang and 5 (published tables, from memory)', () => {
    expect(emptyAt(1, 0)).toBe(1);
    expect(emptyAt(1, 1)).toBeCloseTo(1 / 2, 12);
    expect(emptyAt(1, 2)).toBeCloseTo(1 / 5, 12);
    expect(emptyAt(1, 3)).toBeCloseTo(1 / 16, 12);
    expect(emptyAt(3, 5)).toBeCloseTo(0.1101, 4);
  });
  it('agree with failures drawn at random over many years', () => {
    // One spare, 8 motors at 5 % a year, half a year to restock.
    let seed = 12345;
    const random = () => {
      seed = (seed * 48271) % 2147483647;
      return seed / 2147483647;
    };
    let [time, back, calls, missed] = [0, 0, 0, 0];
    while (calls < 200_000) {
      time += -Math.log(random()) / 0.4;
      calls++;
      if (time < back) missed++;
      else back = time + 0.5;
    }
    const found = shelfWorth({ ...SHELF, valuesAtFailure: new Array(8).fill(1), restockYears: 0.5 }, 1);
    expect(found?.empty).toBeCloseTo(missed / calls, 2);
  });
  it('cost the interest on their price and their keeping (present values by formulajs PV)', () => {
    const found = shelfWorth(SHELF, 2);
    const later = -Number(PV(0.08, 15, 0, 4000, 0));
    const keeping = -Number(PV(0.08, 15, 80, 0, 0));
    expect(found?.cost).toBeCloseTo(4000 - later + keeping, 8);
  });
  it('gain what replacements at failure are worth, of the motors for which they are worth something', () => {
    const found = shelfWorth({ ...SHELF, restockYears: 0 }, 1);
    expect(found).toMatchObject({ callsPerYear: 0.1, empty: 0, gained: 1600 });
    expect(shelfWorth(SHELF, 0)).toMatchObject({ empty: 1, gained: 0, cost: 0, value: 0 });
  });
  it('are not kept where they are not worth their cost, and never for a policy that replaces anyway', () => {
    expect(bestShelf({ ...SHELF, purchase: 20000 })?.spares).toBe(0);
    expect(bestShelf({ ...SHELF, valuesAtFailure: [0, 0] })?.spares).toBe(0);
    expect(bestShelf({ ...SHELF, valuesAtFailure: [] })?.spares).toBe(0);
    expect(bestShelf({ ...SHELF, valuesAtFailure: [5000, 5000] })?.spares).toBe(1);
  });
  it('are worth most at the number found, against every other number', () => {
    const share = fc.double({ min: 0.01, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -500, max: 9000, noNaN: true }), { maxLength: 12 }),
        share,
        share,
        (values, rate, wait) => {
          const shelf = { ...SHELF, valuesAtFailure: values, failureRatePerYear: rate, restockYears: wait };
          const best = bestShelf(shelf);
          for (let spares = 0; spares <= values.length; spares++)
            expect(shelfWorth(shelf, spares)?.value ?? 0).toBeLessThanOrEqual((best?.value ?? -1) + 1e-6);
        },
      ),
    );
  });
  it('say nothing on numbers that are none', () => {
    expect(shelfWorth({ ...SHELF, purchase: Number.NaN }, 1)).toBeUndefined();
    expect(bestShelf({ ...SHELF, restockYears: -1 })).toBeUndefined();
    expect(shelfWorth(SHELF, 0.5)).toBeUndefined();
  });
});
