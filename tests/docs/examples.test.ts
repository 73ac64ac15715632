import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { FORMULAS } from '@/lib/engine/generated/catalog';
import { LOAD_METHODS } from '@/lib/engine/load/registry';

const METHODS = fileURLToPath(new URL('../../docs/methods', import.meta.url));
const pages = readdirSync(METHODS).filter((file) => file.endsWith('.md'));

/** `<!-- example: sheet.formula name=value … -> printed value unit -->` beside each worked example of the manual. */
const EXAMPLE = /<!-- example: (\S+)\.(\S+) (.*?) -> ([-\d.]+)(?: [^>]*)? -->/g;

const examples = pages.flatMap((page) => {
  const text = readFileSync(path.join(METHODS, page), 'utf8');
  return [...text.matchAll(EXAMPLE)].map(([, sheet = '', name = '', inputs = '', printed = '']) => ({
    page,
    sheet,
    name,
    inputs,
    printed,
  }));
});

describe('worked examples of the manual', () => {
  it('are there', () => {
    expect(examples.length).toBeGreaterThan(5);
  });

  it.each(examples)('$page: $sheet.$name gives $printed as printed', ({ sheet, name, inputs, printed }) => {
    const formula = FORMULAS[sheet]?.[name];
    expect(formula, `${sheet}.${name} is a formula`).toBeDefined();
    const given = new Map(inputs.split(' ').map((pair) => pair.split('=') as [string, string]));
    expect([...given.keys()].sort()).toEqual([...(formula?.names ?? [])].sort());
    const value = formula?.f(...formula.names.map((key) => Number(given.get(key)))) ?? Number.NaN;
    const decimals = printed.split('.')[1]?.length ?? 0;
    expect(value.toFixed(decimals)).toBe(Number(printed).toFixed(decimals));
  });

  it('name formulas that exist wherever a page names one', () => {
    for (const page of pages) {
      const text = readFileSync(path.join(METHODS, page), 'utf8');
      for (const [, sheet = '', name = ''] of text.matchAll(/`([a-z-]+)\.([a-z_0-9]+)`/g)) {
        if (FORMULAS[sheet]) expect(FORMULAS[sheet]?.[name], `${page}: ${sheet}.${name}`).toBeDefined();
      }
    }
  });
});

describe('load methods', () => {
  it('each have a unique id, needs, validity, a source and a page', () => {
    expect(new Set(LOAD_METHODS.map((method) => method.id)).size).toBe(LOAD_METHODS.length);
    for (const method of LOAD_METHODS) {
      expect(method.needs.length).toBeGreaterThan(0);
      expect(method.validity.length).toBeGreaterThan(10);
      expect(method.source.length).toBeGreaterThan(10);
      expect(pages).toContain(path.basename(method.page));
    }
  });
});
