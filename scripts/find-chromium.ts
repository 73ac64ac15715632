/** Finds the Chromium of this computer for the browser tests and for printing; nothing is downloaded but Debian's own package. */
import { spawnSync } from 'node:child_process';
import { accessSync, constants } from 'node:fs';
import path from 'node:path';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];
const FOLDERS = ['/usr/bin', '/usr/local/bin', '/snap/bin', '/opt/google/chrome'];

function runs(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

function find(environment: Readonly<Record<string, string | undefined>>): string | undefined {
  const stated = environment.CHROMIUM;
  if (stated !== undefined && stated !== '') {
    if (runs(stated)) return stated;
    throw new Error(`CHROMIUM is set to ${stated}, which is no program that can be run.`);
  }
  const folders = [...FOLDERS, ...(environment.PATH ?? '').split(path.delimiter)].filter((folder) => folder !== '');
  for (const name of NAMES) {
    for (const folder of folders) {
      const file = path.join(folder, name);
      if (runs(file)) return file;
    }
  }
  return undefined;
}

function installDebianPackage(): void {
  console.error('There is no Chromium; installing the package "chromium".');
  const environment = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  for (const args of [
    ['update', '-qq'],
    ['install', '-y', '-qq', '--no-install-recommends', 'chromium'],
  ]) {
    const result = spawnSync('apt-get', args, { stdio: ['ignore', 'ignore', 'inherit'], env: environment });
    if (result.status !== 0)
      throw new Error(`apt-get ${args.join(' ')} failed. Install Chromium by hand, or set CHROMIUM to its path.`);
  }
}

/**
 * The path of a Chromium: `CHROMIUM` if set, else one in the usual places. As root on a system with apt-get, the package is
 * installed when there is none.
 * @throws Error that says what to install.
 */
export function findChromium(environment: Readonly<Record<string, string | undefined>> = process.env): string {
  const found = find(environment);
  if (found !== undefined) return found;
  if (process.getuid?.() === 0 && runs('/usr/bin/apt-get')) {
    installDebianPackage();
    const installed = find(environment);
    if (installed !== undefined) return installed;
  }
  throw new Error(
    'The browser tests need Chromium. Install the package "chromium" (Debian, Ubuntu) or Google Chrome, or set CHROMIUM to its path.',
  );
}
