import { readFileSync } from 'node:fs';
import path from 'node:path';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { derive, evaluateMotor, figuresOf } from '@/lib/engine';
import { generateDemo } from '@/lib/features/demo/generate';
import { loadFormulas, loadMethods, loadPassports, loadTable } from '@/lib/features/reference/loaders';
import { defaultSettings } from '@/lib/features/study/settings';
import { loadTables } from '@/lib/reference/load';

const ROOT = path.resolve(import.meta.dirname, '../..');

describe('the tables as they are shown', () => {
  it('hold every row of their file as it is written, gaps too, and a name and a meaning for each column', () => {
    for (const { id, file } of loadTables().passports) {
      const table = loadTable(id);
      const lines = Papa.parse<string[]>(readFileSync(path.join(ROOT, 'reference-data', file), 'utf8').trimEnd()).data;
      expect(table?.rows, id).toEqual(lines.slice(1));
      expect(table?.columns.map((column) => column.id)).toEqual(lines[0]);
      for (const column of table?.columns ?? []) {
        expect(column.name.trim(), `${id} ${column.id}`).not.toBe('');
        expect(column.meaning, `${id} ${column.id}`).not.toBe('');
      }
    }
  });

  it('names a column in words with the unit apart', () => {
    const columns = loadTable('us-premium')?.columns ?? [];
    expect(columns.find((column) => column.id === 'nominal_efficiency_pct')).toMatchObject({
      name: 'nominal efficiency',
      unit: '%',
      numeric: true,
    });
    expect(columns.find((column) => column.id === 'poles')).toMatchObject({ name: 'poles', unit: '', numeric: true });
    expect(columns.find((column) => column.id === 'enclosure')).toMatchObject({ unit: '', numeric: false });
    expect(loadTable('us-old-design')?.columns[0]).toMatchObject({ name: 'rated power min', unit: 'hp' });
  });

  it('are found by words, rows by words and exact numbers', () => {
    const titles = (find: string) => loadPassports(find).map((table) => table.id);
    expect(titles('')).toHaveLength(loadTables().passports.length);
    expect(titles('PREMIUM  united')).toContain('us-premium');
    expect(titles('no such words here')).toEqual([]);
    const all = loadTable('us-premium')?.rows ?? [];
    const found = loadTable('us-premium', 'open 50')?.rows ?? [];
    // 50 hp, open: one row for each of 2, 4, 6 and 8 poles (10 CFR 431.25, table 5), and none of 150 or 250 hp.
    expect(found).toHaveLength(4);
    expect(found.every((row) => all.includes(row) && row.includes('50') && row.includes('open'))).toBe(true);
    expect(loadTable('us-premium', 'nothing of this')?.rows).toEqual([]);
    expect(loadTable('no-such-table')).toBeUndefined();
  });
});

describe('the method', () => {
  it('has a place of its own for every formula that a derivation points to', () => {
    const places = loadFormulas().flatMap((group) => group.formulas.map((formula) => formula.id));
    expect(new Set(places).size).toBe(places.length);
    const { tables, prices } = loadTables();
    const settings = defaultSettings();
    const pointed = new Set<string>();
    for (const { motor } of generateDemo({ asOf: settings.asOf }).slice(0, 20)) {
      const evaluation = evaluateMotor(motor, { settings, tables, prices }, new Map());
      for (const [name, quantity] of figuresOf(evaluation)) {
        for (const step of derive(evaluation, name, quantity)?.steps ?? []) {
          if (step.kind === 'formula') pointed.add(step.formula ?? `${step.title} has no id`);
        }
      }
    }
    expect(pointed.size).toBeGreaterThan(20);
    expect([...pointed].filter((id) => !places.includes(id))).toEqual([]);
  });

  it('names a page of the manual that there is for every way to the load', () => {
    for (const method of loadMethods()) {
      expect(readFileSync(path.join(ROOT, method.page), 'utf8').length, method.page).toBeGreaterThan(200);
    }
  });
});
