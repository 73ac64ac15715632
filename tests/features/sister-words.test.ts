import { describe, expect, it } from 'vitest';
import type { SisterResult } from '@/lib/engine';
import { sisterWords } from '@/lib/features/condition/words';

const found = (median: number, low: number, high: number): SisterResult => ({
  indicator: 'vibration',
  worse: true,
  value: high,
  unit: 'mm/s',
  standing: 'above',
  count: 9,
  alike: 'type',
  median,
  low,
  high,
});

describe('how a value stands among like motors', () => {
  it('gives median and ends in the digits of the largest', () => {
    expect(sisterWords(found(1.4, 0.84, 12.6))).toContain('(median 1.4, from 0.8 to 12.6\u202fmm/s)');
    expect(sisterWords(found(0, 0, 0))).toContain('(median 0, from 0 to 0');
  });

  it('calls nothing zero that is not', () => {
    expect(sisterWords(found(412, 2.3, 209_000))).toContain('(median 412, from 2.30 to 209,000');
  });
});
