import { describe, expect, test } from 'vitest';
import {
  ABSENT,
  formatAmount,
  formatBytes,
  formatCount,
  formatFigure,
  formatInstant,
  formatMoney,
  formatNumber,
  formatPercent,
  formatStated,
  readerLocale,
  unparted,
} from '@/lib/platform/format';

const N = '\u202f';
/** A figure whose expanded 95 % uncertainty is the one given. */
const figure = (value: number, expanded: number, unit = 'kW') => ({ value, u: expanded / 1.96, unit });

describe('digits as the interval deserves', () => {
  // JCGM 100:2008 (GUM), 7.2.6 and 7.2.4, as remembered; the last digits follow from the rule itself.
  test.each([
    ['7.2.6: y = 10.057 62 Ω with 27 mΩ becomes 10.058 Ω', 10.05762, 0.027, '10.058', '0.027'],
    ['7.2.6: 28.05 is rounded down to 28', 1000, 28.05, '1,000', '28'],
    ['7.2.4: 100.021 47 g with U = 0.000 79 g', 100.02147, 0.00079, '100.02147', '0.00079'],
  ])('%s', (_, value, expanded, shown, plusMinus) => {
    expect(formatFigure(figure(value, expanded))).toMatchObject({ value: shown, plusMinus });
  });

  test.each([
    [41.68, 2.34, `41.7 ± 2.3${N}kW`],
    [41.68, 23.4, `42 ± 23${N}kW`],
    [1234.4, 234, `1,230 ± 230${N}kW`],
    [123456, 23456, `123,000 ± 23,000${N}kW`],
    [0.5, 0.0996, `0.50 ± 0.10${N}kW`],
    [0.5, 0.00996, `0.500 ± 0.010${N}kW`],
    [0, 0.12, `0.00 ± 0.12${N}kW`],
    [-0.004, 1.2, `0.0 ± 1.2${N}kW`],
    [-41.68, 2.34, `\u221241.7 ± 2.3${N}kW`],
    [9.96, 0.99, `9.96 ± 0.99${N}kW`],
    [9.96, 0.996, `10.0 ± 1.0${N}kW`],
  ])('%d with %d', (value, expanded, text) => {
    expect(formatFigure(figure(value, expanded)).text).toBe(text);
  });

  test('without uncertainty a value has up to four significant digits and no interval', () => {
    expect(formatFigure({ value: 37, u: 0, unit: 'kW' })).toEqual({ value: '37', unit: 'kW', text: `37${N}kW` });
    expect(formatFigure({ value: 0.74569, u: 0, unit: 'kW' }).text).toBe(`0.7457${N}kW`);
    expect(formatFigure({ value: 1785, u: 0, unit: 'r/min' }).text).toBe(`1,785${N}r/min`);
    expect(formatFigure({ value: 12345.678, u: 0, unit: 'kWh/a' }).text).toBe(`12,346${N}kWh/a`);
    expect(formatFigure({ value: 0, u: 0, unit: 'kW' }).text).toBe(`0${N}kW`);
  });

  test('limits that are not symmetrical are shown as limits', () => {
    const shown = formatFigure({ value: 41.7, u: 1.5, unit: 'kW', low: 39, high: 45.2 });
    expect(shown).toEqual({
      value: '41.7',
      low: '39.0',
      high: '45.2',
      unit: 'kW',
      range: `39.0 to 45.2${N}kW`,
      text: `41.7 (39.0 to 45.2)${N}kW`,
    });
  });

  test('limits that are symmetrical within 2 % of the width are shown as ±', () => {
    expect(formatFigure({ value: 10, u: 1 / 1.96, unit: 'kW', low: 9.01, high: 11 }).plusMinus).toBe('1.0');
  });

  test('a fraction is shown in per cent, and a bare number without a unit', () => {
    expect(formatFigure({ value: 0.563, u: 0.01, unit: '1' }, { percent: true }).text).toBe(`56.3 ± 2.0${N}%`);
    expect(formatFigure({ value: 2.5, u: 0.1, unit: '1' }).text).toBe('2.50 ± 0.20');
  });

  test('a column may fix the decimals', () => {
    expect(formatFigure(figure(41.68, 0.234), { decimals: 1 }).text).toBe(`41.7 ± 0.2${N}kW`);
  });
});

describe('numbers', () => {
  test.each([
    [1234.5, 1, 'en-US', '1,234.5'],
    [1234.5, 1, 'de-DE', '1.234,5'],
    [-1234.5, 1, 'de-DE', '\u22121.234,5'],
    [-0.04, 1, 'en-US', '0.0'],
    [1.005, 2, 'en-US', '1.01'],
    [-2.5, 0, 'en-US', '\u22123'],
    [1e21, 0, 'en-US', '1,000,000,000,000,000,000,000'],
    // The separators go with the digits (Unicode CLDR, numbering systems): with 0 to 9 an Arabic locale has a point.
    [4.3, 1, 'ar-EG', '4.3'],
    [4.3, 1, 'sv-SE', '4,3'],
  ])('%d with %d decimals in %s', (value, decimals, locale, text) => {
    expect(formatNumber(value, decimals, locale)).toBe(text);
  });

  test('digits are 0 to 9 in every locale', () => {
    for (const locale of ['ar-EG', 'fa-IR', 'hi-IN', 'my-MM']) expect(formatCount(12, locale)).toBe('12');
  });

  test('what is no number is never shown as one', () => {
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY]) expect(formatNumber(value, 1)).toBe(ABSENT);
    expect(formatMoney(Number.NaN, 'USD')).toBe(ABSENT);
  });
});

test('money', () => {
  expect(formatMoney(1234.5, 'USD')).toBe(`1,235${N}USD`);
  expect(formatMoney(1234.5, 'USD', 'en-US', true)).toBe(`1,234.50${N}USD`);
  expect(formatMoney(-1234.5, 'USD', 'en-US', true)).toBe(`\u22121,234.50${N}USD`);
  expect(formatMoney(-0.2, 'USD')).toBe(`0${N}USD`);
  expect(formatMoney(1234, 'JPY', 'en-US', true)).toBe(`1,234${N}JPY`);
  expect(formatAmount(1234.5, 'USD', 'en-US', true)).toBe('1,234.50');
  expect(formatMoney(1234, 'points')).toBe(`1,234${N}points`);
});

test('dates', () => {
  expect(formatStated('2026-03-14')).toBe('2026-03-14');
  expect(formatStated('2026-03-14T09:30:00')).toBe('2026-03-14 09:30');
  expect(formatStated('2026-03-14T09:30+02:00')).toBe('2026-03-14 09:30');
  expect(formatStated('last spring')).toBe('last spring');
  expect(formatInstant(new Date('2026-03-14T23:30:00Z'))).toBe('2026-03-14 23:30');
  expect(formatInstant(new Date('2026-03-14T23:30:00Z'), 'Europe/Berlin')).toBe('2026-03-15 00:30');
});

test('bytes', () => {
  expect(formatBytes(999)).toBe(`999${N}B`);
  expect(formatBytes(1000)).toBe(`1.0${N}kB`);
  expect(formatBytes(123_456_789)).toBe(`123${N}MB`);
});

test("the reader's locale", () => {
  expect(readerLocale('de-AT,de;q=0.9,en;q=0.5')).toBe('de-AT');
  expect(readerLocale('*')).toBe('en-US');
  expect(readerLocale('<script>, sv')).toBe('sv');
  expect(readerLocale(null)).toBe('en-US');
});

describe('no line ends between a number and its unit', () => {
  test('in a share', () => {
    expect(formatPercent(0.7)).toBe(`70${N}%`);
    expect(formatPercent(0.0825, 1)).toBe(`8.3${N}%`);
    expect(formatPercent(-0.02)).toBe(`\u22122${N}%`);
  });

  test.each([
    ['The motor carries 43 % of its rating.', `The motor carries 43${N}% of its rating.`],
    ['41.7 ± 2.3 kW, of 1,200 USD', `41.7${N}±${N}2.3${N}kW, of 1,200${N}USD`],
    ['3,000 r/min at 40 °C and 4.5 mm/s.', `3,000${N}r/min at 40${N}°C and 4.5${N}mm/s.`],
    // Words that only begin like a unit, and numbers without one, stay as they were.
    ['In row 12 A-14 has 3 Very old stamps; 2 of 4 What.', 'In row 12 A-14 has 3 Very old stamps; 2 of 4 What.'],
    ['', ''],
  ])('%s', (written, shown) => {
    expect(unparted(written)).toBe(shown);
  });
});
