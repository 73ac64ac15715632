import { parentPort, workerData } from 'node:worker_threads';
import { evaluateMotor, type Motor, motorResult, type PriceList, type Settings } from '@/lib/engine';
import { loadTables } from '@/lib/reference/load';
import { type EvaluatedText, resultText } from './result-text';

/** What a worker is started with. */
export interface WorkerStart {
  readonly settings: Settings;
  readonly prices: PriceList;
}

/** A block of motors to evaluate, and the answer in the same order. */
export interface Block {
  readonly number: number;
  readonly motors: readonly Motor[];
}
export interface BlockResult {
  readonly number: number;
  readonly results: readonly EvaluatedText[];
}

const port = parentPort;
if (port) {
  const { settings, prices } = workerData as WorkerStart;
  const study = { settings, prices, tables: loadTables().tables };
  port.on('message', (block: Block) => {
    const results = block.motors.map((motor) => resultText(motorResult(evaluateMotor(motor, study))));
    port.postMessage({ number: block.number, results } satisfies BlockResult);
  });
}
