import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSchedule } from '@/lib/engine/tariff/schedule';
import { common, hoursInMonth, hoursOf, type Week, WHOLE_WEEK, weekOf, without } from '@/lib/engine/tariff/week';

const hours = (text: string): number | undefined => {
  const read = readSchedule(text);
  return read.ok ? hoursOf(read.week) : undefined;
};

describe('a schedule', () => {
  it.each([
    ['Mo-Fr 06:00-22:00', 80],
    ['mo-fr 06:00-22:00', 80],
    ['Mo - Fr 06:00 - 22:00', 80],
    ['06:00-22:00', 112],
    ['Mo-Su', 168],
    ['Sa,Su', 48],
    ['Mo-Fr 06:00-14:00,15:00-22:00; Sa 06:00-12:00', 81],
    ['Mo-Fr 06:00-22:00; Mo-Fr 20:00-24:00', 90],
    ['Mo-Fr 22:00-06:00', 40],
    ['Su 22:00-06:00', 8],
    ['Fr-Mo 00:00-24:00', 96],
    ['Mo 00:00-00:30', 0.5],
  ])('%s has %d hours a week', (text, expected) => expect(hours(text)).toBe(expected));

  it('goes on on Monday where a night shift of Sunday ends', () => {
    const read = readSchedule('Su 22:00-06:00');
    expect(read.ok && read.week).toEqual([
      [0, 360],
      [6 * 1440 + 22 * 60, 7 * 1440],
    ]);
  });

  it.each([
    '',
    ' ',
    ';',
    'two shifts',
    'Mo-Fr 6:00-22:00',
    'Mo-Fr 06:00',
    'Mo-Fr 06:00-25:00',
    'Mo-Fr 06:60-22:00',
    'Mo-Fr 06:00-06:00',
    'Mo-Fr 24:00-06:00',
    '06:00-22:00 Mo-Fr',
    'Mo-We-Fr 06:00-22:00',
    'Mo- 06:00-22:00',
    'Mx-Fr 06:00-22:00',
    'Mo-Fr 06:00-22:00 daily',
    'Mo-Fr 06.00-22.00',
    'Mo-Fr 06:00-22:00;;Sa',
    `Mo ${'06:00-07:00,'.repeat(100)}`,
  ])('“%s” is refused with the remedy', (text) => {
    const read = readSchedule(text);
    expect(read.ok).toBe(false);
    if (!read.ok) {
      expect(read.text).toMatch(/cannot be read: .+\.$/);
      expect(read.remedy).toContain('Mo-Fr 06:00-22:00');
    }
  });

  it('refuses or reads any text, and never has more hours than a week', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.stringMatching(/^[MoTuWeFrSa0-9:;, -]{0,30}$/)), (text) => {
        const read = readSchedule(text);
        if (read.ok) expect(hoursOf(read.week)).toBeLessThanOrEqual(168);
      }),
    );
  });
});

describe('hours of a week', () => {
  const week: fc.Arbitrary<Week> = fc
    .array(fc.tuple(fc.integer({ min: 0, max: 10079 }), fc.integer({ min: 1, max: 5000 })), { maxLength: 6 })
    .map((spans) => weekOf(spans.map(([from, length]) => [from, from + length])));

  it('are parted and put together again', () => {
    fc.assert(
      fc.property(week, week, (a, b) => {
        expect(hoursOf(common(a, b)) + hoursOf(without(a, b))).toBeCloseTo(hoursOf(a), 9);
        expect(common(without(a, b), b)).toEqual([]);
        expect(hoursOf(common(a, WHOLE_WEEK))).toBeCloseTo(hoursOf(a), 9);
      }),
    );
  });
  it('come to 8760 in a common year', () => {
    let sum = 0;
    for (let month = 0; month < 12; month++) sum += hoursInMonth(WHOLE_WEEK, month);
    expect(sum).toBeCloseTo(8760, 9);
  });
});
