import { Worker } from 'node:worker_threads';
import { evaluateMotor, type Motor, motorResult, type PriceList, type ReferenceTables, type Settings } from '@/lib/engine';
import type { BlockResult, WorkerStart } from './evaluate-worker';
import { SHAPES, type ShapeName, type Shapes } from './result-shape';

/** Motors in one block: small enough to spread evenly, large enough that handing over costs nothing. */
const BLOCK = 250;

/** Below this many motors a worker takes longer to start than to do the work. */
const WORTH_A_WORKER = 1500;

/** What a fleet is evaluated with. */
export interface FleetStudy {
  readonly settings: Settings;
  readonly prices: PriceList;
  readonly tables: ReferenceTables;
}

/** How a fleet is evaluated: on how many threads, in which form the results come, and whether to stop early. */
export interface FleetRun<Name extends ShapeName> {
  readonly jobs: number;
  readonly shape: Name;
  /** Takes a block of results; blocks come in order. A promise is waited for before the next block is taken. */
  readonly take: (results: readonly Shapes[Name][]) => void | Promise<void>;
  /** Asked between blocks; true ends the run early. */
  readonly cancelled?: () => boolean | Promise<boolean>;
}

/**
 * Evaluates motors in order, block by block, with several jobs on worker threads. The results do not depend on the jobs.
 * @returns false when it was cancelled.
 */
export async function evaluateFleet<Name extends ShapeName>(
  motors: readonly Motor[],
  study: FleetStudy,
  run: FleetRun<Name>,
): Promise<boolean> {
  if (run.jobs > 1 && motors.length >= WORTH_A_WORKER) return withWorkers(motors, study, run);
  for (let at = 0; at < motors.length; at += BLOCK) {
    if (await run.cancelled?.()) return false;
    const shape = SHAPES[run.shape];
    const block = motors.slice(at, at + BLOCK);
    await run.take(block.map((motor) => shape(motorResult(evaluateMotor(motor, study)), study.settings.currency)));
  }
  return true;
}

async function withWorkers<Name extends ShapeName>(
  motors: readonly Motor[],
  { settings, prices }: FleetStudy,
  run: FleetRun<Name>,
): Promise<boolean> {
  const blocks = Math.ceil(motors.length / BLOCK);
  const workers: Worker[] = [];
  /** Two places for each worker, so that none waits for its next block. */
  const free: Worker[] = [];
  const finished = new Map<number, readonly Shapes[Name][]>();
  let failure: Error | undefined;
  let wake = (): void => undefined;
  let handedOut = 0;
  let taken = 0;
  const handOut = (): void => {
    // No worker runs further ahead than this, so that finished blocks waiting for their turn stay few.
    while (handedOut < blocks && handedOut <= taken + 4 * run.jobs) {
      const worker = free.shift();
      if (worker === undefined) return;
      const number = handedOut++;
      worker.postMessage({ number, motors: motors.slice(number * BLOCK, (number + 1) * BLOCK) });
    }
  };
  const start: WorkerStart = { settings, prices, shape: run.shape };
  try {
    for (let i = 0; i < Math.min(run.jobs, blocks); i++) {
      const worker = new Worker(new URL('../../platform/start-worker.mjs', import.meta.url), {
        workerData: { ...start, module: new URL('./evaluate-worker.ts', import.meta.url).href },
        execArgv: [],
      });
      workers.push(worker);
      free.push(worker);
      worker.on('message', (result: BlockResult) => {
        // The worker was started with this shape, so its results have it.
        finished.set(result.number, result.results as readonly Shapes[Name][]);
        free.push(worker);
        handOut();
        wake();
      });
      worker.on('error', (error) => {
        failure = error instanceof Error ? error : new Error(String(error));
        wake();
      });
    }
    free.push(...workers);
    handOut();
    while (taken < blocks) {
      const results = finished.get(taken);
      if (results === undefined) {
        if (failure) throw failure;
        await new Promise<void>((resolve) => {
          wake = resolve;
        });
        continue;
      }
      if (await run.cancelled?.()) return false;
      finished.delete(taken);
      taken += 1;
      handOut();
      await run.take(results);
    }
    return true;
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
}
