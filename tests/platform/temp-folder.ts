import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach } from 'vitest';

/** Gives each call an empty folder of its own; all are removed after the test. */
export function temporaryFolders(): () => string {
  const folders: string[] = [];
  afterEach(() => {
    for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
  });
  return () => {
    const folder = mkdtempSync(path.join(tmpdir(), 'lossbook-test-'));
    folders.push(folder);
    return folder;
  };
}
