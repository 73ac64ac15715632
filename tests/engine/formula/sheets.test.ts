import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { all, create } from 'mathjs';
import { beforeAll, describe, expect, it } from 'vitest';
import { CONSTANTS } from '@/lib/engine/formula/constants';
import { FORMULAS } from '@/lib/engine/generated/catalog';
import type { Unit } from '@/lib/engine/quantity/unit';
import type { Sheet } from '@/scripts/formula/write';
import { generateAll, readSheets } from '@/scripts/generate';

const math = create(all ?? {}, {});
math.createUnit('coin');

/** Each unit of ours in the words of the unit library; r/min is a frequency, a temperature in °C enters as kelvin. */
const UNIT_WORDS: Readonly<Record<Unit, string>> = {
  '1': '',
  '%': '0.01',
  kW: 'kW',
  W: 'W',
  kVA: 'kW',
  kvar: 'kW',
  V: 'V',
  A: 'A',
  Ω: 'ohm',
  MΩ: 'Mohm',
  Hz: 'Hz',
  'r/min': '1 / minute',
  'N m': 'N m',
  'kg m²': 'kg m^2',
  '°C': 'K',
  K: 'K',
  'h/a': 'hour / year',
  'kWh/a': 'kW hour / year',
  'kg/a': 'kg / year',
  'kg/kWh': 'kg / (kW hour)',
  a: 'year',
  '1/a': '1 / year',
  'mm/s': 'mm / s',
  dB: '',
  'month/a': 'month / year',
  currency: 'coin',
  'currency/a': 'coin / year',
  'currency/kWh': 'coin / (kW hour)',
  'currency/(kW month)': 'coin / (kW month)',
  'currency/kvarh': 'coin / (kW hour)',
  'currency/(kvar month)': 'coin / (kW month)',
  'kvarh/a': 'kW hour / year',
  'kVA/hp': 'kW / (745.7 W)',
  hp: '745.7 W',
  pole: '',
  's/min': 's / minute',
  'W/kW': 'W / kW',
  'kW/hp': 'kW / (745.7 W)',
  kV: 'kV',
  'V/kV': 'V / kV',
  mm: 'mm',
  '1/h': '1 / hour',
  s: 's',
  '(N m)²': '(N m)^2',
  'W/(N m)²': 'W / (N m)^2',
  'A²': 'A^2',
};

/** A number with its unit, as the unit library writes it. */
function withUnit(value: number, unit: Unit): unknown {
  const words = UNIT_WORDS[unit];
  return words === ''
    ? value
    : math.multiply(value, math.evaluate(`1 ${words.replace(/^([\d.]+) ?/, '* $1 ')}`.replace(/^1 \* ([\d.]+) $/, '$1')));
}

let sheets: ReadonlyMap<string, Sheet>;
beforeAll(async () => {
  sheets = await readSheets();
});

const every = Object.entries(FORMULAS).flatMap(([sheet, formulas]) =>
  Object.entries(formulas).map(([name, compiled]) => ({ sheet, name, compiled })),
);

function example(sheet: string, name: string): number[] {
  const declaration = sheets.get(sheet)?.[name];
  if (!declaration) throw new Error(`no declaration for ${sheet}.${name}`);
  return Object.keys(declaration.inputs).map((key) => declaration.example[key] ?? Number.NaN);
}

describe('formula sheets', () => {
  it('are what stands in the generated folder', async () => {
    const folder = fileURLToPath(new URL('../../../lib/engine/generated', import.meta.url));
    for (const [file, text] of await generateAll()) expect(readFileSync(path.join(folder, file), 'utf8'), file).toBe(text);
  });

  it.each(every)(
    '$sheet.$name: the native function agrees with the expression read by the parser',
    ({ sheet, name, compiled }) => {
      const values = example(sheet, name);
      const scope: Record<string, number> = Object.fromEntries(
        compiled.names.map((key, index) => [key, values[index] ?? Number.NaN]),
      );
      for (const [key, constant] of Object.entries(CONSTANTS)) scope[key] = constant.value;
      expect(compiled.f(...values)).toBeCloseTo(math.evaluate(compiled.expression, scope) as number, 12);
      expect(Number.isFinite(compiled.f(...values))).toBe(true);
    },
  );

  it.each(every)('$sheet.$name: the partial derivatives agree with central differences', ({ sheet, name, compiled }) => {
    const values = example(sheet, name);
    compiled.d.forEach((slope, index) => {
      const at = values[index] ?? 0;
      const step = Math.max(Math.abs(at), 1e-3) * 1e-6;
      const shifted = (sign: number) => compiled.f(...values.map((value, k) => (k === index ? value + sign * step : value)));
      const numeric = (shifted(1) - shifted(-1)) / (2 * step);
      const scale = Math.max(Math.abs(numeric), Math.abs(compiled.f(...values)) / Math.max(Math.abs(at), 1), 1e-9);
      expect(Math.abs(slope(...values) - numeric) / scale, compiled.names[index]).toBeLessThan(1e-5);
    });
  });

  it.each(every)('$sheet.$name: units and scale agree on both sides (mathjs units)', ({ sheet, name, compiled }) => {
    const values = example(sheet, name);
    const scope: Record<string, unknown> = {};
    compiled.names.forEach((key, index) => {
      scope[key] = withUnit(values[index] ?? Number.NaN, compiled.inputs[key]?.unit ?? '1');
    });
    for (const [key, constant] of Object.entries(CONSTANTS)) scope[key] = withUnit(constant.value, constant.unit);
    const left = math.evaluate(compiled.expression, scope) as number;
    const right = withUnit(compiled.f(...values), compiled.unit) as number;
    const ratio = math.divide(left, right) as unknown;
    const bare =
      typeof ratio === 'number'
        ? ratio
        : math.isUnit(ratio)
          ? Number((ratio as { toNumeric(unit: string): number }).toNumeric(''))
          : Number.NaN;
    expect(bare).toBeCloseTo(1, 9);
  });

  it.each(every)(
    '$sheet.$name: the spreadsheet formula names each input it uses and the TeX holds no raw name',
    ({ compiled }) => {
      for (const key of compiled.names) {
        expect(compiled.cell).toContain(`{${key}}`);
        if (key.includes('_')) expect(compiled.tex).not.toContain(key);
      }
      expect(compiled.valid.length).toBeGreaterThan(3);
      expect(compiled.source.length).toBeGreaterThan(3);
    },
  );
});
