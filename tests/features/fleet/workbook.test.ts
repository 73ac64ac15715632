import { constants, deflateRawSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { type ParseOptions, parseFleet } from '@/lib/features/fleet/parse';
import { mustParse, placedRows, problemOf } from './support/sheet';
import { lockedWorkbook, rawWorkbook, workbook } from './support/workbook';
import { zipOf } from './support/zip';

const HEADER = ['tag', 'rated_power_kw', 'rated_voltage_v', 'taken_at', 'input_power_kw', 'standby', 'frame'];

async function read(rows: Parameters<typeof workbook>[0], options?: ParseOptions, date1904 = false) {
  return mustParse(await parseFleet({ name: 'fleet.xlsx', data: await workbook([HEADER, ...rows], date1904) }, options));
}

/** The same archive with every part marked as encrypted (bit 0 of the general purpose flag, ZIP application note 4.4.4). */
function lockedParts(archive: Uint8Array): Buffer {
  const bytes = Buffer.from(archive);
  for (const [signature, flag] of [
    ['PK\x01\x02', 8],
    ['PK\x03\x04', 6],
  ] as const) {
    for (let at = bytes.indexOf(signature, 0, 'latin1'); at >= 0; at = bytes.indexOf(signature, at + 4, 'latin1')) {
      bytes.writeUInt8(bytes.readUInt8(at + flag) | 1, at + flag);
    }
  }
  return bytes;
}

describe('a workbook', () => {
  it('gives numbers, words, truth values, dates and the saved results of formulas', async () => {
    const parsed = await read([
      ['A', 30, 460, new Date(Date.UTC(2026, 2, 14, 9, 30)), { formula: 'B2*0.7', result: 21 }, true, 'a & b <c> "d"'],
      [
        101,
        '30',
        { formula: '4*115', result: 460 },
        new Date(Date.UTC(2026, 2, 14)),
        -0.5,
        'no',
        { formula: 'A1', result: '326T' },
      ],
    ]);
    expect(parsed.rejected).toEqual([]);
    expect(parsed.motors.map(({ motor }) => motor)).toMatchObject([
      {
        tag: 'A',
        plate: { ratedPowerKw: 30, standby: true, frame: 'a & b <c> "d"' },
        readings: [{ takenAt: '2026-03-14T09:30:00', inputPowerKw: 21 }],
      },
      {
        tag: '101',
        plate: { ratedPowerKw: 30, ratedVoltageV: 460, standby: false, frame: '326T' },
        readings: [{ takenAt: '2026-03-14', inputPowerKw: -0.5 }],
      },
    ]);
  });

  it('counts dates from 1904 where the workbook says so', async () => {
    const parsed = await read([['A', 30, 460, new Date(Date.UTC(2026, 2, 14)), 20, null, null]], {}, true);
    expect(parsed.motors[0]?.motor.readings[0]?.takenAt).toBe('2026-03-14');
  });

  it('reads number cells whatever the decimal sign of the text cells', async () => {
    const parsed = await read([['A', 30.5, 460, null, '21,4', null, null]], { decimal: ',' });
    expect(parsed.motors[0]?.motor).toMatchObject({ plate: { ratedPowerKw: 30.5 }, readings: [{ inputPowerKw: 21.4 }] });
  });

  it('rejects rows with errors, formulas without results and dates in the wrong place, and keeps the others', async () => {
    const parsed = await read([
      ['A', { error: '#N/A' }, 460, null, null, null, null],
      ['B', 30, { formula: 'C9', result: { error: '#DIV/0!' } }, null, null, null, null],
      ['C', 30, 460, 46000, null, null, null],
      ['D', new Date(Date.UTC(2026, 0, 1)), 460, null, null, null, null],
      [new Date(Date.UTC(2026, 0, 1)), 30, 460, null, null, null, null],
      [],
      ['F', 30, 460, true, false, 1, null],
      ['G', 30, 460, null, null, null, null],
    ]);
    expect(parsed.rejected.map(({ row, issues }) => [row, ...issues.map((issue) => `${issue.column} ${issue.code}`)])).toEqual([
      [2, 'rated_power_kw cell-error'],
      [3, 'rated_voltage_v cell-error'],
      [4, 'taken_at number-for-date'],
      [5, 'rated_power_kw date-for-value'],
      [6, 'tag date-for-value'],
      [8, 'taken_at unreadable-date', 'input_power_kw not-a-number', 'standby not-yes-no'],
    ]);
    expect(parsed.motors.map(({ motor, rows }) => [motor.tag, rows])).toEqual([['G', [9]]]);
    expect(parsed.blankRows).toBe(1);
    expect(placedRows(parsed)).toBe(parsed.rows);
  });

  it('rejects a formula that was saved without its result, but takes an empty text result as empty', async () => {
    const header = HEADER.map((name, at) => `<c r="${'ABCDEFG'[at]}1" t="inlineStr"><is><t>${name}</t></is></c>`).join('');
    const start = (row: number, tag: string) =>
      `<c r="A${row}" t="inlineStr"><is><t>${tag}</t></is></c><c r="B${row}"><v>30</v></c>`;
    const data = rawWorkbook(
      `<row r="1">${header}</row><row r="2">${start(2, 'A')}<c r="C2"><f>4*115</f></c></row>` +
        `<row r="3">${start(3, 'B')}<c r="C3"><f>4*115</f><v>460</v></c><c r="G3" t="str"><f>""</f><v></v></c></row>` +
        `<row r="4">${start(4, 'C')}<c r="C4"><v>460</v></c><c r="G4" t="str"><f>X()</f></c></row>`,
    );
    const parsed = mustParse(await parseFleet({ name: 'raw.xlsx', data }));
    expect(parsed.motors.map(({ motor }) => [motor.tag, motor.plate.ratedVoltageV, motor.plate.frame])).toEqual([
      ['B', 460, undefined],
    ]);
    expect(parsed.rejected.map(({ row, issues }) => [row, issues[0]?.code, issues[0]?.column])).toEqual([
      [2, 'formula-without-value', 'rated_voltage_v'],
      [4, 'formula-without-value', 'frame'],
    ]);
  });

  it('is refused in words when it is no workbook, too wide, empty, old or protected', async () => {
    const wide = [Array.from({ length: 1001 }, (_, at) => `column_${at}`)];
    const stray = rawWorkbook('<row r="1"><c r="A1"><v>1</v></c></row><row r="1048576"><c r="ALL1048576"><v>1</v></c></row>');
    const cases: readonly (readonly [string, Uint8Array])[] = [
      ['too-many-columns', await workbook(wide)],
      ['sheet-too-wide-and-long', stray],
      ['empty-file', await workbook([])],
      ['not-a-workbook', zipOf([{ path: 'readme.txt', data: Buffer.from('hello') }])],
      ['not-a-workbook', Buffer.from('PK\x03\x04 and then nothing that fits', 'latin1')],
      ['not-a-workbook', zipOf([{ path: 'content.xml', data: Buffer.from('<document/>') }])],
      ['not-a-workbook', rawWorkbook('').subarray(30)],
      ['not-a-workbook', Buffer.from('%PDF-1.7\n%\xe2\xe3\xcf\xd3\n', 'latin1')],
      ['not-a-workbook', Buffer.from('<html><table><tr><td>tag</td></tr></table></html>')],
      ['old-workbook', Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, 0, 0])],
      ['locked-workbook', lockedWorkbook()],
      ['locked-workbook', lockedParts(rawWorkbook('<row r="1"><c r="A1"><v>1</v></c></row>'))],
    ];
    for (const [at, [code, data]] of cases.entries()) {
      expect(await problemOf(parseFleet({ name: 'x.xlsx', data })), `case ${at}`).toBe(code);
    }
  });

  it('is refused when its first sheet ends in the middle, and not called empty', async () => {
    const outcome = await parseFleet({ name: 'x.xlsx', data: rawWorkbook('<row r="1"><c r="A1"><v>1</v></c><!--') });
    expect(outcome).toMatchObject({ ok: false, problem: { code: 'not-a-workbook' } });
  });

  it('says what to do in words of its own, not in those of a library', async () => {
    const outcome = await parseFleet({ name: 'x.xlsx', data: rawWorkbook('').subarray(0, 200) });
    expect(outcome).toMatchObject({
      ok: false,
      problem: { text: 'x.xlsx could not be opened as a workbook: it is cut off or damaged.' },
    });
  });

  it('is text under the name of a workbook where it is text', async () => {
    const data = Buffer.from('tag,rated_power_kw,rated_voltage_v\nA,30,460\n');
    expect(mustParse(await parseFleet({ name: 'x.xlsx', data })).motors).toHaveLength(1);
  });

  it('survives being cut off or damaged anywhere', async () => {
    const whole = Buffer.from(await workbook([HEADER, ['A', 30, 460, null, 21, null, null]]));
    for (let step = 1; step <= 60; step++) {
      const cut = whole.subarray(0, Math.floor((whole.length * step) / 61));
      expect(await problemOf(parseFleet({ name: 'cut.xlsx', data: cut }))).toMatch(
        /^(not-a-workbook|binary-file|empty-file|wrong-encoding)$/,
      );
      const damaged = Buffer.from(whole);
      damaged.writeUInt8(
        damaged.readUInt8(Math.floor((whole.length * step) / 61)) ^ 0x55,
        Math.floor((whole.length * step) / 61),
      );
      expect((await parseFleet({ name: 'damaged.xlsx', data: damaged })).ok).toBeTypeOf('boolean');
    }
  });

  it('is refused when it unpacks beyond the limit, whatever size it claims', async () => {
    // 55 pieces of 10 MB of spaces, each flushed so that they may follow each other, then an empty last block.
    const piece = deflateRawSync(Buffer.alloc(10_000_000, ' '), { finishFlush: constants.Z_FULL_FLUSH });
    const deflated = Buffer.concat([...Array.from({ length: 55 }, () => piece), Buffer.from([3, 0])]);
    const bomb = (size: number) =>
      rawWorkbook('', [{ path: 'xl/media/big.xml', data: Buffer.alloc(0), raw: { deflated, size } }]);
    expect(bomb(550_000_000).length).toBeLessThan(1_000_000);
    expect(await problemOf(parseFleet({ name: 'bomb.xlsx', data: bomb(550_000_000) }))).toBe('unpacks-too-large');
    expect(await problemOf(parseFleet({ name: 'bomb.xlsx', data: bomb(1000) }))).toBe('not-a-workbook');
  });
});
