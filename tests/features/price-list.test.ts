import { describe, expect, it } from 'vitest';
import { parseFleet } from '@/lib/features/fleet/parse';
import { addPriceForm, PRICE_CELLS } from '@/lib/features/prices/schema';
import { cellsOf, pricesCsv } from '@/lib/features/prices/write-prices';
import { readPrices } from '@/lib/features/study/prices';
import { loadTables } from '@/lib/reference/load';

describe('a price list', () => {
  const HEADER =
    'item,rated_power_kw,poles,efficiency_class,nominal_efficiency_pct,rated_speed_rpm,frame,enclosure,price,currency,date,lead_time_weeks,source\n';
  const read = (rows: string, options = {}) =>
    readPrices({ name: 'prices.csv', text: HEADER + rows }, { currency: 'USD', ...options });

  it('is read by the rules of the fleet sheet', async () => {
    const outcome = await read(
      'motor,30,4,premium,94.1,1775,326T,enclosed,4300,usd,2025-11-01,6,quotation 17\nrewind,30,,,,,,,1800,,,,\n',
    );
    if (!outcome.ok) expect.fail(outcome.problem.text);
    expect(outcome).toMatchObject({ warnings: [], rejectedRows: 0, list: { invented: false } });
    expect(outcome.list.prices).toEqual([
      {
        item: 'motor',
        ratedPowerKw: 30,
        poles: 4,
        efficiencyClass: 'premium',
        nominalEfficiencyPct: 94.1,
        ratedSpeedRpm: 1775,
        frame: '326T',
        enclosure: 'enclosed',
        price: 4300,
        date: '2025-11-01',
        leadTimeWeeks: 6,
        source: 'quotation 17',
      },
      { item: 'rewind', ratedPowerKw: 30, price: 1800 },
    ]);
  });

  it('leaves bad rows out and says why, row by row', async () => {
    const outcome = await read(
      'motor,30,4,,,,,,"4,300",,,,\npump,30,4,,,,,,4300,,,,\nmotor,30,4,,,,,,4300,EUR,,,\nmotor,30,4,,,,,,,,,,\nmotor,30,4,,,,,,-1,,,,\n\nmotor,30,4,,0.94,,,,4300,,,,\n',
    );
    if (!outcome.ok) expect.fail(outcome.problem.text);
    expect(outcome.warnings.map(({ row, column, code }) => [row, column, code])).toEqual([
      [2, 'price', 'grouped-thousands'],
      [3, 'item', 'unknown-word'],
      [4, 'currency', 'other-currency'],
      [5, 'price', 'missing-price'],
      [6, 'price', 'not-allowed'],
      [8, 'nominal_efficiency_pct', 'efficiency-as-fraction'],
      [8, 'efficiency_class', 'price-without-class'],
    ]);
    expect(outcome.rejectedRows).toBe(5);
    expect(outcome.list.prices).toHaveLength(1);
  });

  it('says which of two lines for one thing holds, what is of a later day, and that no motor is free', async () => {
    const outcome = await read(
      'motor,30,4,premium,,,,enclosed,4300,,2025-11-01,,\nmotor,30,4,IE3,,,,enclosed,3900,,2026-02-01,,\nmotor,30,4,IE4,,,,enclosed,5000,,,,\n' +
        'rewind,30,,,,,,,1800,,,,\nrewind,30,,,,,,,1700,,,,\nmotor,37,4,premium,,,,,0,,,,\nremoval-install,,,,,,,,0,,,,\n',
      { asOf: '2026-01-01' },
    );
    if (!outcome.ok) expect.fail(outcome.problem.text);
    expect(outcome.warnings.map(({ row, column, code }) => [row, column, code])).toEqual([
      [3, 'price', 'price-repeated'],
      [3, 'date', 'price-after-as-of'],
      [6, 'price', 'price-repeated'],
      [7, 'price', 'price-of-nothing'],
    ]);
    expect(outcome.warnings[0]?.text).toContain('as row 2, at 3900 in place of 4300');
    expect(outcome.rejectedRows).toBe(1);
  });

  it('says of a motor that no option would buy, row by row, that its price serves nothing', async () => {
    const outcome = await read(
      'motor,30,4,,,,,,4300,,,,\nmotor,37,4,IE2,,,,,4100,,,,\nmotor,45,4,ie3,,,,,5000,,,,\nmotor,55,4,IE4,,,,,6000,,,,\nmotor,75,4,Premium,,,,,7000,,,,\nrewind,30,,,,,,,1800,,,,\n',
    );
    if (!outcome.ok) expect.fail(outcome.problem.text);
    expect(outcome.warnings.map(({ row, column, code }) => [row, column, code])).toEqual([
      [2, 'efficiency_class', 'price-without-class'],
      [3, 'efficiency_class', 'price-below-premium'],
    ]);
    for (const { text, remedy } of outcome.warnings) expect(`${text} ${remedy}`).toMatch(/never used\. .*premium/);
    expect(outcome.rejectedRows).toBe(0);
    expect(outcome.list.prices).toHaveLength(6);
  });

  it('leaves the program as it came, with date and lead time; a copy of the invented list stays invented', async () => {
    const text = `${HEADER}motor,30,4,premium,94.1,1775,326T,enclosed,4300.5,USD,2025-11-01,6,"Shop A, by mail"\nrewind,,,,,,,,1800,USD,,,\n`;
    const first = await readPrices({ name: 'p.csv', text }, { currency: 'USD' });
    if (!first.ok) expect.fail(first.problem.text);
    const lines = first.list.prices.map((price) => ({ price, currency: 'USD' }));
    expect(pricesCsv(lines).replaceAll('\r', '')).toBe(text);
    // As cells of a form it is the same price, too: all but the currency, which is the study's.
    const cells = cellsOf(lines[0]?.price ?? { item: 'rewind', price: 0 });
    expect(addPriceForm.parse({ study: 's', who: 'R. Example', ...cells })).toMatchObject(cells);
    expect([...Object.keys(cells), 'currency'].sort()).toEqual(HEADER.trim().split(',').sort());
    expect([...PRICE_CELLS, 'currency'].sort()).toEqual(HEADER.trim().split(',').sort());
    const shipped = loadTables().prices;
    const copy = await readPrices(
      { name: 'p.csv', text: pricesCsv(shipped.prices.map((price) => ({ price, currency: 'USD' }))) },
      { currency: 'USD' },
    );
    expect(copy).toMatchObject({ ok: true, warnings: [], rejectedRows: 0 });
    expect(copy.ok && copy.list).toEqual(JSON.parse(JSON.stringify(shipped)));
  });

  it('reads a decimal comma once it is stated', async () => {
    const outcome = await readPrices({ name: 'p.csv', text: 'item;price\nrewind;99,5\n' }, { currency: 'EUR', decimal: ',' });
    expect(outcome).toMatchObject({ ok: true, list: { prices: [{ item: 'rewind', price: 99.5 }] } });
  });

  it('reports unknown columns, and refuses a list without item or price or with a column twice', async () => {
    const unknown = await readPrices({ name: 'p.csv', text: 'item,price,pirce\nrewind,1,2\n' }, { currency: 'USD' });
    expect(unknown).toMatchObject({ ok: true, warnings: [{ row: 1, column: 'pirce', code: 'unknown-price-column' }] });
    const code = async (text: string) => {
      const outcome = await readPrices({ name: 'p.csv', text }, { currency: 'USD' });
      return outcome.ok ? 'read' : outcome.problem.code;
    };
    expect(await code('item,source\nrewind,x\n')).toBe('missing-price-column');
    expect(await code('item,price,Price\nrewind,1,2\n')).toBe('duplicate-column');
    expect(await code('')).toBe('empty-file');
    expect(await code('item,price\n')).toBe('read');
  });

  it('is not taken for a fleet sheet', async () => {
    expect(await parseFleet({ name: 'p.csv', text: HEADER })).toMatchObject({ ok: false, problem: { code: 'missing-column' } });
  });
});
