import ExcelJS from 'exceljs';
import Papa from 'papaparse';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Figure, MotorResult } from '@/lib/engine';
import { readResults, readShownRunId } from '@/lib/features/evaluation/data';
import { enqueueEvaluation } from '@/lib/features/evaluation/mutations';
import { workThroughQueue } from '@/lib/features/evaluation/work-through-queue';
import { RESULT_COLUMNS } from '@/lib/features/results/columns';
import { readFleetPack } from '@/lib/features/results/data';
import { figureIn } from '@/lib/features/results/fleet-column';
import { FLEET_COLUMNS, fleetColumn } from '@/lib/features/results/fleet-columns';
import {
  applyQuery,
  EVERYTHING,
  filterParts,
  isFiltered,
  readQuery,
  sortWords,
  writeQuery,
} from '@/lib/features/results/fleet-filter';
import { type FleetRow, rowsOfPack, StrangePack } from '@/lib/features/results/fleet-row';
import { type ResultLine, resultsCsv, resultsWorkbook } from '@/lib/features/results/write-results';
import { formatFigure } from '@/lib/platform/format';
import { someMotors, studyWith } from './support/study-with-demo';
import { type TemporaryDatabase, temporaryDatabase } from './support/temporary-database';

let scratch: TemporaryDatabase;
let studyId: string;
let rows: FleetRow[];

beforeAll(async () => {
  scratch = temporaryDatabase();
  studyId = await studyWith(scratch.db, someMotors(60));
  await scratch.db.write((tx) => enqueueEvaluation(tx, studyId));
  await workThroughQueue(scratch.db, { jobs: 1 });
  rows = rowsOfPack(JSON.parse((await readFleetPack(scratch.db.read, studyId)) ?? ''));
});
afterAll(() => scratch.remove());

async function lines(): Promise<ResultLine[]> {
  const runId = (await readShownRunId(scratch.db.read, studyId)) ?? '';
  const all: ResultLine[] = [];
  for await (const { result } of readResults(scratch.db.read, runId)) all.push({ result, plain: {} });
  return all;
}

async function* each<T>(items: readonly T[]): AsyncGenerator<T> {
  yield* items;
}

const NOTES = { closing: '60 of 60 motors', facts: [['Study', 'Trial']] as const, currency: 'USD' };

async function csvOf(all: readonly ResultLine[]): Promise<string> {
  let text = '';
  for await (const part of resultsCsv(each(all), NOTES)) text += part;
  return text;
}

describe('the list', () => {
  test('holds every motor in natural order, with the figures of the results', async () => {
    expect(rows).toHaveLength(60);
    const byTag = new Map((await lines()).map(({ result }) => [result?.tag, result]));
    for (const row of rows) {
      const result = byTag.get(row.tag);
      // Whatever has the name of a column of the results holds the same figure; money is kept to the cent.
      for (const { name, unit, value } of RESULT_COLUMNS) {
        if (!(name in row) || result === undefined) continue;
        const here: unknown = Reflect.get(row, name);
        const there = value(result);
        if (unit === 'currency' && typeof there === 'number')
          expect(Math.abs(Number(here) - there)).toBeLessThanOrEqual(0.005 + 1e-9);
        else expect(here, `${row.tag} ${name}`).toBe(there);
      }
    }
  });

  test('shows each figure of the operating point with the limits that its results have, uneven ones in brackets', async () => {
    const byTag = new Map((await lines()).map(({ result }) => [result?.tag, result]));
    const read: Readonly<Record<string, (motor: MotorResult) => Figure | undefined>> = {
      load_fraction: (motor) => motor.load_fraction,
      shaft_power_kw: (motor) => motor.shaft_power,
      input_power_kw: (motor) => motor.input_power,
      efficiency: (motor) => motor.efficiency,
      loss_total_kw: (motor) => motor.losses?.total,
    };
    let uneven = 0;
    for (const row of rows) {
      const result = byTag.get(row.tag);
      for (const [id, figureOf] of Object.entries(read)) {
        const column = fleetColumn(id);
        const figure = result && figureOf(result);
        if (!column || !figure) continue;
        const percent = figure.unit === '1';
        const expected = formatFigure({ ...figure, unit: percent ? '1' : '' }, { percent }).text.replace('\u202f%', '');
        expect(figureIn(row, column, 'en-US')?.text, `${row.tag} ${id}`).toBe(expected);
        if (expected.includes('(')) uneven += 1;
      }
    }
    expect(uneven).toBeGreaterThan(20);
  });

  test('refuses a pack of another version', () => {
    expect(() => rowsOfPack({ currency: 'USD', minorDigits: 2, horizonYears: 15, names: ['id'], rows: [] })).toThrow(StrangePack);
  });

  test('every column says what it is, and none has the name of another', () => {
    const ids = FLEET_COLUMNS.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const column of FLEET_COLUMNS) expect(column.meaning).toMatch(/\.$/);
  });
});

describe('a query', () => {
  const address = 'q=pump&trust=sound&trust=not-usable&load_fraction=20..60&sort=-net_present_value%2Ctag';

  test('is written as it was read', () => {
    expect(writeQuery(readQuery(new URLSearchParams(address))).toString()).toBe(
      writeQuery(readQuery(new URLSearchParams(writeQuery(readQuery(new URLSearchParams(address))).toString()))).toString(),
    );
    expect(readQuery(writeQuery(readQuery(new URLSearchParams(address))))).toEqual(readQuery(new URLSearchParams(address)));
  });

  test.each(['trust=perhaps', 'load_fraction=many', 'sort=colour', 'load_fraction=..', 'nonsense=1'])(
    'passes over %s',
    (text) => {
      expect(readQuery(new URLSearchParams(text))).toEqual(EVERYTHING);
    },
  );

  test('says itself in words, each part with the way to take it off', () => {
    const query = readQuery(new URLSearchParams(address));
    const parts = filterParts(query, 'USD');
    expect(parts.map(({ text }) => text)).toEqual(['text holds “pump”', 'load 20 to 60 %', 'trust is sound or not usable']);
    expect(parts.map(({ without }) => filterParts(without, 'USD').length)).toEqual([2, 2, 2]);
    expect(sortWords(query)).toBe('present value, highest first, then tag');
    expect(isFiltered({ ...EVERYTHING, sort: query.sort })).toBe(false);
  });

  test('keeps the motors that meet every part', () => {
    const query = readQuery(new URLSearchParams('trust=provisional&load_fraction=..60'));
    const kept = applyQuery(rows, query);
    const wanted = rows.filter(
      (row) => row.trust === 'provisional' && row.load_fraction !== undefined && row.load_fraction <= 0.6,
    );
    expect(kept.map(({ tag }) => tag)).toEqual(wanted.map(({ tag }) => tag));
    expect(kept.length).toBeGreaterThan(0);
    expect(kept.length).toBeLessThan(rows.length);
  });

  test('finds text whatever the case and accents, in any order of the words', () => {
    const accented = [{ ...(rows[0] as FleetRow), description: 'Évaporateur PUMP' }];
    const find = (q: string) => applyQuery(accented, { ...EVERYTHING, text: q }).length;
    expect([find('pump evaporateur'), find('PUMP'), find('pumpe')]).toEqual([1, 1, 0]);
  });

  test('sorts words in their order, absent values last in both directions, ties in natural order', () => {
    const row = (tag: string, order: number, trust: string | undefined, load: number | undefined): FleetRow => ({
      ...(rows[0] as FleetRow),
      tag,
      order,
      trust,
      load_fraction: load,
    });
    const some = [
      row('A2', 0, 'not-usable', undefined),
      row('A13', 1, 'sound', 0.5),
      row('A3', 2, 'sound', 0.9),
      row('A4', 3, undefined, 0.1),
    ];
    const tags = (sort: string) => applyQuery(some, readQuery(new URLSearchParams({ sort }))).map(({ tag }) => tag);
    expect(tags('trust')).toEqual(['A13', 'A3', 'A2', 'A4']);
    expect(tags('-trust')).toEqual(['A2', 'A13', 'A3', 'A4']);
    expect(tags('load_fraction')).toEqual(['A4', 'A13', 'A3', 'A2']);
    expect(tags('-load_fraction')).toEqual(['A3', 'A13', 'A4', 'A2']);
    expect(tags('trust,-load_fraction')).toEqual(['A3', 'A13', 'A2', 'A4']);
    expect(tags('tag')).toEqual(['A2', 'A3', 'A4', 'A13']);
  });
});

describe('files', () => {
  test('the CSV has the columns of the command line, one line a motor, and a last line that counts', async () => {
    const all = await lines();
    const read = Papa.parse<string[]>(await csvOf(all), { skipEmptyLines: true }).data;
    expect(read[0]).toEqual(RESULT_COLUMNS.map(({ name }) => name));
    expect(read).toHaveLength(all.length + 2);
    expect(read.at(-1)).toEqual(['60 of 60 motors']);
    const at = RESULT_COLUMNS.findIndex(({ name }) => name === 'load_fraction');
    expect(read.slice(1, -1).map((line) => line[at])).toEqual(
      all.map(({ result }) => String(result?.load_fraction?.value ?? '')),
    );
  });

  test('text that looks like a formula is guarded, negative numbers stay numbers', async () => {
    const [first] = await lines();
    if (first?.result === undefined) throw new Error('there is no result');
    const odd = { ...first.result, tag: '=1+1', load_fraction: { value: -0.5, u: 0.1, unit: '1' } };
    const text = await csvOf([{ result: odd, plain: {} }]);
    expect(text).toContain("'=1+1");
    expect(text).toContain(',-0.5,');
  });

  test('a motor without results is written with what is known of it', async () => {
    const text = await csvOf([{ result: undefined, plain: { tag: 'P-1', rated_power_kw: 30 } }]);
    expect(text.split('\r\n')[1]).toMatch(/^,,P-1,,,30,/);
  });

  test('the workbook holds the same cells, numbers as numbers, and says what its columns mean', async () => {
    const all = await lines();
    const bytes = Buffer.from(await new Response(resultsWorkbook(each(all), NOTES)).arrayBuffer());
    const book = new ExcelJS.Workbook();
    await book.xlsx.load(new Uint8Array(bytes).buffer);
    const sheet = book.getWorksheet('Motors');
    expect(sheet?.rowCount).toBe(all.length + 1);
    for (const [index, { result }] of all.entries()) {
      if (result === undefined) continue;
      RESULT_COLUMNS.forEach((column, at) => {
        const value = column.value(result);
        const cell = sheet?.getRow(index + 2).getCell(at + 1).value ?? undefined;
        expect(cell === '' ? undefined : cell).toEqual(value === '' ? undefined : value);
      });
    }
    const about = book.getWorksheet('About');
    const names = about?.getColumn(1).values.map(String) ?? [];
    for (const { name } of RESULT_COLUMNS) expect(names).toContain(name);
  });
});
