import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll } from 'vitest';

export const ROOT = fileURLToPath(new URL('../../', import.meta.url));

/** What a command said and how it ended. */
export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the command line as a user would, without a shell in between. */
export function studyCommand(...args: string[]): Ran {
  const run = spawnSync(process.execPath, ['scripts/study.mjs', ...args], {
    cwd: ROOT,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  return { code: run.status, out: run.stdout, err: run.stderr };
}

/** A folder for one test file's sheets, removed at the end. */
export function scratch(): { readonly folder: string; readonly file: (name: string, text: string) => string } {
  const folder = mkdtempSync(path.join(tmpdir(), 'lossbook-cli-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return {
    folder,
    file: (name, text) => {
      const full = path.join(folder, name);
      writeFileSync(full, text);
      return full;
    },
  };
}
