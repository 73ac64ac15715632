import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));
let root: string;

/** A project of its own: two sources that need each other's word, and the packages that compile and load. */
beforeEach(() => {
  root = mkdtempSync(path.join(tmpdir(), 'lossbook-compiled-'));
  mkdirSync(path.join(root, 'lib', 'platform'), { recursive: true });
  mkdirSync(path.join(root, 'node_modules'));
  cpSync(path.join(PROJECT, 'lib/platform/compiled.mjs'), path.join(root, 'lib/platform/compiled.mjs'));
  for (const name of ['esbuild', 'highs', 'tsx']) {
    symlinkSync(path.join(PROJECT, 'node_modules', name), path.join(root, 'node_modules', name));
  }
  writeFileSync(path.join(root, 'package.json'), '{ "type": "module" }');
  writeFileSync(path.join(root, 'tsconfig.json'), '{ "compilerOptions": { "paths": { "@/*": ["./*"] } } }');
  writeFileSync(path.join(root, 'package-lock.json'), '{}');
  writeFileSync(
    path.join(root, 'lib', 'program.ts'),
    `import { word } from '@/lib/word';\nconst said: string = word;\nconsole.log(said, import.meta.url);\n`,
  );
  say('one');
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

function say(word: string): void {
  writeFileSync(path.join(root, 'lib', 'word.ts'), `export const word: string = '${word}';\n`);
}

function run(env: Readonly<Record<string, string>> = {}): { said: string; code: number | null; err: string } {
  const start = `import { run } from './lib/platform/compiled.mjs'; await run('lib/program.ts');`;
  const { stdout, stderr, status } = spawnSync(process.execPath, ['--input-type=module', '-e', start], {
    cwd: root,
    encoding: 'utf8',
    env: { ...process.env, ...env },
  });
  return { said: stdout.trim(), code: status, err: stderr };
}

const kept = (): string => path.join(root, 'node_modules', '.cache', 'lossbook');
const place = (): string => pathToFileURL(path.join(root, 'lib', 'program.ts')).href;

test('a program runs, knows its own place, and is made once as long as nothing changes', () => {
  expect(run()).toEqual({ said: `one ${place()}`, code: 0, err: '' });
  const files = () => readdirSync(kept()).map((name) => [name, statSync(path.join(kept(), name)).mtimeMs]);
  const before = files();
  expect(before).toHaveLength(3);
  expect(run().said).toBe(`one ${place()}`);
  expect(files()).toEqual(before);
});

test('what Node.js compiled is kept, added to by a run that needs more, and made anew where it is damaged', () => {
  const long = Array.from({ length: 300 }, (_, i) => `() => ${i} * ${i}`).join(',\n');
  writeFileSync(
    path.join(root, 'lib', 'program.ts'),
    `const all = [${long}];\nif (process.env['MORE']) for (const one of all) one();\nconsole.log(all.length);\n`,
  );
  const code = () => {
    const file = readdirSync(kept()).find((name) => name.endsWith('.code'));
    return path.join(kept(), String(file));
  };
  expect(run().said).toBe('300');
  const little = statSync(code()).size;
  expect(run({ MORE: 'yes' }).said).toBe('300');
  const whole = readFileSync(code());
  expect(whole.length).toBeGreaterThan(2 * little);
  expect(run().said).toBe('300');
  expect(readFileSync(code())).toEqual(whole);

  writeFileSync(code(), whole.subarray(0, whole.length / 2));
  expect(run({ MORE: 'yes' })).toEqual({ said: '300', code: 0, err: '' });
  expect(statSync(code()).size).toBeGreaterThan(2 * little);
});

test('a package that is not taken in is found when a program asks for it later, in a first run and in the next', () => {
  writeFileSync(
    path.join(root, 'lib', 'program.ts'),
    `void import('highs').then(({ default: load }) => console.log(typeof load));\n`,
  );
  for (const _ of ['first', 'next']) expect(run()).toEqual({ said: 'function', code: 0, err: '' });
});

test('letters of other scripts in a regular expression stay what they are', () => {
  writeFileSync(path.join(root, 'lib', 'program.ts'), `console.log(/^[−–]ÅΩ時𝛺$/u.test('−ÅΩ時𝛺'), /[^ -~]/.source, '≤');\n`);
  expect(run().said).toBe('true [^ -~] ≤');
});

test('a change in any of its sources shows at once, and nothing old is left', () => {
  run();
  say('another');
  expect(run().said).toBe(`another ${place()}`);
  expect(readdirSync(kept())).toHaveLength(3);
});

test('a project that was moved is made again, since the sources know their place', () => {
  run();
  const moved = `${root}-moved`;
  cpSync(root, moved, { recursive: true, preserveTimestamps: true, verbatimSymlinks: true });
  rmSync(root, { recursive: true });
  root = moved;
  expect(run().said).toBe(`one ${place()}`);
});

test('where nothing may be kept it runs all the same', () => {
  writeFileSync(path.join(root, 'node_modules', '.cache'), 'a file in the way');
  expect(run()).toEqual({ said: `one ${place()}`, code: 0, err: '' });
});

test('a fault in a source is said, not run around', () => {
  say(`one' + `);
  const { code, err } = run();
  expect(code).not.toBe(0);
  expect(err).toContain('word.ts');
});
