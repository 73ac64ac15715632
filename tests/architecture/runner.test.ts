import { spawnSync } from 'node:child_process';
import { chmodSync, copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { chooseSteps } from '@/scripts/checks/choose-steps';
import { heldAgainstExit, sum, tallyOfExit } from '@/scripts/checks/tally';
import { tallyPlaywright } from '@/scripts/checks/tally-playwright';
import { tallyVitest } from '@/scripts/checks/tally-vitest';
import { ROOT } from './source-tree';

/** The counting of `npm test`, on reports that the runners themselves write, and the whole run on a small invented package. */
const folders: string[] = [];
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

function folderWith(files: Readonly<Record<string, string>>): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'runner-'));
  folders.push(folder);
  symlinkSync(path.join(ROOT, 'node_modules'), path.join(folder, 'node_modules'));
  for (const [file, text] of Object.entries(files)) {
    mkdirSync(path.dirname(path.join(folder, file)), { recursive: true });
    writeFileSync(path.join(folder, file), text);
  }
  return folder;
}

/** The environment without what the outer test runner put into it. */
function cleanEnvironment(more: Readonly<Record<string, string>> = {}): NodeJS.ProcessEnv {
  const environment: NodeJS.ProcessEnv = { ...process.env };
  for (const name of Object.keys(environment)) if (/^(VITEST|TEST|NODE_ENV|PLAYWRIGHT|npm_)/.test(name)) delete environment[name];
  return Object.assign(environment, { NO_COLOR: '1' }, more);
}

describe('counting vitest', () => {
  function run(files: Readonly<Record<string, string>>): ReturnType<typeof tallyVitest> {
    const folder = folderWith({ 'package.json': '{"type":"module"}', ...files });
    const report = path.join(folder, 'report.json');
    const vitest = path.join(ROOT, 'node_modules/vitest/vitest.mjs');
    const args = [vitest, 'run', '--globals', '--root', folder, '--reporter=json', `--outputFile.json=${report}`];
    const ended = spawnSync(process.execPath, args, { cwd: folder, env: cleanEnvironment(), stdio: 'ignore' });
    return tallyVitest(report, ended.status ?? 128);
  }

  test('passed, failed, skipped and postponed tests, and a file that cannot be loaded', () => {
    const tally = run({
      'a.test.ts':
        'test("one", () => {}); test("two", () => { expect(1).toBe(2); }); test.skip("three", () => {}); test.todo("four");',
      'b.test.ts': 'test("five", () => { expect(2).toBe(2); });',
      'c.test.ts': 'import "./missing"; test("six", () => {});',
    });
    expect(tally).toMatchObject({ passed: 2, failed: 4 });
    expect(tally.notes).toHaveLength(3);
  });

  test('all passed', () => {
    expect(run({ 'a.test.ts': 'describe("a", () => { test("one", () => {}); test("two", () => {}); });' })).toEqual({
      passed: 2,
      failed: 0,
      notes: [],
    });
  });

  test('an error outside every test is one failed check', () => {
    const tally = run({
      'a.test.ts':
        'test("one", () => {}); setTimeout(() => { throw new Error("late"); }, 0); await new Promise((r) => setTimeout(r, 20));',
    });
    expect(tally).toMatchObject({ passed: 1, failed: 1 });
  });

  test('no test at all is one failed check', () => {
    expect(run({})).toMatchObject({ passed: 0, failed: 1 });
  });

  test('no report, half a report, and a report of another shape are each one failed check', () => {
    const folder = folderWith({ 'half.json': '{"testResults": [', 'other.json': '{"tests": 12}' });
    for (const name of ['none.json', 'half.json', 'other.json']) {
      expect(tallyVitest(path.join(folder, name), 0), name).toMatchObject({ passed: 0, failed: 1 });
      expect(tallyPlaywright(path.join(folder, name), 0), name).toMatchObject({ passed: 0, failed: 1 });
    }
  });
});

describe('counting Playwright', () => {
  function run(spec: string, retries = 0): ReturnType<typeof tallyPlaywright> {
    const folder = folderWith({
      'package.json': '{"type":"module"}',
      'a.spec.ts': `import { expect, test } from '@playwright/test';\n${spec}`,
    });
    const report = path.join(folder, 'report.json');
    const playwright = path.join(ROOT, 'node_modules/@playwright/test/cli.js');
    const args = [playwright, 'test', '--reporter=json', `--retries=${retries}`, '--workers=1'];
    const env = cleanEnvironment({ PLAYWRIGHT_JSON_OUTPUT_FILE: report });
    const ended = spawnSync(process.execPath, args, { cwd: folder, env, stdio: 'ignore' });
    return tallyPlaywright(report, ended.status ?? 128);
  }

  test('passed, failed, skipped, and passed only when repeated', () => {
    const tally = run(
      `test('one', () => {}); test('two', () => { expect(1).toBe(2); }); test.skip('three', () => {});
       test('four', ({}, info) => { expect(info.retry).toBe(1); });`,
      1,
    );
    expect(tally).toMatchObject({ passed: 1, failed: 3 });
    expect(tally.notes).toHaveLength(2);
  });

  test('all passed', () => {
    expect(run("test('one', () => {}); test('two', () => {});")).toEqual({ passed: 2, failed: 0, notes: [] });
  });

  test('each error outside the tests is a failed check: here a file that cannot be loaded, and that no test is left', () => {
    expect(run("import './missing'; test('one', () => {});")).toMatchObject({ passed: 0, failed: 2 });
  });

  test('no test at all is one failed check', () => {
    expect(run('')).toMatchObject({ passed: 0, failed: 1 });
  });
});

describe('tallies', () => {
  test('an exit code is one check', () => {
    expect(tallyOfExit('types', 0)).toMatchObject({ passed: 1, failed: 0 });
    expect(tallyOfExit('types', 2)).toMatchObject({ passed: 0, failed: 1 });
  });

  test('a bad exit with a clean report is a failure, and a bad exit with counted failures is not counted twice', () => {
    expect(heldAgainstExit('x', { passed: 3, failed: 0, notes: [] }, 1)).toMatchObject({ passed: 3, failed: 1 });
    expect(heldAgainstExit('x', { passed: 3, failed: 2, notes: [] }, 1)).toMatchObject({ passed: 3, failed: 2 });
    expect(heldAgainstExit('x', { passed: 3, failed: 0, notes: [] }, 0)).toMatchObject({ passed: 3, failed: 0 });
  });

  test('are added', () => {
    expect(sum([])).toEqual({ passed: 0, failed: 0, notes: [] });
    expect(
      sum([
        { passed: 1, failed: 2, notes: ['a'] },
        { passed: 3, failed: 4, notes: ['b'] },
      ]),
    ).toEqual({ passed: 4, failed: 6, notes: ['a', 'b'] });
  });
});

test('steps are chosen by name, run in their own order, and a wrong name is answered with the known ones', () => {
  const known = ['types', 'lint', 'unit'];
  const chosen = (...args: string[]): unknown => {
    const choice = chooseSteps(args, known);
    return choice.ok ? choice.names : choice.problem;
  };
  expect(chosen()).toEqual(known);
  expect(chosen('--only', 'unit')).toEqual(['unit']);
  expect(chosen('--only=unit,types')).toEqual(['types', 'unit']);
  expect(chosen('--only', 'unit', '--only', 'lint')).toEqual(['lint', 'unit']);
  for (const wrong of [['--only', 'speed'], ['--only'], ['--only='], ['unit'], ['--all']]) {
    expect(chosen(...wrong), wrong.join(' ')).toContain('types|lint|unit');
  }
});

describe('the whole run', () => {
  /** A package whose checks are small programs: `unit` writes a report of vitest's shape with one passed and one failed test. */
  function packageWith(scripts: Readonly<Record<string, string>>): string {
    const good = 'node -e 0';
    return folderWith({
      'package.json': JSON.stringify({
        type: 'module',
        scripts: {
          test: `tsx ${path.join(ROOT, 'scripts/test.ts')}`,
          'check:types': good,
          'check:lint': good,
          'check:imports': good,
          ...scripts,
        },
      }),
      'write.mjs': `import { writeFileSync } from 'node:fs';
        const file = process.argv.find((a) => a.startsWith('--outputFile.json=')).slice('--outputFile.json='.length);
        const wanted = process.argv[2].split(',');
        const assertionResults = wanted.map((status) => ({ status, fullName: status }));
        writeFileSync(file, JSON.stringify({ testResults: [{ name: 'a', status: wanted.includes('failed') ? 'failed' : 'passed', assertionResults }] }));
        process.exit(wanted.includes('failed') ? 1 : 0);`,
    });
  }

  function run(folder: string, ...args: string[]): { readonly lines: string[]; readonly exitCode: number | null } {
    const ended = spawnSync('npm', ['test', '--silent', '--', ...args], {
      cwd: folder,
      env: cleanEnvironment(),
      encoding: 'utf8',
    });
    return { lines: ended.stdout.trimEnd().split('\n'), exitCode: ended.status };
  }

  test('ends with the sum and with 0 when nothing failed', () => {
    const { lines, exitCode } = run(packageWith({ 'test:unit': 'node write.mjs passed,passed' }));
    expect(lines.at(-1)).toBe('5 passed, 0 failed');
    expect(exitCode).toBe(0);
  });

  test('goes on after a failed step, sums all failures, and ends with 1', () => {
    const folder = packageWith({
      'check:types': 'node -e "process.exit(2)"',
      'test:unit': 'node write.mjs passed,failed,skipped',
    });
    const { lines, exitCode } = run(folder);
    expect(lines.at(-1)).toBe('3 passed, 3 failed');
    expect(lines).toContain('== direction of imports: 1 passed, 0 failed');
    expect(exitCode).toBe(1);
  });

  test('counts a runner that dies without a report as one failed check', () => {
    expect(run(packageWith({ 'test:unit': 'node -e "process.kill(process.pid, 9)"' })).lines.at(-1)).toBe('3 passed, 1 failed');
  });

  test('runs the chosen step alone', () => {
    expect(run(packageWith({ 'test:unit': 'node write.mjs passed' }), '--only', 'unit').lines.at(-1)).toBe('1 passed, 0 failed');
  });
});

describe('.ci/run', () => {
  /** A clone in which `npm` is a small program of ours; the script finds it first on the path. */
  function run(npm: string): { readonly last: string | undefined; readonly exitCode: number | null } {
    const folder = folderWith({ 'bin/npm': `#!/bin/sh\n${npm}\n`, 'package.json': '{}' });
    chmodSync(path.join(folder, 'bin/npm'), 0o755);
    mkdirSync(path.join(folder, '.ci'));
    copyFileSync(path.join(ROOT, '.ci/run'), path.join(folder, '.ci/run'));
    const env = cleanEnvironment({ PATH: `${path.join(folder, 'bin')}:${process.env.PATH ?? ''}` });
    const ended = spawnSync(path.join(folder, '.ci/run'), { cwd: tmpdir(), env, encoding: 'utf8' });
    return { last: ended.stdout.trimEnd().split('\n').at(-1), exitCode: ended.status };
  }

  test('ends with the line of the test run and its exit code', () => {
    expect(run('[ "$1" = ci ] || echo "12 passed, 0 failed"')).toEqual({ last: '12 passed, 0 failed', exitCode: 0 });
    expect(run('[ "$1" = ci ] || { echo "11 passed, 1 failed"; exit 1; }')).toEqual({ last: '11 passed, 1 failed', exitCode: 1 });
  });

  test('says 0 passed, 1 failed when the packages cannot be installed', () => {
    expect(run('[ "$1" = ci ] && exit 1; echo "12 passed, 0 failed"')).toEqual({ last: '0 passed, 1 failed', exitCode: 1 });
  });

  test('says so as well when the test run dies before its last line', () => {
    expect(run('[ "$1" = ci ] || { echo "== types"; exit 0; }')).toEqual({ last: '0 passed, 1 failed', exitCode: 1 });
  });

  test.each([
    ['a browser', 'playwright.config.ts', /apt-get install .*chromium/],
    ['a spreadsheet program', 'tests/features/workbook.test.ts', /apt-get install .*--no-install-recommends libreoffice-calc/],
  ])('installs %s as root when there is none, and goes on without one when that fails', (_, wantedBy, install) => {
    const tools = ['bash', 'dirname', 'grep', 'tail', 'tee', 'mktemp', 'rm'];
    for (const works of [true, false]) {
      const npm = '[ "$1" = ci ] || echo "1 passed, 0 failed"';
      const program = (text: string): string => `#!/bin/sh\n${text}\n`;
      const folder = folderWith({
        [wantedBy]: '',
        'bin/npm': program(npm),
        'bin/id': program('echo 0'),
        'bin/apt-get': program(`echo "apt-get $*" >>"$ASKED"; ${works ? 'exit 0' : 'exit 100'}`),
      });
      for (const name of ['npm', 'id', 'apt-get']) chmodSync(path.join(folder, 'bin', name), 0o755);
      for (const name of tools) {
        const real = spawnSync('sh', ['-c', `command -v ${name}`], { encoding: 'utf8' }).stdout.trim();
        symlinkSync(real, path.join(folder, 'bin', name));
      }
      mkdirSync(path.join(folder, '.ci'));
      copyFileSync(path.join(ROOT, '.ci/run'), path.join(folder, '.ci/run'));
      const asked = path.join(folder, 'asked');
      const env = cleanEnvironment({ PATH: path.join(folder, 'bin'), ASKED: asked, CHROMIUM: '' });
      const ended = spawnSync(path.join(folder, 'bin/bash'), [path.join(folder, '.ci/run')], { env, encoding: 'utf8' });
      const calls = readFileSync(asked, 'utf8').trim().split('\n');
      expect(calls[0]).toContain('apt-get update');
      expect(calls).toHaveLength(works ? 2 : 1);
      if (works) expect(calls[1]).toMatch(install);
      expect(ended.stdout).toMatch(works ? /== npm ci/ : /could not be installed/);
      expect(ended.stdout.trimEnd().split('\n').at(-1)).toBe('1 passed, 0 failed');
    }
  });

  test('gives its programs no input to wait for', () => {
    expect(run('[ "$1" = ci ] || { read -r answer && exit 3; echo "1 passed, 0 failed"; }')).toEqual({
      last: '1 passed, 0 failed',
      exitCode: 0,
    });
  });
});
