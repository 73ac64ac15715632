/**
 * Which servers use a data folder: each leaves a file `running/<process id>` there while it serves (scripts/start.mjs writes and
 * removes it). A file whose process has ended, or whose number now belongs to another program, does not count.
 */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';

function serves(pid: number): boolean {
  try {
    process.kill(pid, 0);
  } catch (error) {
    // EPERM: the process is there, but belongs to somebody else.
    if (!(error instanceof Error && 'code' in error && error.code === 'EPERM')) return false;
  }
  try {
    return readFileSync(`/proc/${pid}/cmdline`, 'utf8').includes('start.mjs');
  } catch {
    // No such folder on this system: believe the number.
    return true;
  }
}

/** Process ids of the servers that use a data folder now. */
export function runningServers(dataFolder: string): number[] {
  try {
    return readdirSync(path.join(dataFolder, 'running'))
      .map(Number)
      .filter((pid) => Number.isInteger(pid) && pid > 0 && serves(pid));
  } catch {
    return [];
  }
}
