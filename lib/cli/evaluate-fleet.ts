import { Worker } from 'node:worker_threads';
import { evaluateMotor, type Motor, motorResult, type PriceList, type ReferenceTables, type Settings } from '@/lib/engine';
import type { BlockResult, WorkerStart } from './evaluate-worker';
import { type EvaluatedText, resultText } from './result-text';

/** Motors in one block: small enough to spread evenly, large enough that handing over costs nothing. */
const BLOCK = 250;

/** Below this many motors a worker takes longer to start than to do the work. */
const WORTH_A_WORKER = 1500;

/** Evaluates motors in order and hands each result on; with several jobs on worker threads. The results do not depend on the jobs. */
export async function evaluateFleet(
  motors: readonly Motor[],
  study: { settings: Settings; prices: PriceList; tables: ReferenceTables },
  jobs: number,
  take: (result: EvaluatedText) => void,
): Promise<void> {
  if (jobs <= 1 || motors.length < WORTH_A_WORKER) {
    for (const motor of motors) take(resultText(motorResult(evaluateMotor(motor, study))));
    return;
  }
  await withWorkers(motors, { settings: study.settings, prices: study.prices }, jobs, take);
}

function withWorkers(
  motors: readonly Motor[],
  start: WorkerStart,
  jobs: number,
  take: (result: EvaluatedText) => void,
): Promise<void> {
  const blocks = Math.ceil(motors.length / BLOCK);
  const waiting = new Map<number, BlockResult>();
  let handedOut = 0;
  let taken = 0;
  return new Promise((resolve, reject) => {
    const workers: Worker[] = [];
    const end = (finish: () => void) => {
      void Promise.all(workers.map((worker) => worker.terminate())).then(finish);
    };
    const handOut = (worker: Worker) => {
      // No worker runs further ahead than this, so that finished blocks waiting for their turn stay few.
      if (handedOut >= blocks || handedOut > taken + 4 * jobs) return;
      const number = handedOut++;
      worker.postMessage({ number, motors: motors.slice(number * BLOCK, (number + 1) * BLOCK) });
    };
    for (let i = 0; i < Math.min(jobs, blocks); i++) {
      const worker = new Worker(new URL('./evaluate-worker.ts', import.meta.url), {
        workerData: start,
        execArgv: ['--import', 'tsx'],
      });
      workers.push(worker);
      worker.on('message', (result: BlockResult) => {
        waiting.set(result.number, result);
        for (let next = waiting.get(taken); next; next = waiting.get(taken)) {
          waiting.delete(taken);
          taken += 1;
          next.results.forEach(take);
        }
        if (taken === blocks) end(resolve);
        else handOut(worker);
      });
      worker.on('error', (error) => end(() => reject(error)));
      handOut(worker);
      handOut(worker);
    }
  });
}
