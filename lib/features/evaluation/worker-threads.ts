import { Worker } from 'node:worker_threads';
import type { Block, BlockResult, Order, WorkerNews, WorkerStart } from './evaluate-worker';

/** Blocks at a helper at a time: one at work and one waiting, so that it never waits itself. */
const PLACES = 2;

/** Worker threads that evaluate blocks beside the thread that has called them. */
export class Helpers {
  readonly #start: WorkerStart;
  readonly #take: (result: BlockResult) => void;
  readonly #workers: Worker[] = [];
  readonly #ready = new Set<Worker>();
  /** A helper stands here once for each place that is free. */
  readonly #free: Worker[] = [];
  #failure: Error | undefined;
  #wake = (): void => undefined;

  /** @param take is given each block's results as they come, in no certain order. */
  constructor(start: WorkerStart, take: (result: BlockResult) => void) {
    this.#start = start;
    this.#take = take;
  }

  /** Starts helpers until there are so many; they take part once they are ready. */
  grow(count: number): void {
    while (this.#workers.length < count) this.#workers.push(this.#begin());
  }

  get hasRoom(): boolean {
    return this.#free.length > 0;
  }

  /** Hands a block to a helper that has room. */
  give(block: Block): void {
    this.#free.shift()?.postMessage(block satisfies Order);
  }

  /** Waits until a helper has something to say. @throws what stopped a helper. */
  async listen(): Promise<void> {
    if (this.#failure === undefined) {
      await new Promise<void>((resolve) => {
        this.#wake = resolve;
      });
    }
    this.check();
  }

  /** @throws what stopped a helper, if anything did. */
  check(): void {
    if (this.#failure) throw this.#failure;
  }

  /**
   * Lets the helpers go. One that is at work ends by itself after its last block: stopped in the middle of compressing a result it would
   * take the whole process with it. One that is still getting ready is not waited for.
   */
  async close(): Promise<void> {
    await Promise.all(
      this.#workers.map((worker) => {
        if (!this.#ready.has(worker)) return worker.terminate();
        const ended = new Promise((resolve) => worker.once('exit', resolve));
        worker.postMessage('end' satisfies Order);
        return ended;
      }),
    );
  }

  #begin(): Worker {
    const worker = new Worker(new URL('../../platform/start-worker.mjs', import.meta.url), {
      workerData: { ...this.#start, program: 'lib/features/evaluation/evaluate-worker.ts' },
      execArgv: [],
    });
    worker.on('message', (news: WorkerNews) => {
      if ('ready' in news) {
        this.#ready.add(worker);
        this.#free.push(...new Array<Worker>(PLACES).fill(worker));
      } else {
        this.#free.push(worker);
        this.#take(news);
      }
      this.#wake();
    });
    worker.on('error', (error) => {
      this.#failure = error instanceof Error ? error : new Error(String(error));
      // It has ended already.
      this.#ready.delete(worker);
      this.#wake();
    });
    return worker;
  }
}
