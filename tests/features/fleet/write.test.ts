import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import type { Motor } from '@/lib/engine';
import { csvCell } from '@/lib/features/fleet/csv-cell';
import { parseFleet } from '@/lib/features/fleet/parse';
import { horsepowerOf } from '@/lib/features/fleet/write-cells';
import { csvRow, rejectedCsv, type WritableMotor, writeFleetCsv } from '@/lib/features/fleet/write-csv';
import { motorArbitrary } from './support/motor-arbitrary';
import { BASE, csv, mustParse, parseText } from './support/sheet';

/** Row numbers are those of a file: what must come back is the order that they give. */
function withoutRows({ motor, notes = {} }: WritableMotor): unknown {
  const order = [...motor.readings.map(({ row }) => row), ...(motor.plateDuty ? [motor.plateDuty.row] : [])].sort(
    (a, b) => a - b,
  );
  const place = (row: number): number => order.indexOf(row);
  const plain: Motor = {
    ...motor,
    readings: motor.readings.map((reading) => ({ ...reading, row: place(reading.row) })),
    ...(motor.plateDuty && { plateDuty: { ...motor.plateDuty, row: place(motor.plateDuty.row) } }),
  };
  return JSON.parse(JSON.stringify({ motor: plain, notes: Object.entries(notes).sort() }, sortedKeys));
}

function sortedKeys(_: string, value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));
}

const dialects = fc.constantFrom(
  { delimiter: ',', decimal: '.' } as const,
  { delimiter: ';', decimal: ',' } as const,
  { delimiter: '\t', decimal: '.' } as const,
  { delimiter: ',', decimal: ',' } as const,
);

describe('a written fleet sheet', () => {
  it('reads back as the same motors, whatever they hold', async () => {
    const fleets = fc.uniqueArray(motorArbitrary, {
      selector: ({ motor }) => `${motor.site}\0${motor.tag}`,
      minLength: 1,
      maxLength: 6,
    });
    await fc.assert(
      fc.asyncProperty(fleets, dialects, async (fleet, dialect) => {
        const parsed = mustParse(await parseText(writeFleetCsv(fleet, dialect), dialect));
        expect(parsed.rejected.flatMap(({ issues }) => issues)).toEqual([]);
        expect(parsed.motors.map(withoutRows)).toEqual(fleet.map(withoutRows));
        expect(parsed.ignoredRepeats).toBe(0);
      }),
      { numRuns: 400 },
    );
  });

  it('comes to rest: writing what was read gives the same text', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(motorArbitrary, { minLength: 1, maxLength: 3 }), async (fleet) => {
        const once = mustParse(await parseText(writeFleetCsv(fleet))).motors;
        const text = writeFleetCsv(once);
        expect(writeFleetCsv(mustParse(await parseText(text)).motors)).toBe(text);
      }),
      { numRuns: 100 },
    );
  });

  it('is read alike by a general CSV parser', () => {
    fc.assert(
      fc.property(fc.array(fc.oneof(fc.string({ unit: 'grapheme' }), fc.integer()), { minLength: 2, maxLength: 6 }), (cells) => {
        const text = cells.map((cell) => (typeof cell === 'string' ? cell.replaceAll('\0', '') : cell));
        const [read = []] = Papa.parse<string[]>(csvRow(text), { newline: '\r\n', delimiter: ',' }).data;
        expect(read.map((cell) => cell.replace(/^'(?='*[=+\-@\t\r\n＝＋－＠])/, ''))).toEqual(text.map(String));
      }),
    );
  });

  it('gives horsepower that make the same kilowatts', () => {
    for (const hp of [0.5, 1, 1.5, 7.5, 40, 60, 75, 125, 150, 200, 1234.5])
      expect(horsepowerOf(Number((hp * 0.7457).toPrecision(15)))).toBe(hp);
  });
});

describe('a written cell', () => {
  it.each<[Parameters<typeof csvCell>[0], string]>([
    ['=1+1', "'=1+1"],
    ['+49 1', "'+49 1"],
    ['-5', "'-5"],
    ['@here', "'@here"],
    ['\tx', "'\tx"],
    ['\rx', '"\'\rx"'],
    ["'=x", "''=x"],
    ["it's", "it's"],
    [-5, '-5'],
    [-1e-7, '-1e-7'],
    [0, '0'],
    [true, 'yes'],
    [undefined, ''],
    [Number.NaN, ''],
    ['a,b', '"a,b"'],
    ['say "x"', '"say ""x"""'],
    [' x', '" x"'],
    ['=HYPERLINK("x","y")', '"\'=HYPERLINK(""x"",""y"")"'],
  ])('of %j is %j', (value, cell) => expect(csvCell(value)).toBe(cell));

  it('has the decimal sign of its sheet', () => {
    expect(csvRow([-4.5, 'x'], { delimiter: ';', decimal: ',' })).toBe('-4,5;x\r\n');
    expect(csvRow([-4.5, 'x'], { delimiter: ',', decimal: ',' })).toBe('"-4,5",x\r\n');
  });
});

describe('the file of rejected rows', () => {
  const rows = [
    { ...BASE, tag: 'A', rated_voltage_v: '0', Paint: '=red', description: 'x, "y"' },
    { ...BASE, tag: '-B', input_power_kw: '-21.5', rated_current_a: '1,250' },
    { ...BASE, tag: 'C' },
  ];

  it('has the original cells, the row, the reasons and the remedies, and is guarded like any other', async () => {
    const text = rejectedCsv(mustParse(await parseText(csv(rows))));
    const [header = [], a = [], b = []] = Papa.parse<string[]>(text.trimEnd(), { newline: '\r\n' }).data;
    expect(header.slice(-3)).toEqual(['rejected_row', 'rejected_reason', 'rejected_remedy']);
    expect([a[0], a[3], a[4], a[5], a.at(-3)]).toEqual(['A', '0', "'=red", 'x, "y"', '2']);
    expect([b[0], b[6], b[7], b.at(-3)]).toEqual(["'-B", '-21.5', '1,250', '3']);
    expect(a.at(-2)).toContain('never zero or less');
    expect(b.at(-1)).toContain('Write all digits together');
  });

  it('rejects the same cells again, and imports without a trace of itself once they are mended', async () => {
    const first = mustParse(await parseText(csv(rows)));
    const text = rejectedCsv(first);
    const again = mustParse(await parseText(text));
    expect(again.rejected.map(({ issues }) => issues.map(({ code }) => code))).toEqual(
      first.rejected.map(({ issues }) => issues.map(({ code }) => code)),
    );
    expect(rejectedCsv(again).split('\r\n')[0]).toBe(text.split('\r\n')[0]);
    const mended = mustParse(await parseText(text.replace('A,North,30,0,', 'A,North,30,460,').replace('"1,250"', '1250')));
    expect(mended.rejected).toEqual([]);
    expect(mended.warnings.map(({ code }) => code)).toEqual(['unknown-column', 'reading-undated', 'implausible-value']);
    expect(mended.motors.map(({ motor, notes }) => [motor.tag, notes])).toEqual([
      ['A', { Paint: '=red' }],
      ['-B', {}],
    ]);
  });

  it('keeps the delimiter and decimal sign of its sheet', async () => {
    const sheet = { name: 'x.csv', text: csv([{ ...BASE, rated_power_kw: '30,5', poles: '5' }], ';') };
    const parsed = mustParse(await parseFleet(sheet, { decimal: ',' }));
    expect(rejectedCsv(parsed).split('\r\n')[1]).toMatch(/^M-1;North;30,5;460;5;2;/);
  });
});
