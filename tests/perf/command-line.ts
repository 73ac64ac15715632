import { spawnSync } from 'node:child_process';
import { existsSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Measure } from './engine';
import { perfSheet } from './sheet';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const TIME = '/usr/bin/time';

/** What one `evaluate` took, from start to end of the process. */
interface Taken {
  readonly seconds: number;
  /** Processor time over all threads, and peak memory, where the system's `time` tells them. */
  readonly processorSeconds: number;
  readonly megabytes: number;
}

/** Runs `study evaluate` on a fleet of so many motors. */
function evaluate(motors: number): Taken {
  const sheet = perfSheet(motors);
  const out = `${sheet}.json`;
  const command = [process.execPath, 'scripts/study.mjs', 'evaluate', sheet, '--out', out];
  const [program = '', ...args] = existsSync(TIME) ? [TIME, '-v', ...command] : command;
  const start = performance.now();
  const run = spawnSync(program, args, { cwd: ROOT, encoding: 'utf8', maxBuffer: 1 << 28 });
  const seconds = (performance.now() - start) / 1000;
  if (run.status !== 0 && run.status !== 3) throw new Error(`evaluate ended with ${run.status}: ${run.stderr.slice(0, 2000)}`);
  rmSync(out);
  const told = (what: string): number => Number(new RegExp(`${what}: ([\\d.]+)`).exec(run.stderr)?.[1] ?? Number.NaN);
  return {
    seconds,
    processorSeconds: told('User time \\(seconds\\)') + told('System time \\(seconds\\)'),
    megabytes: told('Maximum resident set size \\(kbytes\\)') / 1024,
  };
}

const words = (count: number): string => count.toLocaleString('en');

/**
 * The command line from start to end, and what a motor costs in fleets of different size; `large` adds the fleet of 100,000.
 * Processor time tells more than time by the clock where other programs run.
 */
export function commandLine(large: boolean): Measure[] {
  const measures: Measure[] = [];
  // The first call compiles the program.
  evaluate(0);
  const startUp = evaluate(0);
  measures.push(
    { what: 'evaluate, header alone', value: startUp.seconds, unit: 's' },
    { what: 'the same, processor time', value: startUp.processorSeconds, unit: 's' },
  );
  const costs = new Map<number, number>();
  for (const motors of large ? [100, 1000, 10_000, 100_000] : [100, 1000, 10_000]) {
    const { seconds, processorSeconds, megabytes } = evaluate(motors);
    const cost = (processorSeconds - startUp.processorSeconds) / motors;
    costs.set(motors, cost);
    measures.push(
      {
        what: `evaluate, ${words(motors)} motors, start to end`,
        value: seconds,
        unit: 's',
        ...(motors === 10_000 && { bar: '5' }),
      },
      { what: 'processor time, all threads', value: processorSeconds, unit: 's' },
      { what: 'processor time a motor, start-up taken off', value: 1e6 * cost, unit: 'µs' },
      { what: 'peak memory', value: megabytes, unit: 'MiB', bar: '1024' },
    );
  }
  const largest = large ? 100_000 : 10_000;
  for (const [motors, cost] of costs) {
    if (motors === largest) continue;
    const what = `cost of a motor, fleet of ${words(largest)} over fleet of ${words(motors)}`;
    measures.push({ what, value: (costs.get(largest) ?? Number.NaN) / cost, unit: 'ratio', bar: 'not above 1' });
  }
  return measures;
}
