import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { browserProblems } from './browser-code';
import { impurities } from './engine-purity';
import { formulasWithoutCaller } from './formula-callers';
import { featureNames, importSpelling, LINE_LIMIT, longFiles, waysRound } from './habits';
import { brokenLinks, headingAddress, lockedAddresses, machinePaths } from './pages';
import { readTree } from './source-tree';

/** The checks of sources.test.ts fed with small files that break a rule, and with the nearest ones that do not. */
const tree = (files: Readonly<Record<string, string>>): ReadonlyMap<string, string> => new Map(Object.entries(files));

describe('purity of the engine', () => {
  const inEngine = (text: string): string[] => impurities(tree({ 'lib/engine/load/slip.ts': text }));

  test.each([
    'const now = Date.now();',
    'const now = new Date();',
    'const then = new Date(2026, 0, 1);',
    'const now = Date();',
    'const clock = Date;',
    'const x = Math.random();',
    'const jobs = process.env.JOBS;',
    'const all = globalThis;',
    'console.log(1);',
    'await fetch("x");',
    'setTimeout(() => 1, 5);',
    'const f = new Function("return 1");',
    'const t = performance.now();',
    'const o = { clock: performance };',
    'function f(now = Date.now()) { return now; }',
  ])('refuses %s', (text) => {
    expect(inEngine(text)).toHaveLength(1);
  });

  test.each([
    'const year = Date.UTC(2026, 0, 1);',
    'const day = Date.parse("2026-03-14");',
    'const x = Math.sqrt(2);',
    'export interface Step { readonly process: string; fetch(): number }',
    'const o = { process: 1, console: 2 }; export const p = o.process + o.console;',
    'export type When = Date;',
    '// Date.now() is not for the engine',
    'export const text = "Math.random";',
  ])('lets pass %s', (text) => {
    expect(inEngine(text)).toEqual([]);
  });

  test('looks at the engine, and not at what the generator wrote', () => {
    expect(impurities(tree({ 'lib/platform/a.ts': 'Date.now();', 'lib/engine/generated/a.ts': 'Date.now();' }))).toEqual([]);
  });
});

describe('formulas without a caller', () => {
  const sheet = 'export const twice = formula({ title: "Twice" });';
  const alone = (files: Readonly<Record<string, string>>): string[] =>
    formulasWithoutCaller(tree({ 'lib/engine/load/load.sheet.ts': sheet, ...files }));

  test.each([
    { 'tests/engine/a.test.ts': "import * as L from '@/lib/engine/generated/load';\nL.twice.f(1);" },
    { 'lib/engine/load/a.ts': "import * as M from '../generated/machine';\nM.twice.f(1);" },
    { 'lib/engine/load/a.ts': "import * as L from '../generated/load';\nL.thrice.f(1);" },
    { 'lib/engine/load/other.sheet.ts': "import * as L from '../generated/load';\nL.twice.f(1);" },
  ])('refuses %j', (files) => {
    expect(alone(files).filter((problem) => problem.includes('twice'))).toHaveLength(1);
  });

  test.each([
    { 'lib/engine/load/a.ts': "import * as L from '../generated/load';\napply(scope, L.twice, {});" },
    { 'lib/engine/load/a.ts': "import { twice as double } from '../generated/load';\ndouble.f(1);" },
    { 'lib/features/workbook/a.ts': 'const found = FORMULAS.load?.twice;' },
  ])('lets pass %j', (files) => {
    expect(alone(files)).toEqual([]);
  });
});

describe('code for the browser', () => {
  const client = (text: string, more: Readonly<Record<string, string>> = {}): string[] =>
    browserProblems(
      tree({
        'app/_ui/part.tsx': `'use client';\n${text}`,
        'lib/engine/index.ts': 'export { f } from "./load/slip";',
        'lib/engine/client.ts': 'export { f } from "./load/slip";',
        'lib/engine/load/slip.ts': 'export const f = 1;',
        'lib/platform/format.ts': 'export const f = 1;',
        'lib/platform/db.ts': 'export const f = 1;',
        'lib/features/fleet/loaders.ts': 'export const f = 1;',
        'lib/features/fleet/schema.ts': 'export const f = 1;',
        'lib/features/fleet/actions.ts': `'use server';\nimport { f } from './loaders'; export const g = f;`,
        ...more,
      }),
    );

  test.each([
    'import { f } from "@/lib/engine/index";',
    'import { f } from "@/lib/engine";',
    'import { f } from "../../lib/engine/load/slip";',
    'import { f } from "@/lib/platform/db";',
    'import { f } from "@/lib/features/fleet/loaders";',
    'import fs from "node:fs";',
    'export { f } from "@/lib/platform/db";',
    'const late = import("@/lib/platform/db");',
  ])('refuses %s', (text) => {
    expect(client(text)).toHaveLength(1);
  });

  test.each([
    'import type { F } from "@/lib/engine/index";',
    'import { f } from "@/lib/engine/client";',
    'import { f } from "@/lib/platform/format";',
    'import { f } from "@/lib/features/fleet/schema";',
    'import { g } from "@/lib/features/fleet/actions";',
    'import { useState } from "react";',
  ])('lets pass %s', (text) => {
    expect(client(text)).toEqual([]);
  });

  test('follows the imports of a part that has no mark of its own', () => {
    const problems = client('import { a } from "./plain";', { 'app/_ui/plain.tsx': 'import { f } from "@/lib/platform/db";' });
    expect(problems).toEqual([expect.stringContaining('app/_ui/part.tsx -> app/_ui/plain.tsx -> lib/platform/db.ts')]);
  });

  test('lets server components be', () => {
    expect(browserProblems(tree({ 'app/page.tsx': 'import { f } from "@/lib/platform/db";', 'lib/platform/db.ts': '' }))).toEqual(
      [],
    );
  });
});

describe('ways round the checks', () => {
  test.each([
    'const a: any = 1;',
    'const a = b as any;',
    'const a = b!;',
    '// @ts-ignore\nconst a = 1;',
    '/* @ts-expect-error */ const a = 1;',
    'const a = 1; // biome-ignore lint: no',
    '// TODO: later',
    'function f() { /* TODO */ }',
    '/** TODO: words */\nexport const a = 1;',
    'const a = 1;\n// FIXME',
    'test.skip("a", () => {});',
    'describe.only("a", () => {});',
    'it.todo("a");',
    'test.describe.skip("a", () => {});',
    'test.skipIf(true)("a", () => {});',
  ])('refuses %s', (text) => {
    expect(waysRound(tree({ 'lib/a.ts': text }))).toHaveLength(1);
  });

  test.each([
    'const a = "any, TODO, @ts-ignore";',
    'const a = b !== c && !d;',
    'const rows = sheet.skip(1);',
    'test.each([1])("a", () => {});',
    '// any motor at all',
  ])('lets pass %s', (text) => {
    expect(waysRound(tree({ 'lib/a.ts': text }))).toEqual([]);
  });

  test('sees a mark inside the markup of a screen', () => {
    expect(waysRound(tree({ 'app/a.tsx': 'const a = <p>{/* TODO: words */}</p>;' }))).toHaveLength(1);
  });
});

test('a file at the limit of lines is too long, and one below is not', () => {
  const lines = (count: number): string => 'x\n'.repeat(count);
  const files = { 'lib/a.ts': lines(LINE_LIMIT), 'lib/b.ts': lines(LINE_LIMIT - 1), 'vitest.config.ts': lines(2 * LINE_LIMIT) };
  expect(longFiles(tree(files))).toEqual([expect.stringContaining('lib/a.ts')]);
});

test('imports are relative inside a part, begin with @/ across parts, and name no extension', () => {
  const spelled = (from: string, specifier: string): number => importSpelling(tree({ [from]: `import '${specifier}';` })).length;
  expect(spelled('lib/features/fleet/parse.ts', '../study/settings')).toBe(0);
  expect(spelled('lib/features/fleet/parse.ts', '@/lib/engine')).toBe(0);
  expect(spelled('tests/engine/slip.test.ts', '@/lib/engine/load/slip')).toBe(0);
  expect(spelled('app/page.tsx', './page.module.css')).toBe(0);
  expect(spelled('lib/features/fleet/parse.ts', '../../engine')).toBe(1);
  expect(spelled('tests/engine/slip.test.ts', '../../lib/engine')).toBe(1);
  expect(spelled('lib/features/fleet/parse.ts', './number.ts')).toBe(1);
});

test('a feature has files of the closed list and parts named for what they do', () => {
  const names = (...files: string[]): string[] =>
    featureNames(tree(Object.fromEntries(files.map((file) => [`lib/features/${file}`, '']))));
  expect(names('fleet/schema.ts', 'fleet/data.ts', 'fleet/loaders.ts', 'fleet/mutations.ts', 'fleet/actions.ts')).toEqual([]);
  expect(names('fleet/parse-row.ts', 'price-list/read.ts')).toEqual([]);
  for (const wrong of [
    'fleet/utils.ts',
    'fleet/parseRow.ts',
    'fleet/Table.tsx',
    'fleet/parts/row.ts',
    'loose.ts',
    'Fleet/data.ts',
    'fleet/types.ts',
  ]) {
    expect(names(wrong), wrong).toHaveLength(1);
  }
});

test('a link must lead to a file, and to a heading where it names one', () => {
  const root = mkdtempSync(path.join(tmpdir(), 'pages-'));
  const files = {
    'README.md':
      '[a](docs/a.md) [b](docs/a.md#two-words) [c](docs/missing.md) [d](docs/a.md#absent) [e](https://example.org/x) `[f](nowhere.md)`',
    'docs/a.md':
      '# One\n## Two words\n[up](../README.md) [here](#one) [root](/README.md)\n```\n[code](nowhere.md)\n```\n[ref]: gone.md\n',
  };
  mkdirSync(path.join(root, 'docs'));
  for (const [file, text] of Object.entries(files)) writeFileSync(path.join(root, file), text);
  const problems = brokenLinks(readTree(['.md'], root), root);
  rmSync(root, { recursive: true });
  expect(problems.sort()).toEqual([
    'README.md:1 docs/a.md#absent leads to no heading',
    'README.md:1 docs/missing.md leads to no file',
    'docs/a.md:3 /README.md starts at the root: write it relative to the page',
    'docs/a.md:7 gone.md leads to no file',
  ]);
  expect(headingAddress('3. Where it is: `a/b`, and why?')).toBe('3-where-it-is-ab-and-why');
});

test('folders of one machine are found, folders of the repository are not', () => {
  const folder = (top: string): string => `see "/${top}/someone/motors.csv" there`;
  expect(
    machinePaths(tree({ 'a.md': folder('home'), 'b.ts': folder('Users'), 'c.ts': folder('lib'), 'd.ts': 'app/home/page.tsx' })),
  ).toHaveLength(2);
});

test('a lock file with an address is found out', () => {
  expect(lockedAddresses('{ "resolved": "https://example.org/a.tgz" }')).toEqual(['https://example.org/a.tgz']);
  expect(lockedAddresses('{ "integrity": "sha512-…" }')).toEqual([]);
});
