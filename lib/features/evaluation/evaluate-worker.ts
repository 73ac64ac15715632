import { parentPort, workerData } from 'node:worker_threads';
import type { Motor, StudyContext } from '@/lib/engine';
import { evaluateBlock } from './evaluate-block';
import type { ShapeName, Shapes } from './result-shape';

/** What a worker is started with. */
export interface WorkerStart {
  readonly study: StudyContext;
  readonly shape: ShapeName;
}

/** A block of motors to evaluate. */
export interface Block {
  readonly number: number;
  readonly motors: readonly Motor[];
}

/** What a worker is told: to evaluate a block, or to end once it has done with those before. */
export type Order = Block | 'end';

/** What a worker says: that it may be given blocks, then each block's results in the order of its motors. */
export type WorkerNews = { readonly ready: true } | BlockResult;
export interface BlockResult {
  readonly number: number;
  readonly results: Shapes[ShapeName];
}

const port = parentPort;
if (port) {
  const { study, shape } = workerData as WorkerStart;
  const say = (news: WorkerNews, transfer: readonly ArrayBuffer[] = []): void => port.postMessage(news, transfer);
  port.on('message', (order: Order) => {
    if (order === 'end') {
      port.close();
      return;
    }
    const { number, motors } = order;
    const results = evaluateBlock(motors, study, shape);
    // Text is handed over as it lies in memory, not copied.
    say({ number, results }, 'bytes' in results ? [results.bytes.buffer] : []);
  });
  say({ ready: true });
}
