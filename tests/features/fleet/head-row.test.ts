import { describe, expect, it } from 'vitest';
import { parseBench } from '@/lib/features/bench/parse-sheet';
import { readHistory } from '@/lib/features/fleet/indicator-history';
import { type ParseOptions, parseFleet } from '@/lib/features/fleet/parse';
import { readPrices } from '@/lib/features/study/prices';
import { mustParse, parseText, problemOf } from './support/sheet';
import { workbook } from './support/workbook';

const HEAD = 'tag,rated_power_kw,rated_voltage_v,area';
const ROWS = 'A-1,30,460,Hall\nA-2,fifty,460,Hall\n';
const TITLE = 'Motors of the north mill,,,';

async function passedOver(text: string, options?: ParseOptions) {
  const parsed = mustParse(await parseText(text, options));
  return {
    tags: parsed.motors.map(({ motor }) => motor.tag),
    rejected: parsed.rejected.map(({ row }) => row),
    above: parsed.warnings.filter(({ code }) => code === 'rows-above-names').map(({ row, text: words }) => [row, words]),
    rowsAbove: parsed.rowsAbove,
  };
}

describe('column names below a title', () => {
  it.each([
    ['one line without delimiters', `Motors of the north mill\n${HEAD}\n${ROWS}`, 2],
    ['a title, a note and an empty row', `${TITLE}\nRead in March,,,\n,,,\n${HEAD}\n${ROWS}`, 4],
    ['an empty row above the title', `\n${TITLE}\n${HEAD}\n${ROWS}`, 3],
    ['semicolons below a title without any', `Motors of the north mill\n${HEAD}\n${ROWS}`.replaceAll(',', ';'), 2],
    ['names over groups of columns', `,Plate,Plate,\n${HEAD}\n${ROWS}`, 2],
  ])('are read: %s', async (_, text, head) => {
    const { tags, rejected, above, rowsAbove } = await passedOver(text);
    expect(tags).toEqual(['A-1']);
    // Rows keep the numbers that they have in the file.
    expect(rejected).toEqual([head + 2]);
    expect(rowsAbove).toBe(head - 1);
    expect(above).toHaveLength(1);
    expect(above[0]?.[1]).toContain(`The column names are those of row ${head};`);
  });

  it('says of each row what stood there', async () => {
    const { above } = await passedOver(`${TITLE}\n,,,\nRead by,R. Example,,\n${HEAD}\n${ROWS}`);
    expect(above).toEqual([
      [
        1,
        'The column names are those of row 4; what stands above them was passed over: row 1 with “Motors of the north mill”, row 3 with “Read by R. Example”.',
      ],
    ]);
  });

  it('have nothing to report of empty rows alone', async () => {
    expect(await passedOver(`,,,\n${HEAD}\n${ROWS}`)).toMatchObject({ tags: ['A-1'], rejected: [4], above: [], rowsAbove: 1 });
  });

  it('are known by the names that a recipe gives them', async () => {
    const text = 'Motors of the mill\nMotor,kW,Volts\nA-1,30,460\n';
    const mapping = { Motor: 'tag', kW: 'rated_power_kw', Volts: 'rated_voltage_v' };
    expect((await passedOver(text, { mapping })).tags).toEqual(['A-1']);
    expect(await problemOf(parseText(text))).toBe('missing-column');
  });

  it('in a workbook are read alike', async () => {
    const data = await workbook([
      ['Motors of the mill'],
      [],
      ['tag', 'rated_power_kw', 'rated_voltage_v'],
      ['A-1', 30, 460],
      ['A-2', 'x', 460],
    ]);
    const parsed = mustParse(await parseFleet({ name: 'motors.xlsx', data }));
    expect(parsed.motors.map(({ motor }) => motor.tag)).toEqual(['A-1']);
    expect(parsed.rejected.map(({ row }) => row)).toEqual([5]);
    expect(parsed.warnings.map(({ code }) => code)).toContain('rows-above-names');
  });

  it('carry warnings about names and dates in their own row', async () => {
    const parsed = mustParse(await parseText(`${TITLE}\n${HEAD},colour,input_power_kw\nA-1,30,460,Hall,red,20\n`));
    expect(parsed.warnings.map(({ code, row }) => [code, row])).toEqual([
      ['rows-above-names', 1],
      ['unknown-column', 2],
      ['reading-undated', 2],
    ]);
  });
});

describe('a doubt about the column names', () => {
  it.each([
    ['a motor stands above them', `A-0,30,460,Hall\n${HEAD}\n${ROWS}`],
    ['a name and a number stand above them', `Revision,3,,\n${HEAD}\n${ROWS}`],
    ['a required name is missing', `${TITLE}\ntag,rated_power_kw,area,site\nA-1,30,Hall,North\n`],
    ['another row of names stands above them', `tag,site,area,description\n${HEAD}\n${ROWS}`],
    ['they stand too far down', `${`${TITLE}\n`.repeat(20)}${HEAD}\n${ROWS}`],
  ])('refuses the sheet as ever: %s', async (_, text) => {
    expect(await problemOf(parseText(text))).toBe('missing-column');
  });

  it('is none where the first row names all, whatever stands below', async () => {
    const parsed = mustParse(await parseText(`${HEAD}\n${ROWS}${HEAD}\n`));
    expect(parsed.rowsAbove).toBe(0);
    expect(parsed.rejected.map(({ row }) => row)).toEqual([3, 4]);
  });

  it('is none in the last row that may hold them', async () => {
    expect((await passedOver(`${`${TITLE}\n`.repeat(19)}${HEAD}\n${ROWS}`)).tags).toEqual(['A-1']);
  });
});

it('an indicator history below a title is read as well', async () => {
  const text = 'Vibration of the mill\ntag,indicator,value,unit\nA-1,vibration,2,mm/s\n';
  const read = await readHistory({ name: 'history.csv', text });
  if (!read.ok) expect.fail(read.problem.text);
  expect(read.values.map(({ row, value }) => [row, value])).toEqual([[3, 2]]);
  expect(read.warnings.map(({ code, row }) => [code, row])).toContainEqual(['rows-above-names', 1]);
});

describe('column names of a price list below a title', () => {
  const read = (text: string) => readPrices({ name: 'prices.csv', text }, { currency: 'USD' });
  const HEAD_OF_PRICES = 'item,rated_power_kw,price,colour';

  it('are read, and rows keep the numbers that they have in the file', async () => {
    const found = await read(`Offer of the motor shop\n,,,\n${HEAD_OF_PRICES}\nrewind,30,1800,\nrewind,37,much,\n`);
    if (!found.ok) expect.fail(found.problem.text);
    expect(found.list.prices).toEqual([{ item: 'rewind', ratedPowerKw: 30, price: 1800 }]);
    expect(found.rejectedRows).toBe(1);
    expect(found.warnings.map(({ code, row }) => [code, row])).toEqual([
      ['rows-above-names', 1],
      ['unknown-price-column', 3],
      ['not-a-number', 5],
    ]);
  });

  it.each([
    ['a price stands above them', `rewind,30,1800,\n${HEAD_OF_PRICES}\nrewind,37,2000,\n`],
    ['one that is required is missing', 'Offer\nitem,rated_power_kw,poles\nrewind,30,4\n'],
  ])('are refused when %s', async (_, text) => {
    const outcome = await read(text);
    expect(outcome.ok ? 'read' : outcome.problem.code).toBe('missing-price-column');
  });
});

describe('column names of a bench sheet below a title', () => {
  it('are read, and what was passed over is said', async () => {
    const text = 'Test bench 2\nsection,voltage_v,current_a\nload,460,44\nload,460,x\n';
    const read = await parseBench({ name: 'bench.csv', text });
    if (!read.ok) expect.fail(read.problem.text);
    expect(read.tests.map(({ sections }) => sections.load)).toEqual([[{ row: 3, voltageV: 460, currentA: 44 }]]);
    expect(read.warnings.map(({ code, row }) => [code, row])).toEqual([['rows-above-names', 1]]);
    expect(read.rejected.map(({ row }) => row)).toEqual([4]);
  });

  it('are refused when a point stands above them', async () => {
    const read = await parseBench({ name: 'bench.csv', text: 'load,460,44\nsection,voltage_v,current_a\nload,460,44\n' });
    expect(read.ok ? 'read' : read.problem.code).toBe('missing-bench-column');
  });
});
