import { describe, expect, it } from 'vitest';
import { evaluateMotor } from '@/lib/engine/evaluate';
import { yearsBetween } from '@/lib/engine/trust/judge';
import { motorOf, study } from './support/study';

/** Julian days at noon. J. Meeus, Astronomical Algorithms, chapter 7 (from memory). */
const JULIAN_DAYS = [
  ['1957-10-04', 2436116],
  ['1987-01-27', 2446823],
  ['1987-06-19', 2446966],
  ['1988-01-27', 2447188],
  ['1988-06-19', 2447332],
  ['1999-01-01', 2451180],
  ['2000-01-01', 2451545],
] as const;

describe('the time between two dates', () => {
  it('is that of published Julian days, forward and back', () => {
    for (const [a, first] of JULIAN_DAYS)
      for (const [b, second] of JULIAN_DAYS) expect(yearsBetween(a, b) * 365.25, `${a} to ${b}`).toBeCloseTo(second - first, 9);
  });

  it('is that of the run time’s own calendar for each day of four years, leap day included', () => {
    const start = Date.UTC(2023, 0, 1);
    for (let day = 0; day < 4 * 365 + 1; day++) {
      const date = new Date(start + day * 86_400_000).toISOString();
      expect(yearsBetween('2023-01-01', date) * 365.25, date).toBeCloseTo(day, 9);
    }
  });
});

describe('the age of a reading', () => {
  const codes = (takenAt: string, maxReadingAgeYears: number) => {
    const { settings } = study();
    const asked = study({ policy: { ...settings.policy, maxReadingAgeYears } });
    return evaluateMotor(motorOf({ reading: { takenAt } }), asked).trust.findings.map(({ code }) => code);
  };
  // The study is of 1 January 2026; two years before it are 731 days with the leap day of 2024, 730.5 being two years.
  it('counts as old beyond the limit of the policy, and not on the last day before it', () => {
    expect(codes('2024-01-02', 2)).not.toContain('reading-stale');
    expect(codes('2024-01-01', 2)).toContain('reading-stale');
    expect(codes('2024-01-01', 3)).not.toContain('reading-stale');
  });
});
