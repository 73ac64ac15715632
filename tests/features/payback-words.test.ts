import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { paybackWords } from '@/lib/features/results/payback-words';

const HORIZON = 15;
const sure = { value: 1000, u: 100 };

describe('a payback', () => {
  it('stands as a figure where the saving is sure and the horizon not passed', () => {
    expect(paybackWords({ value: 2.5, u: 0.4 }, sure, HORIZON)).toBeUndefined();
    // As wide as it may be: the doubt is then that of the cost, which has two ends.
    expect(paybackWords({ value: 0.5, u: 0.6 }, sure, HORIZON)).toBeUndefined();
    expect(paybackWords({ value: 15, u: 1 }, sure, HORIZON)).toBeUndefined();
    // Nothing more is spent, so nothing has to be won back.
    expect(paybackWords({ value: 0, u: 0.5 }, { value: 100, u: 80 }, HORIZON)).toBeUndefined();
  });

  it('beyond the horizon is said to be so', () => {
    expect(paybackWords({ value: 15.1, u: 0.1 }, sure, HORIZON)?.short).toBe('over 15');
    expect(paybackWords({ value: 200, u: 1500 }, { value: 5, u: 40 }, HORIZON)?.long).toContain('longer than the 15 years');
  });

  it('may be never where the 95 % interval of the saving reaches zero', () => {
    expect(paybackWords({ value: 4.42, u: 6 }, { value: 100, u: 52 }, HORIZON)).toEqual({
      short: '4.4 or never',
      long: 'about 4.4 years, or never: the saving may be nothing',
    });
    expect(paybackWords({ value: 12.3, u: 6 }, { value: 100, u: 52 }, HORIZON, 'de-DE')?.short).toBe('12 or never');
    // 100 − 1.96 × 51 is just above zero, with 51.1 just below.
    expect(paybackWords({ value: 4, u: 2 }, { value: 100, u: 51 }, HORIZON)).toBeUndefined();
    expect(paybackWords({ value: 4, u: 2 }, { value: 100, u: 51.1 }, HORIZON)).toBeDefined();
  });

  it('never shows an interval wider than what it belongs to for want of a saving', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1e5, noNaN: true }),
        fc.double({ min: 1, max: 1e4, noNaN: true }),
        fc.double({ min: 0.01, max: 1e5, noNaN: true }),
        (cost, saved, u) => {
          const years = cost / saved;
          // The share of the payback's doubt that comes from the saving alone.
          const words = paybackWords({ value: years, u: (years * u) / saved }, { value: saved, u }, HORIZON);
          if (words === undefined) expect(1.96 * ((years * u) / saved)).toBeLessThan(years);
        },
      ),
    );
  });
});
