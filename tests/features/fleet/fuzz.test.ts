import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { type FleetOutcome, parseFleet } from '@/lib/features/fleet/parse';
import { writeFleetCsv } from '@/lib/features/fleet/write-csv';
import { motorArbitrary } from './support/motor-arbitrary';
import { placedRows } from './support/sheet';
import { rawWorkbook } from './support/workbook';

/** Mulberry32: a small seeded generator, so that a failure can be found again. */
function seeded(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return Math.floor((((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32) * below);
  };
}

const SHEET = writeFleetCsv(fc.sample(motorArbitrary, { numRuns: 5, seed: 20_260_314 }));
const CELLS = [
  '',
  ' ',
  '-',
  '-0',
  '0',
  '1e400',
  '-1e-400',
  'NaN',
  'Infinity',
  '1,250',
  '1.234',
  '4,3',
  '=1/0',
  '#N/A',
  '"',
  '""',
  '","',
  ';',
  '\n',
  '\r\n',
  '\r',
  '４３',
  '2026-03-14',
  '2026-02-31',
  '1@9000',
  '1@1;',
  'yes',
  'premium',
  '__proto__',
  'constructor',
  '<img src=x onerror=alert(1)>',
  '\u2028',
  '\ud83d',
  'x'.repeat(33_000),
];

/** Replaces cells of a sheet's lines, doubles and drops lines, or cuts them. */
function mutateCells(random: (below: number) => number): string {
  const lines = SHEET.split('\r\n').map((line) => line.split(','));
  for (let times = 1 + random(4); times > 0; times--) {
    const line = lines[random(lines.length)];
    const other = lines[random(lines.length)];
    if (line === undefined || other === undefined) continue;
    const at = random(line.length);
    const action = random(10);
    if (action < 6) line[at] = CELLS[random(CELLS.length)] ?? '';
    else if (action === 6) lines.splice(random(lines.length), 0, [...line]);
    else if (action === 7) line.splice(at, 1 + random(3));
    else if (action === 8) line[at] = other[random(other.length)] ?? '';
    else line.splice(at, 0, CELLS[random(CELLS.length)] ?? '');
  }
  return lines.map((line) => line.join(',')).join('\r\n');
}

/** Overwrites, inserts and removes bytes. */
function mutateBytes(random: (below: number) => number, good: Uint8Array): Uint8Array {
  const bytes = [...good];
  for (let times = 1 + random(6); times > 0; times--) {
    const at = random(bytes.length);
    const action = random(4);
    if (action === 0) bytes.splice(at, 1 + random(20));
    else if (action === 1) bytes.splice(at, 0, random(256));
    else bytes[at] = action === 2 ? random(256) : (Buffer.from(',;"\n\r-.0')[random(8)] ?? 0);
  }
  return Uint8Array.from(bytes);
}

/** Every number that came out is finite. */
function numbersIn(value: unknown, bad: unknown[]): void {
  if (typeof value === 'number' && !Number.isFinite(value)) bad.push(value);
  else if (typeof value === 'object' && value !== null) for (const part of Object.values(value)) numbersIn(part, bad);
}

function judge(outcome: FleetOutcome): 'read' | 'refused' {
  if (!outcome.ok) {
    expect(outcome.problem.text.length).toBeGreaterThan(10);
    return 'refused';
  }
  const bad: unknown[] = [];
  numbersIn(outcome, bad);
  if (bad.length > 0) expect(bad).toEqual([]);
  if (placedRows(outcome) !== outcome.rows) expect(placedRows(outcome)).toBe(outcome.rows);
  const rows = [...outcome.motors.flatMap((motor) => motor.rows), ...outcome.rejected.map(({ row }) => row)];
  if (new Set(rows).size !== rows.length) expect(rows).toEqual([...new Set(rows)]);
  for (const { issues } of outcome.rejected) if (issues.length === 0) expect(issues).not.toEqual([]);
  return 'read';
}

describe('a mutated sheet', () => {
  it('never breaks the parser, loses a row or gives a number that is none: 7,000 times by cells', async () => {
    const random = seeded(1);
    let read = 0;
    for (let time = 0; time < 7000; time++) {
      const text = mutateCells(random);
      const outcome = await parseFleet({ name: `cells-${time}.csv`, text }, { emptyWords: time % 2 ? ['-'] : [] });
      if (judge(outcome) === 'refused' || !outcome.ok) continue;
      read++;
      const records = Papa.parse(text, { delimiter: outcome.dialect.delimiter, newline: '\n' }).data.length;
      const blankTail = text.endsWith('\n') ? 1 : 0;
      const counted = outcome.rowsAbove + 1 + outcome.rows + outcome.blankRows;
      if (counted !== records - blankTail) expect(counted).toBe(records - blankTail);
    }
    expect(read).toBeGreaterThan(4000);
  }, 300_000);

  it('the same 3,000 times by bytes, under either decimal sign', async () => {
    const random = seeded(2);
    const good = Buffer.from(SHEET);
    let read = 0;
    for (let time = 0; time < 3000; time++) {
      const data = mutateBytes(random, good);
      if (judge(await parseFleet({ name: `bytes-${time}.csv`, data }, { decimal: time % 2 ? ',' : '.' })) === 'read') read++;
    }
    expect(read).toBeGreaterThan(500);
  }, 300_000);

  it('the same 500 times by the XML of a workbook', async () => {
    const random = seeded(3);
    const header = ['tag', 'rated_power_kw', 'rated_voltage_v', 'input_power_kw'];
    const names = header.map((name, at) => `<c r="${'ABCD'[at]}1" t="inlineStr"><is><t>${name}</t></is></c>`).join('');
    const row = (at: number) =>
      `<row r="${at}"><c r="A${at}" t="inlineStr"><is><t>M${at}</t></is></c><c r="B${at}"><v>30</v></c><c r="C${at}"><f>B${at}*15</f><v>450</v></c><c r="D${at}" t="e"><v>#N/A</v></c></row>`;
    const good = Buffer.from(`<row r="1">${names}</row>${row(2)}${row(3)}${row(4)}`);
    for (let time = 0; time < 500; time++) {
      const xml = Buffer.from(mutateBytes(random, good)).toString('latin1').replaceAll('\0', ' ');
      judge(await parseFleet({ name: `xml-${time}.xlsx`, data: rawWorkbook(xml) }));
    }
  }, 300_000);
});
