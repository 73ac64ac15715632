import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { programmeCsv } from '@/lib/features/plan/programme-csv';

const at = (tag: string) => ({ site: 'Works', tag });

describe('a programme as CSV', () => {
  const text = [
    ...programmeCsv({
      years: [
        {
          year: 2026,
          items: [
            {
              ...at('A-1'),
              option: 'repair-now',
              cost: 4005,
              net_present_value: -6021.84,
              because: [{ text: 'It has failed.' }],
            },
            { ...at('A-2'), option: 'replace-now-30-premium', cost: 2330.5, override: { by: 'R. Example', reason: '=1+1' } },
          ],
        },
        { year: 2027, items: [] },
      ],
      at_failure: [{ ...at('A-3'), option: 'replace-at-failure-30-premium' }],
      left_out: [{ ...at('A-4'), because: { text: 'Nothing, "really"' } }],
    }),
  ].join('');
  const rows = Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true }).data;

  it('has one line for each motor, read back by another program’s parser', () => {
    expect(rows.map(({ year, tag, because }) => [year, tag, because])).toEqual([
      ['2026', 'A-1', 'It has failed.'],
      ['2026', 'A-2', ''],
      ['at failure', 'A-3', ''],
      ['', 'A-4', 'Nothing, "really"'],
    ]);
  });

  it('leaves money below zero a number, and text that looks like a formula text', () => {
    expect(rows.map(({ cost, net_present_value: worth }) => [Number(cost), Number(worth)])[0]).toEqual([4005, -6021.84]);
    expect(rows[1]).toMatchObject({ net_present_value: '', override_reason: "'=1+1" });
  });
});
