import { type Places, startApart } from '@/lib/platform/threads';
import type { BookNews, BookOrder, BookStart } from './book-worker';

export interface WorkbookDownload {
  readonly fileName: string;
  readonly body: ReadableStream;
}

/** A reader who has taken nothing for so long is given up: a browser that is paused asks again from the start. */
const STALL_MS = 120_000;

/** What may be said with the order of a workbook. */
export interface BookWishes {
  /** Tells that the reader has gone away, also before the first piece. */
  readonly gone?: AbortSignal;
  readonly stallMs?: number;
  readonly places?: Places;
}

/**
 * The workbook of a whole study, written in a thread of its own that lives outside the bundle, so that other requests do not wait for it. A
 * piece is asked for when the reader has room for it; a reader who goes away, or takes nothing for `stallMs`, ends the work, so that the place
 * is free for others. `undefined` when there is no such study, `busy` when too many wait.
 */
export async function bookApart(
  studyId: string,
  { gone, stallMs = STALL_MS, places }: BookWishes = {},
): Promise<WorkbookDownload | 'busy' | undefined> {
  const start: BookStart = { studyId };
  const thread = await startApart('lib/features/workbook/book-worker.ts', start, places);
  if (thread === 'busy') return thread;
  const tell = (order: BookOrder): void => thread.postMessage(order);
  // What comes before it is asked for waits: the end follows the last piece at once, and a slow reader asks long after.
  const waiting: (BookNews | Error)[] = [];
  let hear: ((news: BookNews | Error) => void) | undefined;
  let ended: Error | undefined;
  const take = (news: BookNews | Error): void => {
    if (!hear) waiting.push(news);
    hear?.(news);
    hear = undefined;
  };
  const next = (): Promise<BookNews | Error> =>
    new Promise((resolve) => {
      const news = waiting.shift() ?? ended;
      if (news) resolve(news);
      else hear = resolve;
    });
  thread.on('message', take);
  thread.on('error', (error) => {
    console.error('The thread that writes a workbook stopped.', error);
    take(error instanceof Error ? error : new Error(String(error)));
  });
  thread.on('exit', () => {
    ended = new Error('the thread that writes a workbook ended early');
    hear?.(ended);
  });

  const leave = (): void => tell('stop');
  if (gone?.aborted) leave();
  gone?.addEventListener('abort', leave, { once: true });
  const first = await next();
  if (first instanceof Error) throw first;
  if (!('fileName' in first)) return undefined;
  let stalled: NodeJS.Timeout | undefined;
  const wait = (controller: ReadableStreamDefaultController<Uint8Array>): void => {
    stalled = setTimeout(() => {
      leave();
      controller.error(new Error('the reader of a workbook took nothing for too long'));
    }, stallMs);
    stalled.unref();
  };
  const body = new ReadableStream<Uint8Array>({
    start: wait,
    async pull(controller) {
      clearTimeout(stalled);
      const heard = next();
      tell('more');
      const news = await heard;
      if (news instanceof Error) controller.error(news);
      else if ('piece' in news) {
        controller.enqueue(news.piece);
        wait(controller);
      } else controller.close();
    },
    cancel: () => {
      clearTimeout(stalled);
      leave();
    },
  });
  return { fileName: first.fileName, body };
}
