import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { runCommand } from './run-command';
import { NOTHING, type Tally, tallyOfExit } from './tally';
import { tallyPlaywright } from './tally-playwright';
import { tallyVitest } from './tally-vitest';

/** One step of `npm test`: its name on the command line, what it does in words, and how it runs and counts. */
export interface Step {
  readonly name: string;
  readonly title: string;
  readonly run: () => Promise<Tally>;
}

/** Runs a command of package.json's "scripts", so that each check is spelled out in one place. */
function npmScript(
  name: string,
  args: readonly string[] = [],
  environment: Readonly<Record<string, string>> = {},
): Promise<number> {
  return runCommand('npm', ['run', '--silent', name, ...(args.length > 0 ? ['--', ...args] : [])], environment);
}

function oneCheck(name: string, title: string, script: string): Step {
  return { name, title, run: async () => tallyOfExit(title, await npmScript(script)) };
}

/** Gives the work a path for a report in a folder of its own, which is removed afterwards. */
async function withReport(work: (reportFile: string) => Promise<Tally>): Promise<Tally> {
  const folder = mkdtempSync(path.join(tmpdir(), 'report-'));
  try {
    return await work(path.join(folder, 'report.json'));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const unit: Step = {
  name: 'unit',
  title: 'unit and integration tests',
  run: () =>
    withReport(async (file) => {
      const exitCode = await npmScript('test:unit', ['--reporter=default', '--reporter=json', `--outputFile.json=${file}`]);
      return tallyVitest(file, exitCode);
    }),
};

const browser: Step = {
  name: 'browser',
  title: 'browser tests',
  run: async () => {
    if (!existsSync('playwright.config.ts')) {
      console.log('No playwright.config.ts: there are no browser tests to run.');
      return NOTHING;
    }
    return withReport(async (file) => {
      const exitCode = await npmScript('test:e2e', ['--reporter=list,json'], { PLAYWRIGHT_JSON_OUTPUT_FILE: file });
      return tallyPlaywright(file, exitCode);
    });
  },
};

/** The steps of `npm test`, in the order in which they run: what fails fastest comes first. */
export const STEPS: readonly Step[] = [
  oneCheck('types', 'types', 'check:types'),
  oneCheck('lint', 'lint', 'check:lint'),
  oneCheck('imports', 'direction of imports', 'check:imports'),
  unit,
  browser,
];
