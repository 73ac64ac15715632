import { parentPort, workerData } from 'node:worker_threads';
import { evaluateMotor, type Motor, motorResult, type PriceList, type Settings } from '@/lib/engine';
import { loadTables } from '@/lib/reference/load';
import { SHAPES, type ShapeName, type Shapes } from './result-shape';

/** What a worker is started with. */
export interface WorkerStart {
  readonly settings: Settings;
  readonly prices: PriceList;
  readonly shape: ShapeName;
}

/** A block of motors to evaluate, and the answer in the same order. */
export interface Block {
  readonly number: number;
  readonly motors: readonly Motor[];
}
export interface BlockResult {
  readonly number: number;
  readonly results: readonly Shapes[ShapeName][];
}

const port = parentPort;
if (port) {
  const { settings, prices, shape } = workerData as WorkerStart;
  const study = { settings, prices, tables: loadTables().tables };
  port.on('message', (block: Block) => {
    const results = block.motors.map((motor) => SHAPES[shape](motorResult(evaluateMotor(motor, study)), settings.currency));
    port.postMessage({ number: block.number, results } satisfies BlockResult);
  });
}
