import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type DecimalSign, type NumberRefusalCode, REFUSALS, readNumber } from '@/lib/features/fleet/number';

const read: readonly (readonly [text: string, decimal: DecimalSign, value: number])[] = [
  ['0', '.', 0],
  ['-0', '.', 0],
  ['0.000', '.', 0],
  ['0e5', '.', 0],
  ['4.3', '.', 4.3],
  ['4,3', ',', 4.3],
  ['+4.3', '.', 4.3],
  ['-12', '.', -12],
  ['\u221212.5', '.', -12.5],
  ['1e3', '.', 1000],
  ['1E-3', '.', 0.001],
  ['1e\u22123', '.', 0.001],
  ['1,5e3', ',', 1500],
  ['.5', '.', 0.5],
  [',5', ',', 0.5],
  ['007', '.', 7],
  ['1.234', '.', 1.234],
  ['1,234', ',', 1.234],
  ['1250', ',', 1250],
  ['  75 ', '.', 75],
  ['\u00a075\u202f', '.', 75],
  ['\t75\r', '.', 75],
  ['1.7976931348623157e308', '.', Number.MAX_VALUE],
  ['5e-324', '.', Number.MIN_VALUE],
];

const refused: readonly (readonly [text: string, decimal: DecimalSign, code: NumberRefusalCode])[] = [
  ['', '.', 'no-number'],
  ['   ', '.', 'no-number'],
  ['-', '.', 'placeholder'],
  ['—', '.', 'placeholder'],
  ['?', '.', 'placeholder'],
  ['n/a', '.', 'placeholder'],
  ['N/A', ',', 'placeholder'],
  ['unknown', '.', 'placeholder'],
  ['#N/A', '.', 'spreadsheet-error'],
  ['#DIV/0!', '.', 'spreadsheet-error'],
  ['=1+1', '.', 'formula-text'],
  ['NaN', '.', 'not-finite'],
  ['-Infinity', '.', 'not-finite'],
  ['∞', '.', 'not-finite'],
  ['93.6%', '.', 'percent-sign'],
  ['93,6 %', ',', 'percent-sign'],
  ['４３', '.', 'foreign-digits'],
  ['٤٣', '.', 'foreign-digits'],
  ['4３', '.', 'foreign-digits'],
  ['–5', '.', 'other-minus'],
  ['0x1F', '.', 'hexadecimal'],
  ['1,250', '.', 'grouped-thousands'],
  ['1.250', ',', 'grouped-thousands'],
  ['1,234.5', '.', 'grouped-thousands'],
  ['1.234,5', ',', 'grouped-thousands'],
  ['1.234.567', '.', 'grouped-thousands'],
  ['1,234,567', ',', 'grouped-thousands'],
  ['1 250', '.', 'grouped-thousands'],
  ['1\u202f250', '.', 'grouped-thousands'],
  ["1'250", '.', 'grouped-thousands'],
  ['12,34,567', '.', 'grouped-thousands'],
  ['4,3', '.', 'other-decimal-sign'],
  ['-4,35', '.', 'other-decimal-sign'],
  ['4.3', ',', 'other-decimal-sign'],
  ['12abc', '.', 'text-beside-number'],
  ['45 kW', '.', 'text-beside-number'],
  ['10-12', '.', 'text-beside-number'],
  ['>1000', '.', 'text-beside-number'],
  ['5.', '.', 'text-beside-number'],
  ['- 5', '.', 'text-beside-number'],
  ['1e', '.', 'text-beside-number'],
  ['1e3.5', '.', 'text-beside-number'],
  ['(5)', '.', 'text-beside-number'],
  ['--5', '.', 'text-beside-number'],
  ['abc', '.', 'not-a-number'],
  ['true', '.', 'not-a-number'],
  ['1e999', '.', 'number-too-large'],
  ['1e-999', '.', 'number-too-small'],
];

describe('readNumber', () => {
  it.each(read)('reads %j under decimal %s as %d', (text, decimal, value) => {
    const result = readNumber(text, { decimal });
    expect(result.ok && Object.is(result.value, value)).toBe(true);
  });

  it.each(refused)('refuses %j under decimal %s as %s', (text, decimal, code) => {
    const result = readNumber(text, { decimal });
    if (result.ok) expect.fail(`read as ${result.value}`);
    expect(result.code).toBe(code);
    expect(result.text).toMatch(/^.{10,}\.$/);
    expect(result.remedy).toMatch(/^.{10,}\.$/);
  });

  it('has an example of every refusal in the table', () => {
    expect(new Set(refused.map(([, , code]) => code))).toEqual(new Set(Object.keys(REFUSALS)));
  });

  it('reads back whatever the language writes, under both decimal signs', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        const written = String(value);
        expect(readNumber(written, { decimal: '.' })).toEqual({ ok: true, value: value === 0 ? 0 : value });
        expect(readNumber(written.replace('.', ','), { decimal: ',' })).toEqual({ ok: true, value: value === 0 ? 0 : value });
      }),
    );
  });

  it('never throws, and gives a finite number or words, for any text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), fc.constantFrom<DecimalSign>('.', ','), (text, decimal) => {
        const result = readNumber(text, { decimal });
        expect(result.ok ? Number.isFinite(result.value) : result.text.length > 0).toBe(true);
      }),
    );
  });

  it('quotes a long text cut and on one line', () => {
    const result = readNumber(`12\n<b>${'x'.repeat(500)}`, { decimal: '.' });
    if (result.ok) expect.fail('read');
    expect(result.text.length).toBeLessThan(120);
    expect(result.text).not.toContain('\n');
  });
});
