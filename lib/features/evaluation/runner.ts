import path from 'node:path';
import type { Worker } from 'node:worker_threads';
import { readEnv } from '@/lib/platform/env';

/**
 * The one runner of this process: a thread that works through the queue of evaluations, with a database connection of its own, so
 * that pages never wait for it. It lives outside the bundle and is started at the first call.
 */

// One per process, also when the development server loads this module anew.
const holder: typeof globalThis & { lossbookRunner?: Worker | undefined } = globalThis;

function start(): Worker {
  // The bundler rewrites an imported `Worker`; asked for in this way, the built-in one is left alone.
  const { Worker: Thread } = process.getBuiltinModule('node:worker_threads');
  const starter = path.join(readEnv().projectFolder, 'lib', 'platform', 'start-worker.mjs');
  const program = 'lib/features/evaluation/run-worker.ts';
  const worker = new Thread(starter, { workerData: { program }, execArgv: [] });
  worker.unref();
  const forget = (): void => {
    if (holder.lossbookRunner === worker) holder.lossbookRunner = undefined;
  };
  worker.on('error', (error) => {
    console.error('The evaluation thread stopped.', error);
    forget();
  });
  worker.on('exit', forget);
  return worker;
}

/** Makes the runner look into the queue; returns at once. */
export function wakeRunner(): void {
  holder.lossbookRunner ??= start();
  holder.lossbookRunner.postMessage('look');
}
