import { mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FILE_SENTENCES, type FileProblemCode, fileProblem } from '@/lib/features/fleet/issue-codes';
import { type ParseOptions, parseFleet } from '@/lib/features/fleet/parse';
import { detectDelimiter } from '@/lib/features/fleet/table-csv';
import { mustParse, parseText, placedRows, problemOf } from './support/sheet';
import { lockedWorkbook } from './support/workbook';

const GOOD = 'tag,rated_power_kw,rated_voltage_v,area\nA,30,460,Kühlung\n';
const bytes = (text: string): Uint8Array => Buffer.from(text);
const parseBytes = (data: Uint8Array, options?: ParseOptions) => parseFleet({ name: 'sheet.csv', data }, options);
const utf16be = (text: string): Buffer => Buffer.from(text, 'utf16le').swap16();

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'lossbook-fleet-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const CODES = Object.keys(FILE_SENTENCES) as readonly FileProblemCode[];

describe('a file that cannot be read as a whole', () => {
  const cases: readonly (readonly [FileProblemCode, Uint8Array, ParseOptions?])[] = [
    ['empty-file', bytes('')],
    ['empty-file', bytes('\ufeff')],
    ['empty-file', bytes('\r\n\r\n  \n')],
    ['empty-header', bytes(',,,\nA,30,460,x\n')],
    ['missing-column', bytes('tag,site\nA,B\n')],
    ['missing-column', bytes('tag\trated_power_kw\trated_voltage_v\nA\t30\t460\n')],
    ['duplicate-column', bytes('tag,rated_power_kw,rated_voltage_v,Tag\nA,30,460,B\n')],
    ['duplicate-column', bytes('tag,rated_power_kw,rated_voltage_v,paint,paint\nA,30,460,B,C\n')],
    ['too-many-columns', bytes(`${Array.from({ length: 1001 }, (_, at) => `c${at}`).join(',')}\n`)],
    ['binary-file', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 0x0d])],
    ['binary-file', bytes(`${GOOD}B,30,460,\0\n`)],
    ['wrong-encoding', Buffer.from(GOOD, 'latin1')],
    ['wrong-encoding', bytes(`${GOOD}B,30,460,caf`).subarray(0, -1), { encoding: 'utf-16le' }],
    ['utf-16-file', Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from(GOOD, 'utf16le')])],
    ['utf-16-file', Buffer.concat([Buffer.from([0xfe, 0xff]), utf16be(GOOD)])],
    ['utf-16-file', Buffer.from('tag,rated_power_kw,rated_voltage_v\nA,30,460\n', 'utf16le')],
    ['unknown-encoding', bytes(GOOD), { encoding: 'klingon' }],
    ['unclosed-quote', bytes(`${GOOD}B,30,460,"never closed\nC,30,460,x\n`)],
    ['old-workbook', Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 1, 2, 3, 4])],
    ['locked-workbook', lockedWorkbook()],
    ['not-a-workbook', Buffer.from('PK\x03\x04 nothing', 'latin1')],
  ];

  it.each(cases.map(([code, data, options]) => ({ code, data, options })))('says $code', async ({ code, data, options }) => {
    expect(await problemOf(parseBytes(data, options))).toBe(code);
  });

  it('says so for paths that lead nowhere, to a folder or to a file that is too large', async () => {
    const large = path.join(folder, 'large.csv');
    writeFileSync(large, GOOD);
    truncateSync(large, 200_000_001);
    expect(await problemOf(parseFleet({ path: path.join(folder, 'absent.csv') }))).toBe('unreadable-file');
    expect(await problemOf(parseFleet({ path: folder }))).toBe('unreadable-file');
    expect(await problemOf(parseFleet({ path: large }))).toBe('file-too-large');
  });

  it('says which row a record without an end begins in', async () => {
    const outcome = await parseText(`tag,rated_power_kw,rated_voltage_v\nA,30,460\n"${'x'.repeat(70_000_000)}`);
    expect(outcome).toMatchObject({ ok: false, problem: { code: 'row-too-long' } });
    expect(!outcome.ok && outcome.problem.text).toMatch(/Row 3 /);
  });

  it('has a sentence and a remedy for every code', () => {
    for (const code of CODES) {
      const { text, remedy } = fileProblem(code, {
        name: 'x.csv',
        words: 'tag',
        value: 'v',
        other: '',
        count: 2,
        limit: 1,
        otherRow: 3,
      });
      expect(text).toMatch(/^\S.{8,}\.$/);
      expect(remedy).toMatch(/^\S.{8,}\.$/);
    }
    const elsewhere: FileProblemCode[] = [
      'unreadable-file',
      'file-too-large',
      'row-too-long',
      'unpacks-too-large',
      'sheet-too-wide-and-long',
      'missing-price-column',
      'missing-history-column',
      'missing-bench-column',
    ];
    const covered = new Set<FileProblemCode>([...cases.map(([code]) => code), ...elsewhere]);
    expect(CODES.filter((code) => !covered.has(code))).toEqual([]);
  });
});

describe('a file that can be read', () => {
  const areas = async (data: Uint8Array, options?: ParseOptions) =>
    mustParse(await parseBytes(data, options)).motors.map(({ motor }) => [motor.tag, motor.area]);

  it.each<[string, Uint8Array, ParseOptions?]>([
    ['UTF-8', bytes(GOOD)],
    ['UTF-8 with a byte order mark', bytes(`\ufeff${GOOD}`)],
    ['CR LF', bytes(GOOD.replaceAll('\n', '\r\n'))],
    ['CR alone', bytes(GOOD.replaceAll('\n', '\r'))],
    ['no line end after the last row', bytes(GOOD.trimEnd())],
    ['semicolons', bytes(GOOD.replaceAll(',', ';'))],
    ['quotes everywhere', bytes('"tag","rated_power_kw","rated_voltage_v","area"\r\n"A","30","460","Kühlung"\r\n')],
    ['spaces and capitals in the header', bytes(' TAG ,Rated_Power_kW,rated_voltage_V, area\n A , 30 ,460, Kühlung \n')],
    ['windows-1252', Buffer.from(GOOD, 'latin1'), { encoding: 'windows-1252' }],
    ['UTF-16 once it is stated', Buffer.from(`\ufeff${GOOD}`, 'utf16le'), { encoding: 'utf-16le' }],
    ['tabs once they are stated', bytes(GOOD.replaceAll(',', '\t')), { delimiter: '\t' }],
  ])('takes %s', async (_, data, options) => {
    expect(await areas(data, options)).toEqual([['A', 'Kühlung']]);
  });

  it('may have a header and no rows', async () => {
    expect(await parseText('tag,rated_power_kw,rated_voltage_v')).toMatchObject({ ok: true, rows: 0, motors: [], rejected: [] });
  });

  it('reads decimals with a comma between semicolons once the comma is stated', async () => {
    const sheet = 'tag;rated_power_kw;rated_voltage_v\nA;30,5;460\nB;30.5;460\n';
    const parsed = mustParse(await parseText(sheet, { decimal: ',' }));
    expect(parsed.motors.map(({ motor }) => motor.plate.ratedPowerKw)).toEqual([30.5]);
    expect(parsed.rejected.map(({ row, issues }) => [row, issues[0]?.code])).toEqual([[3, 'other-decimal-sign']]);
  });

  it('counts blank lines as rows, so that row numbers are those of a spreadsheet', async () => {
    const parsed = mustParse(await parseText('tag,rated_power_kw,rated_voltage_v\n\nA,30,460\n,,\n  \nB,x,460\n'));
    expect(parsed.motors.map(({ rows }) => rows)).toEqual([[3]]);
    expect(parsed.rejected.map(({ row }) => row)).toEqual([6]);
    expect(parsed.blankRows).toBe(3);
  });

  it('takes line breaks, doubled quotes, markup and formulas in text as they are', async () => {
    const text = 'say "hi",\n<script>alert(1)</script> =1+1';
    const parsed = mustParse(
      await parseText(
        `tag,rated_power_kw,rated_voltage_v,description\n=1+1,30,460,"${text.replaceAll('"', '""')}"\nB,30,460,3" pipe\n`,
      ),
    );
    expect(parsed.motors.map(({ motor }) => [motor.tag, motor.description])).toEqual([
      ['=1+1', text],
      ['B', '3" pipe'],
    ]);
  });

  it('takes words that are said to mean empty, and only these', async () => {
    const parsed = mustParse(
      await parseText('tag,rated_power_kw,rated_voltage_v,rated_current_a,poles\nA,30,460,-,N/A\nB,30,460,?,4\n', {
        emptyWords: ['-', 'n/a'],
      }),
    );
    expect(parsed.motors.map(({ motor }) => [motor.tag, motor.plate.ratedCurrentA, motor.plate.poles])).toEqual([
      ['A', undefined, undefined],
    ]);
    expect(parsed.rejected.map(({ issues }) => issues[0]?.code)).toEqual(['placeholder']);
  });

  it('takes other names for columns where a mapping says so', async () => {
    const parsed = mustParse(
      await parseText('Machine,kW,Volts,Paint\nA,30,460,red\n', {
        mapping: { machine: 'tag', kW: 'rated_power_kw', volts: 'rated_voltage_v' },
      }),
    );
    expect(parsed.motors[0]).toMatchObject({ motor: { tag: 'A' }, notes: { Paint: 'red' } });
    expect(parsed.header).toEqual(['Machine', 'kW', 'Volts', 'Paint']);
  });

  it('is the same from a path, from bytes and from text, also across the pieces in which a file is read', async () => {
    const rows = Array.from({ length: 20_000 }, (_, at) => `M${at},30,460,"Hall ${at % 7}, ""ä€𝄞""\nline ${at}"`);
    const text = `tag,rated_power_kw,rated_voltage_v,area\n${rows.join('\r\n')}`;
    const file = path.join(folder, 'long.csv');
    writeFileSync(file, text);
    const [one, two, three] = [await parseFleet({ path: file }), await parseBytes(bytes(text)), await parseText(text)];
    const parsed = mustParse(one);
    expect(parsed.motors).toHaveLength(20_000);
    expect(placedRows(parsed)).toBe(20_000);
    expect(parsed.motors[19_999]?.motor.area).toBe('Hall 0, "ä€𝄞"\nline 19999');
    expect(two).toEqual(one);
    expect(three).toEqual(one);
  });

  it('makes out the delimiter from the names it knows', () => {
    expect(detectDelimiter('tag,rated_power_kw,"a;b;c;d;e;f"')).toBe(',');
    expect(detectDelimiter('tag;rated_power_kw;a,b,c,d,e')).toBe(';');
    expect(detectDelimiter('tag')).toBe(',');
  });
});
