import { describe, expect, test } from 'vitest';
import { fixed, oftenWords, rounded, written } from '@/lib/engine/quantity/words';

describe('numbers in sentences', () => {
  test.each([
    [999, '999'],
    [1000, '1,000'],
    [1785.5, '1,785.5'],
    [-42.52, '−42.52'],
    [-1234567, '−1,234,567'],
    [0.0001, '0.0001'],
    [1e-7, '0.0000001'],
    [0, '0'],
    [-0, '0'],
  ])('%s is written %s', (value, text) => expect(written(value)).toBe(text));

  test('decimals after the point are not grouped, and what rounds to nothing has no sign', () => {
    expect(fixed(8274.4, 0)).toBe('8,274');
    expect(fixed(1234.56789, 4)).toBe('1,234.5679');
    expect(fixed(-0.04, 1)).toBe('0.0');
    expect(rounded(12_345, 2)).toBe('12,000');
    expect(rounded(1.5, 3)).toBe('1.5');
  });

  test.each([
    [0.5, '50 times in 100'],
    [0.0151, '2 times in 100'],
    [0.01, 'once in 100 times'],
    [0.004, 'once in 250 times'],
    [0.001, 'once in 1,000 times'],
    [4e-9, 'less than once in 1,000 times'],
    [0, 'less than once in 1,000 times'],
  ])('a chance of %s is %s', (chance, text) => expect(oftenWords(chance)).toBe(text));
});
