import { describe, expect, it } from 'vitest';
import { decide } from '@/lib/engine/decide/decide';
import { timeToFailure } from '@/lib/engine/options/time-to-failure';
import { POOR, weigh } from './weighing';

const AT = { failureRatePerYear: 0.05, horizonYears: 15, raised: false };

describe('time to failure', () => {
  it('is the mean of a waiting time with a constant yearly chance, summed year by year', () => {
    let mean = 0;
    let within = 0;
    for (let year = 1; year <= 3000; year++) {
      const chance = 0.95 ** (year - 1) * 0.05;
      mean += year * chance;
      if (year <= 15) within += chance;
    }
    const found = timeToFailure(AT);
    expect(found?.years).toBeCloseTo(mean, 9);
    expect(found?.withinHorizon).toBeCloseTo(within, 12);
  });
  it('spans twice and half the rate, and the chance with it', () => {
    const found = timeToFailure(AT);
    expect([found?.lowYears, found?.highYears]).toEqual([10, 40]);
    expect(found?.lowWithin).toBeLessThan(found?.withinHorizon ?? 0);
    expect(found?.highWithin).toBeGreaterThan(found?.withinHorizon ?? 1);
    for (const rate of [0.01, 0.3, 0.9, 1]) {
      const any = timeToFailure({ ...AT, failureRatePerYear: rate });
      expect(any?.lowYears).toBeLessThanOrEqual(any?.years ?? 0);
      expect(any?.highWithin).toBeLessThanOrEqual(1);
    }
  });
  it('halves where the condition calls for a repair, and is not known at a rate of zero', () => {
    expect(timeToFailure({ ...AT, raised: true })?.years).toBe(10);
    expect(timeToFailure({ ...AT, failureRatePerYear: 0 })).toBeUndefined();
  });
  it('stands in the reason of a replacement that waits for the failure', () => {
    const weighed = weigh({ ...POOR, hours: 3000 });
    const { settings } = weighed.study;
    const decision = decide({
      options: weighed.options,
      trust: 'sound',
      callsForRepair: [],
      mustAct: false,
      motor: weighed.motor,
      settings,
    });
    const years = (1 / settings.failureRatePerYear).toPrecision(2);
    expect(decision.because.find(({ code }) => code === 'pays-at-failure')?.text).toContain(
      `after ${Number(years)} years on average`,
    );
  });
});
