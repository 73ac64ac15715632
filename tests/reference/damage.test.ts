/** A damaged table stops the program with its file, row and column; a sound folder loads frozen. */
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { catalog, checkCatalog, priceEntry } from '@/lib/reference/catalog';
import { referenceFolder } from '@/lib/reference/folder';
import { checkTables, DamagedTable, loadTables } from '@/lib/reference/load';
import { statusWords } from '@/lib/reference/read-table';

let folder = '';

beforeEach(() => {
  folder = join(mkdtempSync(join(tmpdir(), 'lossbook-reference-')), 'reference-data');
  cpSync(referenceFolder(), folder, { recursive: true });
});

afterEach(() => rmSync(join(folder, '..'), { recursive: true, force: true }));

function edit(file: string, change: (text: string) => string): void {
  const path = join(folder, file);
  const before = readFileSync(path, 'utf8');
  const after = change(before);
  expect(after, 'the test must change the file').not.toBe(before);
  writeFileSync(path, after);
}

/** Replaces one cell; rows count as in a spreadsheet. Only for tables without quoted cells up to that column. */
function setCell(file: string, row: number, column: string, value: string): void {
  edit(file, (text) => {
    const lines = text.split('\n');
    const at = (lines[0] ?? '').split(',').indexOf(column);
    const cells = (lines[row - 1] ?? '').split(',');
    cells[at] = value;
    lines[row - 1] = cells.join(',');
    return lines.join('\n');
  });
}

function message(): string {
  try {
    loadTables(folder);
  } catch (error) {
    expect(error).toBeInstanceOf(DamagedTable);
    return error instanceof Error ? error.message : '';
  }
  return 'no damage found';
}

describe('a damaged cell', () => {
  it.each([
    ['efficiency/us-premium.csv', 17, 'nominal_efficiency_pct', '9a.1', 'is not a number'],
    ['efficiency/us-premium.csv', 2, 'nominal_efficiency_pct', '', 'no figure'],
    ['efficiency/us-energy-efficient.csv', 30, 'nominal_efficiency_pct', '936', 'is not between 0 and 100'],
    ['efficiency/iec-50hz.csv', 100, 'nominal_efficiency_pct', '9.1e1', 'is not a number'],
    ['efficiency/iec-60hz.csv', 5, 'poles', '3', 'is not an even number of poles'],
    ['efficiency/us-premium.csv', 9, 'status', 'certain', 'is no status word'],
    ['efficiency/us-premium.csv', 9, 'enclosure', 'shut', 'is none of the words open, enclosed'],
    ['efficiency/us-premium.csv', 9, 'frequency_hz', '55', 'is none of the words 50, 60'],
    ['efficiency/nominal-to-minimum.csv', 52, 'minimum_efficiency_pct', 'NaN', 'is not a number'],
    ['efficiency/iec-50hz-coefficients.csv', 3, 'coefficient_a', '-', 'is not a number'],
    ['ratings/code-letters.csv', 3, 'code_letter', 'O', 'is no code letter'],
    ['ratings/frames.csv', 40, 'frame', '32', 'is no frame designation'],
    ['ratings/full-load-current.csv', 4, 'current_460v_a', '-1', 'is not between'],
    ['condition/unbalance-derating.csv', 6, 'derating_factor', '1.2', 'is not between 0 and 1'],
    ['condition/vibration-zones.csv', 3, 'group', '4', 'is none of the words 1, 2'],
    ['decision/drives.csv', 8, 'efficiency_pct', ' 95', 'is not a number'],
    ['prices/invented-prices.csv', 50, 'price', '', 'is empty, where a number must stand'],
    ['prices/invented-prices.csv', 51, 'source', 'a quotation', "does not begin with the word 'invented'"],
    ['prices/invented-prices.csv', 52, 'date', '1/11/2025', 'is no ISO date'],
  ])('%s, row %i, %s = "%s" is named with its remedy', (file, row, column, value, problem) => {
    setCell(file, row, column, value);
    const text = message();
    expect(text).toContain(`reference-data/${file}, row ${row}, column ${column}: `);
    expect(text).toContain(problem);
    expect(text).toMatch(/(Restore the file|Use one of the status words)/);
  });

  it('that fills a gap, or that leaves a limit without value and formula, is named', () => {
    edit('efficiency/iec-60hz.csv', (text) => text.replace(',,gap', ',91.7,gap'));
    expect(message()).toMatch(/iec-60hz\.csv, row \d+, column nominal_efficiency_pct: '91\.7' stands in a row of status gap/);
  });
});

describe('a damaged file', () => {
  it('with a column missing names the column in row 1', () => {
    edit('condition/class-temperatures.csv', (text) => text.replace('rise_k', 'rise'));
    expect(message()).toContain('reference-data/condition/class-temperatures.csv, row 1, column rise_k: the column is missing');
  });

  it('with a column that the passport does not describe names the column', () => {
    edit('condition/class-temperatures.csv', (text) => text.replace(/^(.+)$/gm, '$1,1').replace(/,1\n/, ',remark\n'));
    expect(message()).toContain('row 1, column remark: the passport does not give the unit of this column');
  });

  it('with a repeated key names both rows', () => {
    edit('ratings/horsepower-steps.csv', (text) => text.replace(/^0\.75,/m, '0.5,'));
    expect(message()).toContain('ratings/horsepower-steps.csv, row 3, column rated_power_hp: the row repeats the key of row 2');
  });

  it('with a row cut short names the row', () => {
    edit('ratings/code-letters.csv', (text) => text.replace(/^D,4\.0,4\.5,.*$/m, 'D,4.0'));
    expect(message()).toContain('ratings/code-letters.csv, row 5: the row has 2 cells, the header 5');
  });

  it('with an open quotation mark, or none at all, is named', () => {
    edit('ratings/code-letters.csv', (text) => text.replace('D,4.0', '"D,4.0'));
    expect(message()).toMatch(/ratings\/code-letters\.csv, row \d+: /);
  });

  it('that is empty or missing is named', () => {
    writeFileSync(join(folder, 'losses/loss-shares.csv'), '');
    expect(message()).toContain('reference-data/losses/loss-shares.csv: the table is empty');
    rmSync(join(folder, 'losses/loss-shares.csv'));
    expect(message()).toContain('reference-data/losses/loss-shares.csv: the table is missing');
  });

  it('with a byte order mark or Windows line ends is sound', () => {
    edit('ratings/code-letters.csv', (text) => `\uFEFF${text.replaceAll('\n', '\r\n')}`);
    expect(message()).toBe('no damage found');
  });
});

describe('a damaged passport', () => {
  const file = 'decision/belts.source.json';

  it.each(['title', 'issuer', 'edition', 'clause', 'columns', 'read', 'verified', 'reuse', 'misprints'])(
    'without %s is named',
    (key) => {
      edit(file, (text) => JSON.stringify({ ...JSON.parse(text), [key]: undefined }));
      expect(message()).toContain(`reference-data/${file}: ${key} is missing, empty or unknown`);
    },
  );

  it('with an empty sentence or an unknown key is named', () => {
    edit(file, (text) => JSON.stringify({ ...JSON.parse(text), edition: ' ' }));
    expect(message()).toContain(`reference-data/${file}: edition is missing, empty or unknown`);
    edit(file, (text) => JSON.stringify({ ...JSON.parse(text), edition: '2012', price: 1 }));
    expect(message()).toContain(`reference-data/${file}: the passport is missing, empty or unknown`);
  });

  it('that is no JSON, or is missing, is named', () => {
    writeFileSync(join(folder, file), '{');
    expect(message()).toContain(`reference-data/${file}: the passport is not readable as JSON`);
    rmSync(join(folder, file));
    expect(message()).toContain(`reference-data/${file}: the passport is missing`);
  });
});

describe('sound tables', () => {
  it('load frozen to the last cell', () => {
    const loaded = loadTables(folder);
    const row = loaded.tables.usPremium.rows[0];
    for (const part of [
      loaded,
      loaded.tables,
      loaded.tables.usPremium,
      loaded.tables.usPremium.rows,
      row,
      loaded.prices.prices[0],
    ]) {
      expect(Object.isFrozen(part)).toBe(true);
    }
  });

  it('have one passport for each file of the catalogue, and every file of the folder is in the catalogue', () => {
    const files = [...Object.values(catalog), ...Object.values(checkCatalog), priceEntry].map((entry) => entry.file);
    const inFolder = readdirSync(folder, { recursive: true })
      .map(String)
      .filter((name) => name.endsWith('.csv'));
    expect(inFolder.map((name) => name.replaceAll('\\', '/')).sort()).toEqual([...files].sort());
    const { passports } = loadTables(folder);
    expect(passports.map((p) => p.file)).toEqual(files);
    expect(new Set(passports.map((p) => p.id)).size).toBe(files.length);
  });

  it('that are said to be computed with are each asked for by the program', () => {
    const sources = ['lib/engine', 'lib/features'].flatMap((part) =>
      readdirSync(part, { recursive: true, encoding: 'utf8' })
        .filter((name) => name.endsWith('.ts') && !name.includes('generated'))
        .map((name) => readFileSync(join(part, name), 'utf8')),
    );
    const asked = (name: string) => sources.some((text) => new RegExp(`ables\\.${name}\\b`).test(text));
    expect(Object.keys(catalog).filter((name) => !asked(name))).toEqual([]);
    expect(Object.keys(checkCatalog).filter(asked)).toEqual([]);
  });

  it('count their rows by status, gaps included', () => {
    const passport = loadTables(folder).passports.find((p) => p.name === 'usStandardPartLoad');
    expect(passport).toMatchObject({ id: 'us-standard-part-load', rowCount: 436, statusCounts: { memory: 389, gap: 47 } });
  });

  it('are read once, and are told sound or damaged afresh for the health endpoint', () => {
    expect(loadTables()).toBe(loadTables());
    expect(checkTables(folder)).toEqual({ ok: true });
    setCell('efficiency/us-premium.csv', 17, 'nominal_efficiency_pct', '');
    expect(checkTables(folder)).toMatchObject({ ok: false, problem: expect.stringContaining('us-premium.csv, row 17') });
    expect(checkTables()).toEqual({ ok: true });
  });

  it('use the status words that the guide of the folder explains, and no other', () => {
    const guide = readFileSync(join(folder, 'README.md'), 'utf8');
    const explained = [...guide.matchAll(/^\| `([a-z-]+)` \|.*\|.*\|$/gm)].map((match) => match[1]);
    expect(statusWords.filter((word) => !explained.includes(word))).toEqual([]);
  });
});
