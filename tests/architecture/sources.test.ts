import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { browserProblems } from './browser-code';
import { impurities } from './engine-purity';
import { formulasWithoutCaller } from './formula-callers';
import { featureNames, importSpelling, LINE_LIMIT, longFiles, waysRound } from './habits';
import { brokenLinks, lockedAddresses, machinePaths } from './pages';
import { CODE_ENDINGS, ROOT, readTree } from './source-tree';

/** The habits of the repository, held against every file that people write. What each check catches is shown in checks.test.ts. */
const CODE = readTree(CODE_ENDINGS);
const PAGES = readTree(['.md']);
const TEXTS = readTree([
  ...CODE_ENDINGS,
  '.md',
  '.json',
  '.css',
  '.prisma',
  '.sql',
  '.csv',
  '.sh',
  'run',
  '.yml',
  '.yaml',
  '.npmrc',
]);

describe('every file of the repository', () => {
  test('is seen by these checks', () => {
    expect([...CODE.keys()]).toEqual(
      expect.arrayContaining(['lib/engine/motor.ts', 'scripts/test.ts', '.dependency-cruiser.cjs']),
    );
    expect([...PAGES.keys()]).toEqual(expect.arrayContaining(['README.md', 'docs/architecture.md']));
    expect([...TEXTS.keys()]).toEqual(expect.arrayContaining(['.ci/run', 'package.json', 'biome.json']));
  });

  test('takes no way round the checks', () => {
    expect(waysRound(CODE)).toEqual([]);
  });

  test('is short enough to be read', () => {
    expect(longFiles(readTree([...CODE_ENDINGS, '.css']))).toEqual([]);
  });

  test('spells its imports alike', () => {
    expect(importSpelling(CODE)).toEqual([]);
  });

  test('names no folder of one machine', () => {
    expect(machinePaths(TEXTS)).toEqual([]);
  });
});

test('the engine looks at no clock, chance or surroundings', () => {
  expect([...CODE.keys()].filter((file) => file.startsWith('lib/engine/')).length).toBeGreaterThan(5);
  expect(impurities(CODE)).toEqual([]);
});

test('every declared formula is applied by the program', () => {
  expect(formulasWithoutCaller(CODE)).toEqual([]);
});

test('nothing reaches the browser that belongs on the server', () => {
  expect(browserProblems(CODE)).toEqual([]);
});

test('features keep to the closed list of file names', () => {
  expect(featureNames(CODE)).toEqual([]);
});

test('links between pages lead somewhere', () => {
  expect(brokenLinks(PAGES, ROOT)).toEqual([]);
});

test('the lock file leaves the place to fetch from to the machine', () => {
  const lockFile = readFileSync(path.join(ROOT, 'package-lock.json'), 'utf8');
  expect(lockFile).toContain('"integrity"');
  expect(lockedAddresses(lockFile)).toEqual([]);
});

test('the limit of lines is the one that the guide states', () => {
  expect(PAGES.get('DEVELOPERS.md')).toContain(`${LINE_LIMIT} lines`);
});
