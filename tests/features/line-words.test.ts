import { describe, expect, it } from 'vitest';
import type { LineResult } from '@/lib/engine';
import { lineSeen, stepHertz, symbolWords } from '@/lib/features/condition/line-words';

const plain = (text: string) => text.replaceAll('\u202f', ' ');
const line = (relation: string): LineResult => ({
  id: relation,
  spectrum: 'current',
  cause: 'always',
  meaning: '',
  relation,
  frequency: { value: 1, u: 0, unit: 'Hz' },
  source: '',
  status: 'memory',
});

describe('frequencies in words', () => {
  it.each([
    [1239.5, 0.05, '1,239.50 Hz'],
    [58.1, 0.1, '58.1 Hz'],
    [680, 0.5, '680.0 Hz'],
    [1347, 2, '1,347 Hz'],
  ])('a line seen at %s at a resolution of %s is %s', (seen, value_hz, words) => {
    expect(plain(lineSeen(seen, { value_hz, known: 'read' }))).toBe(words);
  });

  it.each([
    [0.37333, '0.37 Hz'],
    [3.768, '3.8 Hz'],
    [12.4, '12 Hz'],
    [-0.0333, '\u22120.033 Hz'],
    [1e-9, '0 Hz'],
  ])('a step of %s is %s', (value, words) => expect(plain(stepHertz(value))).toBe(words));

  it('every sign that stands in a relation is explained, and none that does not', () => {
    const words = symbolWords({ lines: [line('f₁ − 2 s f₁'), line('z₁ f_r / lcm')] });
    for (const sign of ['f₁ supply', 's slip', 'f_r turns', 'z₁, z₂ teeth', 'lcm the']) expect(words).toContain(sign);
    for (const sign of ['R rotor', 'S stator', 'f_belt', 'f_cage']) expect(words).not.toContain(sign);
    expect(symbolWords({ lines: [line('(R − 1) f_r + 3 f₁'), line('S f_r')] })).toContain('R rotor bars, S stator slots');
  });
});
