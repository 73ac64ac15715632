import { describe, expect, test } from 'vitest';
import { blankSheet, blankWorkbook } from '@/lib/features/fleet/blank-sheet';
import { COLUMNS } from '@/lib/features/fleet/columns';
import { firstLook, headerFingerprint, suggestRecipe } from '@/lib/features/import/recipe';
import { AS_NOTE, LEFT_OUT, placeOf } from '@/lib/features/import/recipe-form';
import { guessDelimiter, guessEncoding } from '@/lib/features/import/sample-sheet';
import { suggestColumns } from '@/lib/features/import/suggest-columns';
import { sheetFile } from './support/import-sheet';

async function look(content: string | Uint8Array) {
  const { encoding, outcome } = await firstLook(sheetFile(content), 'sheet');
  if (!outcome.ok) expect.fail(outcome.problem.text);
  return { encoding, sample: outcome.sample, recipe: suggestRecipe(outcome.sample, encoding) };
}

const column = (...cells: string[]) => `tag;rated_power_kw\n${cells.map((cell, at) => `M${at};"${cell}"`).join('\n')}\n`;

describe('the decimal sign that a sheet shows', () => {
  test.each([
    [['1.5', '2'], '.', false],
    [['1,5', '2'], ',', false],
    [['10', '20'], '.', false],
    // One clear number tells how the doubtful ones are meant.
    [['1.234', '12.5'], '.', false],
    [['1,234', '12,5'], ',', false],
    [['1.234', '2.500'], undefined, true],
    [['1,234'], undefined, true],
    // Both signs: whichever is chosen, the others are rejected in words.
    [['1.5', '2,5'], undefined, true],
    [['0.125', '0.250'], '.', false],
    [['-1,250', '3'], undefined, true],
  ])('%j gives %s, to be asked: %s', async (cells, sign, asked) => {
    const { sample, recipe } = await look(column(...cells));
    expect(recipe.decimal).toBe(sign);
    expect(sample.decimal.doubtful).toBe(asked);
    if (asked) expect(sample.decimal.samples.length).toBeGreaterThan(0);
    expect(sample.decimal.samples.length).toBeLessThanOrEqual(3);
  });

  test('numbers of a workbook need no sign', async () => {
    const { sample, recipe } = await look(await blankWorkbook());
    expect(sample.kind).toBe('xlsx');
    expect(recipe.decimal).toBe('.');
    expect(sample.decimal.doubtful).toBe(false);
  });

  test('text columns do not count', async () => {
    const { sample } = await look('tag;frame;rated_power_kw\nA-1;1.234;5\n');
    expect(sample.decimal).toMatchObject({ doubtful: false, samples: [] });
  });
});

describe('column names below a title', () => {
  const names = 'Motor ID,HP,Volts,FLA';
  test.each([
    `Motors of the mill,,,\n,,,\n${names}\nA-1,30,460,38\n`,
    `Motors of the mill\n${names}\nA-1,30,460,38\n`,
    `Motors of the mill\n${names}\nA-1,30,460,38\n`.replaceAll(',', ';'),
  ])('%j: read from there', async (text) => {
    const { sample } = await look(text);
    expect(sample.namesInRow).toBeUndefined();
    expect(sample.columns.map(({ title }) => title)).toEqual(names.split(','));
    expect(sample.columns.map(({ values }) => values)).toEqual([['A-1'], ['30'], ['460'], ['38']]);
  });

  test.each([
    // Without the voltage it is not sure that these are the names.
    ['Motors of the mill,,,\n,,,\nMotor ID,HP,FLA,RPM\nA-1,30,38,1770\n', 3],
    // What stands above may be a motor.
    [`A-0,30,460,38\n${names}\nA-1,30,460,38\n`, 2],
    // A head in the first row stays the head, whatever stands below it.
    [`${names}\nA-1,30,460,38\n${names}\n`, undefined],
    // Nobody’s names, and no others either.
    ['Name,Size\nA-1,30\nB-2,20\n', undefined],
  ])('%j: row %s', async (text, row) => {
    expect((await look(text)).sample.namesInRow).toBe(row);
  });
});

describe('delimiter and encoding', () => {
  test.each([
    ['tag,rated_power_kw,rated_voltage_v\nA,1,2\n', ','],
    ['tag;rated_power_kw;rated_voltage_v\nA;1,5;2\n', ';'],
    ['tag\trated_power_kw\trated_voltage_v\nA\t1\t2\n', '\t'],
    ['Motor;HP;Volts\nA;1;2\n', ';'],
    ['Motor\tService, in words\tHP\nA\tb\t1\n', '\t'],
  ])('%j is divided by %j', async (text, delimiter) => {
    expect(await guessDelimiter(sheetFile(text), 'utf-8')).toBe(delimiter);
  });

  const sheet = 'tag,rated_power_kw,rated_voltage_v,description\nA,1,460,Kühlwasserpumpe für Öl\n';
  const utf16 = (mark: boolean) => Buffer.from(`${mark ? '\ufeff' : ''}${sheet}`, 'utf16le');
  test.each([
    ['utf-8', Buffer.from(sheet, 'utf8')],
    ['utf-8', Buffer.from(`\ufeff${sheet}`, 'utf8')],
    ['windows-1252', Buffer.from(sheet, 'latin1')],
    ['utf-16le', utf16(true)],
    ['utf-16le', utf16(false)],
    ['utf-16be', utf16(true).swap16()],
  ] as const)('is read as %s', async (encoding, bytes) => {
    expect(await guessEncoding(sheetFile(bytes))).toBe(encoding);
    const { sample } = await look(bytes);
    expect(sample.columns.map(({ title }) => title)).toEqual(['tag', 'rated_power_kw', 'rated_voltage_v', 'description']);
    expect(sample.columns.at(-1)?.values).toEqual(['Kühlwasserpumpe für Öl']);
  });
});

describe('places of columns', () => {
  test('our own names go to themselves, all of them', () => {
    const titles = COLUMNS.map(({ name }) => name.toUpperCase());
    expect(suggestColumns(titles).map(({ column: name, exact }) => [name, exact])).toEqual(
      COLUMNS.map(({ name }) => [name, true]),
    );
  });

  test('labels of the screens are understood as well, each once', () => {
    const suggested = suggestColumns(COLUMNS.map(({ label }) => label)).map(({ column: name }) => name);
    expect(suggested.filter((name) => name === undefined)).toEqual([]);
    expect(new Set(suggested).size).toBe(COLUMNS.length);
  });

  const PLACES: readonly (readonly [titles: readonly string[], columns: readonly (string | undefined)[]])[] = [
    [
      ['Motor ID', 'HP', 'Volts', 'FLA', 'RPM', 'Eff %'],
      ['tag', 'rated_power_hp', 'rated_voltage_v', 'rated_current_a', 'rated_speed_rpm', 'nominal_efficiency_pct'],
    ],
    // The plate's value first; what is left over is a reading.
    [
      ['Voltage', 'rated_voltage_v'],
      ['voltage_v', 'rated_voltage_v'],
    ],
    [
      ['kW', 'Measured kW'],
      ['rated_power_kw', 'input_power_kw'],
    ],
    [
      ['V12', 'V23', 'V31', 'Cos φ'],
      ['voltage_ab_v', 'voltage_bc_v', 'voltage_ca_v', 'rated_power_factor_pct'],
    ],
    [
      ['Current (A)', 'Voltage [V]', 'Power (kW)'],
      ['rated_current_a', 'rated_voltage_v', 'rated_power_kw'],
    ],
    [
      ['Current a', 'Current b', 'Current c', 'Current'],
      ['current_a_a', 'current_b_a', 'current_c_a', 'rated_current_a'],
    ],
    [
      ['HP', 'Horsepower'],
      ['rated_power_hp', undefined],
    ],
    [
      ['Paint', ''],
      [undefined, undefined],
    ],
  ];
  test.each(PLACES)('%j', (titles, expected) => {
    expect(suggestColumns(titles).map(({ column: name }) => name)).toEqual(expected);
  });

  test('the screen shows for each column where it goes', () => {
    const mapping = { HP: 'rated_power_hp', Paint: null, frame: 'kept: frame' };
    expect(['tag', 'hp', 'paint', 'frame', 'Inventory', 'rejected_reason'].map((title) => placeOf(title, mapping))).toEqual([
      'tag',
      'rated_power_hp',
      LEFT_OUT,
      AS_NOTE,
      AS_NOTE,
      LEFT_OUT,
    ]);
  });

  test('a header is known again whatever its case, and with the columns of a file of rejected rows', () => {
    const mark = headerFingerprint(['Tag', 'kW']);
    expect(headerFingerprint(['tag ', 'KW', 'rejected_row', 'rejected_reason', 'rejected_remedy'])).toBe(mark);
    expect(headerFingerprint(['kW', 'Tag'])).not.toBe(mark);
  });

  test('the blank sheet needs no suggestions', async () => {
    const { recipe } = await look(blankSheet());
    expect(recipe).toMatchObject({ decimal: '.', delimiter: ',', encoding: 'utf-8', mapping: {}, emptyWords: [] });
  });

  test('words for nothing are found in number columns alone', async () => {
    const { recipe } = await look('tag,rated_power_kw,rated_voltage_v,description\nA,1,n/a,none\nB,-,460,-\n');
    expect([...recipe.emptyWords].sort()).toEqual(['-', 'n/a']);
  });
});
