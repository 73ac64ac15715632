import { describe, expect, it } from 'vitest';
import { evaluateMotor } from '@/lib/engine/evaluate';
import { yearsBetween } from '@/lib/engine/trust/judge';
import { motorOf, READING, study } from './support/study';

/** Julian days at noon. J. Meeus, Astronomical Algorithms, chapter 7 (from memory). */
const JULIAN_DAYS = [
  ['1600-01-01', 2305448],
  ['1600-12-31', 2305813],
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

describe('what a reading is trusted for', () => {
  const trusted = (...readings: readonly Partial<typeof READING>[]) => {
    const { trust } = evaluateMotor(
      motorOf({ readings: readings.map((reading, at) => ({ ...READING, row: at + 2, ...reading })) }),
      study(),
    );
    return { level: trust.level, codes: trust.findings.map(({ code }) => code), findings: trust.findings };
  };
  const bare = { voltageV: undefined, currentA: undefined, inputPowerKw: undefined, shaftSpeedRpm: undefined };

  it('is sound by two ways that agree, provisional by one, and not usable by none', () => {
    expect(trusted({})).toMatchObject({ level: 'sound' });
    const one = trusted({ currentA: undefined, shaftSpeedRpm: undefined });
    expect(one.level).toBe('provisional');
    expect(one.codes).toContain('one-way-to-load');
    expect(trusted(bare).level).toBe('not-usable');
  });

  it('is not confirmed by a way that is too uncertain, whichever of the two that is', () => {
    for (const [weak, sure] of [
      [{ inputPowerKw: 24.4, powerAccuracyPct: 60 }, 'slip'],
      [{ shaftSpeedRpm: 1779.4, speedAccuracyRpm: 20 }, 'input power'],
    ] as const) {
      const { level, findings } = trusted({ ...weak, currentA: undefined });
      expect(level).toBe('provisional');
      expect(findings.find(({ code }) => code === 'second-way-weak')?.text, sure).toContain(`the ways beside ${sure} `);
    }
  });

  it('is later than the study only from the day after it', () => {
    expect(trusted({ takenAt: '2026-01-01T23:00' }).codes).not.toContain('reading-after-study');
    expect(trusted({ takenAt: '2026-01-02' }).codes).toContain('reading-after-study');
  });

  it('asks for the latest again where power, current or speed was read and no load came of it, not where vibration alone was', () => {
    const later = { ...bare, takenAt: '2025-11-01' };
    expect(trusted({}, { ...later, vibrationMmS: 2 }).codes).not.toContain('latest-reading-unusable');
    for (const read of [{ inputPowerKw: -24 }, { currentA: -40 }, { shaftSpeedRpm: 900 }])
      expect(trusted({}, { ...later, ...read }).codes, JSON.stringify(read)).toContain('latest-reading-unusable');
  });
});
