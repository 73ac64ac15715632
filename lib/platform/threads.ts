import path from 'node:path';
import type { Worker } from 'node:worker_threads';
import { readEnv } from './env';

/** Places for work that takes seconds of a processor: so many at once, so many waiting in the order in which they came; more are turned away. */
export class Places {
  readonly #atOnce: number;
  readonly #mayWait: number;
  #taken = 0;
  readonly #waiting: (() => void)[] = [];

  constructor({ atOnce, mayWait }: { readonly atOnce: number; readonly mayWait: number }) {
    this.#atOnce = atOnce;
    this.#mayWait = mayWait;
  }

  /** A place as soon as one is free, as a function that gives it back; `busy` at once where too many wait already. */
  async enter(): Promise<(() => void) | 'busy'> {
    if (this.#taken < this.#atOnce) this.#taken += 1;
    else if (this.#waiting.length >= this.#mayWait) return 'busy';
    else await new Promise<void>((resolve) => this.#waiting.push(resolve));
    let held = true;
    return () => {
      if (!held) return;
      held = false;
      // The place goes to the next in line without ever being free, so that nobody slips in between.
      const next = this.#waiting.shift();
      if (next) next();
      else this.#taken -= 1;
    };
  }
}

/** Threads that readers ask for, at once and waiting: beside them a fleet may be under evaluation, and two processors are what is asked of a server. */
const LIMITS = { atOnce: 2, mayWait: 6 } as const;

/** What is said to who comes when too many wait. */
export const BUSY_WORDS = 'Too many lists and workbooks are being worked out at the moment. Try again in a minute.';

// One per process, also when the development server loads this module anew.
const holder: typeof globalThis & { lossbookPlaces?: Places | undefined } = globalThis;
holder.lossbookPlaces ??= new Places(LIMITS);
const shared = holder.lossbookPlaces;

/**
 * A thread of its own for what a reader waits for, outside the bundle, so that other requests are served meanwhile. It runs the program (a path from
 * the root of the project) once a place is free, and keeps its place until it ends; `busy` where too many wait. The caller listens in the same turn.
 */
export async function startApart(program: string, data: object, places: Places = shared): Promise<Worker | 'busy'> {
  const leave = await places.enter();
  if (leave === 'busy') return leave;
  try {
    // The bundler rewrites an imported `Worker`; asked for in this way, the built-in one is left alone.
    const { Worker: Thread } = process.getBuiltinModule('node:worker_threads');
    const starter = path.join(readEnv().projectFolder, 'lib', 'platform', 'start-worker.mjs');
    const thread = new Thread(starter, { workerData: { ...data, program }, execArgv: [] });
    thread.unref();
    thread.on('exit', leave);
    return thread;
  } catch (error) {
    leave();
    throw error;
  }
}

/** Turns a request away that came when too many wait. */
export function busyResponse(): Response {
  return new Response(`${BUSY_WORDS}\n`, { status: 503, headers: { 'retry-after': '60', 'cache-control': 'no-store' } });
}
