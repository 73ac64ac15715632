import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Measure } from './engine';
import { perfSheet } from './sheet';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

/** Wall time and peak memory of `study evaluate` on a fleet of so many motors, from start to end of the process. */
function evaluate(motors: number): { seconds: number; megabytes: number | undefined } {
  const sheet = perfSheet(motors);
  const args = ['scripts/study.mjs', 'evaluate', sheet, '--out', `${sheet}.json`];
  const timed = existsSync('/usr/bin/time');
  const start = performance.now();
  const run = timed
    ? spawnSync('/usr/bin/time', ['-v', process.execPath, ...args], { cwd: ROOT, encoding: 'utf8', maxBuffer: 1 << 28 })
    : spawnSync(process.execPath, args, { cwd: ROOT, encoding: 'utf8', maxBuffer: 1 << 28 });
  const seconds = (performance.now() - start) / 1000;
  if (run.status !== 0 && run.status !== 3) throw new Error(`evaluate ended with ${run.status}: ${run.stderr.slice(0, 2000)}`);
  const peak = /Maximum resident set size \(kbytes\): (\d+)/.exec(run.stderr);
  return { seconds, megabytes: peak ? Number(peak[1]) / 1024 : undefined };
}

/** End-to-end times of the command line; `large` adds the fleet of 100,000. */
export function commandLine(large: boolean): Measure[] {
  const measures: Measure[] = [];
  const empty = evaluate(100);
  measures.push({ what: 'evaluate, 100 motors, start to end', value: empty.seconds, unit: 's' });
  const ten = evaluate(10_000);
  measures.push({ what: 'evaluate, 10,000 motors, start to end', value: ten.seconds, unit: 's', bar: '5' });
  if (ten.megabytes !== undefined)
    measures.push({ what: 'peak memory with 10,000 motors', value: ten.megabytes, unit: 'MiB', bar: '1024' });
  if (!large) return measures;
  const hundred = evaluate(100_000);
  measures.push({ what: 'evaluate, 100,000 motors, start to end', value: hundred.seconds, unit: 's' });
  measures.push({
    what: 'cost a motor, 100,000 over 10,000 (start-up taken off)',
    value: (hundred.seconds - empty.seconds) / 10 / (ten.seconds - empty.seconds),
    unit: 'ratio',
    bar: 'about 1',
  });
  if (hundred.megabytes !== undefined)
    measures.push({ what: 'peak memory with 100,000 motors', value: hundred.megabytes, unit: 'MiB', bar: '1024' });
  return measures;
}
